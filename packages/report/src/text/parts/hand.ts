import { monthNames } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import type { HandForYear, SizeAnswer } from '@wintergap/study';
import { figure, percent, wrap } from '../../words/figures.js';
import { temperatureText } from '../../words/shown-units.js';
import { plainTable } from './plain-table.js';

/** The hand method beside a sized design: where the rule of thumb would build more, and where less. */
export function handText({ design, year }: SizeAnswer, hand: HandForYear, units: UnitSystem): string {
  const { array, bank, settings, ratedKW } = hand;
  const { site, summary } = year;
  const month = array ? monthNames[array.month] : '';
  const rows: string[][] = [];
  if (array && ratedKW !== null) {
    const single = site.arrays.filter(({ strings }) => strings > 0).length === 1;
    rows.push(['array, kW', figure(ratedKW), figure(design.ratedKW), times(ratedKW, design.ratedKW)]);
    if (single) {
      const strings = site.arrays.find((one) => one.strings > 0)!.strings;
      rows.push(['strings', figure(array.exactStrings, 1), figure(strings, 0), '']);
    }
  }
  rows.push(
    [
      'bank, Ah',
      `${figure(hand.labelAh)} at ${figure(site.bank.atRate, 0)} h`,
      `${figure(site.bank.capacity)} at ${figure(site.bank.atRate, 0)} h`,
      times(hand.labelAh, site.bank.capacity),
    ],
    ['days without sun', figure(settings.autonomyDays), figure(summary.bank.autonomyDays), ''],
  );
  const sun = array
    ? `${month} decides: ${figure(array.dailyLoadAh)} Ah a day at the bus, ${figure(array.sunHours)} h of sun on the plane, array-to-load ratio ${settings.ratio}, ${percent(settings.losses)} lost. `
    : 'No array is large enough by hand: a month has no sun. ';
  const store =
    `Bank: ${figure(bank.unadjustedAh)} Ah without sun, set by ${bank.decidedBy}, x ${bank.temperatureFactor.toFixed(2)} for ${temperatureText(hand.lowestC, units)}, x ${bank.margin} to spare.` +
    ` That is ${figure(bank.capacityAh)} Ah over the ${figure(bank.dischargeTimeH, 0)} h of the load, and less at the label's rate: compare in the maker's table.`;
  return [
    'By hand (IEEE 1562 array, IEEE 1013 bank), which knows no hours, snow or engine',
    plainTable(['', 'by hand', 'this design', 'by hand is'], rows),
    wrap(sun + store),
  ].join('\n');
}

const times = (hand: number, design: number): string => (design > 0 ? `${(hand / design).toFixed(2)} times` : '');
