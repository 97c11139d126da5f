export const hoursPerYear = 8760;

/** First hour of each month of a 365-day year, and the year's end. */
export const monthStartHour: readonly number[] = [
  0, 744, 1416, 2160, 2880, 3624, 4344, 5088, 5832, 6552, 7296, 8016, 8760,
];
