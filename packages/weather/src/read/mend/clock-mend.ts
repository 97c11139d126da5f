/** What is known to be wrong with the clock of a file. */
export interface ClockMend {
  /** Hours added to the file's times. */
  shiftH: number;
  /** Days of the year (0 to 364) between which its clock is an hour ahead of standard time. */
  summerTime?: { from: number; to: number } | undefined;
}

/** In which hours, as labelled, the clock of a file is an hour ahead: from 02:00 on the first date, to 03:00 on the last. */
export interface SummerHours {
  fromHour: number;
  toHour: number;
}

export function summerHours({ summerTime }: ClockMend): SummerHours | null {
  if (!summerTime) return null;
  return { fromHour: summerTime.from * 24 + 2, toHour: summerTime.to * 24 + 3 };
}
