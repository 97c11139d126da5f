/** Hours of a year without leap day; hour h is the interval [h, h + 1) in local standard time. */
export const hoursPerYear = 8760;

/** Moments of each hour at which the sun's direction counts: minutes 7.5, 22.5, 37.5 and 52.5. */
export const pointsPerHour = 4;
