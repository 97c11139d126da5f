import { hoursPerYear, mustLie } from '@wintergap/ground';
import Papa from 'papaparse';
import { fillGaps, type LoadGap } from './load-gap.js';
import { LoadTableError } from './load-table-error.js';
import { tableColumns, type ValueColumn } from './table-columns.js';
import { timeSlots } from './table-slots.js';
import { parseStamp, type TableStamp } from './table-stamp.js';

export interface LoadTableOptions {
  /** Name of the file, for messages. */
  source: string;
  /** Weekday of 1 January of the simulated year, 0 for Sunday; needed to repeat a typical week. */
  firstWeekday?: number;
  /** Yearly energy, AC and DC together, that the table is scaled to. */
  scaleToKWh?: number;
}

/** A measured or typical load as hourly means of a year. */
export interface MeasuredLoad {
  source: string;
  acW: Float64Array;
  dcW: Float64Array;
  /** AC and DC together, after scaling. */
  energyWhYear: number;
  stepMinutes: number;
  /** What the table held: a whole year, or a week or day that is repeated. */
  covers: 'year' | 'week' | 'day';
  gaps: LoadGap[];
  leapDayDropped: boolean;
}

interface Row {
  line: number;
  stamp: TableStamp;
  cells: readonly string[];
}

/**
 * Reads a load table: CSV with a header such as `time, ac [kW], dc [W]`. Units are W, kW, or Wh, kWh for the energy of
 * each step; several columns of one bus are added. `time` is the beginning of the interval in local standard time,
 * see `parseStamp` for its forms; steps are regular, from one minute to a day. Lines that begin with `#` are skipped.
 *
 * Missing rows and empty cells up to two days long are filled from the days before at the same time and listed in
 * `gaps`; a 29 February is dropped.
 *
 * @throws LoadTableError naming source and line when the table cannot be used
 */
export function readLoadTable(text: string, options: LoadTableOptions): MeasuredLoad {
  const { source, firstWeekday, scaleToKWh } = options;
  if (scaleToKWh !== undefined) mustLie('scaleToKWh', scaleToKWh, 0, Number.MAX_VALUE);
  const { rows, columns } = readRows(text, source);
  const { slotOf, slots, stepMinutes, covers } = timeSlots(rows, source);
  if (covers === 'week' && firstWeekday === undefined) {
    throw new TypeError(`${source}: a typical week needs firstWeekday, the weekday of 1 January`);
  }
  mustLie('firstWeekday', firstWeekday ?? 0, 0, 6);

  const acSlots = new Float64Array(slots).fill(Number.NaN);
  const dcSlots = new Float64Array(slots).fill(Number.NaN);
  const lineOf = new Int32Array(slots);
  for (let r = 0; r < rows.length; r++) {
    const slot = slotOf[r]!;
    const { line, cells } = rows[r]!;
    if (slot < 0) continue;
    if (lineOf[slot]! > 0)
      throw new LoadTableError(`${source} line ${line}: same time of the year as line ${lineOf[slot]}`);
    lineOf[slot] = line;
    acSlots[slot] = 0;
    dcSlots[slot] = 0;
    for (const column of columns) {
      const powerW = readPower(cells[column.index] ?? '', column, stepMinutes, `${source} line ${line}`);
      if (column.bus === 'ac') acSlots[slot]! += powerW;
      else dcSlots[slot]! += powerW;
    }
  }
  const gaps = fillGaps(acSlots, dcSlots, lineOf, stepMinutes, source);

  const firstHour = covers === 'week' ? firstWeekday! * 24 : 0;
  const acW = hourlyYear(acSlots, stepMinutes, firstHour);
  const dcW = hourlyYear(dcSlots, stepMinutes, firstHour);
  let energyWhYear = 0;
  for (let h = 0; h < hoursPerYear; h++) energyWhYear += acW[h]! + dcW[h]!;
  if (scaleToKWh !== undefined) {
    if (energyWhYear <= 0)
      throw new LoadTableError(`${source}: holds no energy, so it cannot be scaled to ${scaleToKWh} kWh`);
    const scale = (scaleToKWh * 1000) / energyWhYear;
    for (let h = 0; h < hoursPerYear; h++) {
      acW[h]! *= scale;
      dcW[h]! *= scale;
    }
    energyWhYear = scaleToKWh * 1000;
  }
  const leapDayDropped = slotOf.includes(-1);
  return { source, acW, dcW, energyWhYear, stepMinutes, covers, gaps, leapDayDropped };
}

function readRows(text: string, source: string): { rows: Row[]; columns: ValueColumn[] } {
  // Comments are emptied rather than removed, so that line numbers stay those of the file.
  const plain = text.replace(/^\uFEFF/, '').replace(/^#.*$/gm, '');
  const header = /\S.*/.exec(plain)?.[0] ?? '';
  const delimiter = header.includes(';') ? ';' : header.includes('\t') ? '\t' : ',';
  const { data } = Papa.parse<string[]>(plain, { delimiter });
  const rows: Row[] = [];
  let timeIndex = -1;
  let columns: ValueColumn[] = [];
  for (let i = 0; i < data.length; i++) {
    const cells = data[i]!;
    const line = i + 1;
    if (cells.every((cell) => cell.trim() === '')) continue;
    if (timeIndex < 0) {
      ({ time: timeIndex, values: columns } = tableColumns(cells, `${source} line ${line}`));
      continue;
    }
    const stampText = cells[timeIndex] ?? '';
    const stamp = parseStamp(stampText);
    if (!stamp) {
      throw new LoadTableError(
        `${source} line ${line}: time is "${stampText.slice(0, 60)}", expected one such as 2023-01-31 14:30, 01-31 14:30, Mon 14:30 or 14:30`,
      );
    }
    rows.push({ line, stamp, cells });
  }
  if (timeIndex < 0) throw new LoadTableError(`${source}: empty, expected a header such as "time, ac [W]"`);
  return { rows, columns };
}

/** Mean power of a step, W; NaN for an empty cell. */
function readPower(cell: string, column: ValueColumn, stepMinutes: number, where: string): number {
  const text = cell.trim();
  if (text === '' || /^(na|nan|null|-)$/i.test(text)) return Number.NaN;
  const value = Number(text);
  if (!(value >= 0 && value <= 1e9)) {
    throw new LoadTableError(
      `${where}: ${column.bus} is "${text.slice(0, 60)}", expected a number of zero or more with a decimal point`,
    );
  }
  return column.isEnergy ? (value * column.factor * 60) / stepMinutes : value * column.factor;
}

/**
 * Hourly means of a year from steps that are repeated as often as it takes.
 *
 * @param firstHour hour of the table that 1 January begins with
 */
function hourlyYear(slots: Float64Array, stepMinutes: number, firstHour: number): Float64Array {
  const hourly = new Float64Array(hoursPerYear);
  const perHour = 60 / stepMinutes;
  for (let h = 0; h < hoursPerYear; h++) {
    const first = (firstHour + h) * perHour;
    if (perHour <= 1) {
      hourly[h] = slots[Math.floor(first + 1e-9) % slots.length]!;
      continue;
    }
    let sum = 0;
    for (let k = 0; k < perHour; k++) sum += slots[(first + k) % slots.length]!;
    hourly[h] = sum / perHour;
  }
  return hourly;
}
