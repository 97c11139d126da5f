import { monthSpan } from '@wintergap/ground';

/** Engine hours by month (rows) and hour of day (columns), summed over the month. */
export function engineTimes(generatorH: Float64Array): number[][] {
  const times: number[][] = [];
  for (let month = 0; month < 12; month++) {
    const row = new Array<number>(24).fill(0);
    const { fromHour, toHour } = monthSpan(month);
    for (let h = fromHour; h < toHour; h++) row[h % 24]! += generatorH[h]!;
    times.push(row);
  }
  return times;
}
