/** Longest unbroken time, in days, in which an hourly series stays below a level; runs past New Year are joined. */
export function longestDaysBelow(hourly: Float64Array, level: number): number {
  const n = hourly.length;
  let longest = 0;
  let run = 0;
  // Twice round the year joins a spell that spans New Year; a run cannot be longer than the year.
  for (let i = 0; i < 2 * n && run < n; i++) {
    run = hourly[i % n]! < level ? run + 1 : 0;
    if (run > longest) longest = run;
  }
  return Math.min(longest, n) / 24;
}

/** Longest time in days between two hours in which `hourly` is above zero, round the year; `null` if it never is. */
export function longestDaysBetween(hourly: Float64Array): number | null {
  const n = hourly.length;
  const first = hourly.findIndex((value) => value > 0);
  if (first < 0) return null;
  let longest = 0;
  let gap = 0;
  for (let i = 1; i <= n; i++) {
    if (hourly[(first + i) % n]! > 0) {
      if (gap > longest) longest = gap;
      gap = 0;
    } else {
      gap++;
    }
  }
  return longest / 24;
}
