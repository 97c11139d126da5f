/** Moments of each hour at which the sun's direction counts: minutes 7.5, 22.5, 37.5 and 52.5. */
export const pointsPerHour = 4;
