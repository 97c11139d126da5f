import { dateInWords, dayOfDate } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import type { LeaveOff, SpellNeed } from '@wintergap/study';
import type { SpellDay, WorstSpell, YearResult } from '@wintergap/year';
import { energyScale, energyText } from '../words/energy-scale.js';
import { count, dateText, figure, percent, wrap } from '../words/figures.js';
import { inTemperatureUnit, temperatureUnit } from '../words/shown-units.js';
import { plainTable } from './parts/plain-table.js';

/** The dullest days of a year one by one, and what to leave off in them, 80 columns, answer first. */
export function worstText(year: YearResult, spell: WorstSpell, left: LeaveOff, units: UnitSystem): string {
  return [
    [worstHeadline(year, spell, left), ...spellNotes(spell)].map((sentence) => wrap(sentence)).join('\n'),
    plainTable(...spellTable(spell, units)),
    leaveOffText(left, year.site.generator !== undefined),
  ].join('\n\n');
}

/** `14 days from 3 December to 16 December`. */
const spanText = ({ days }: WorstSpell) =>
  `${count(days.length, 'day')} from ${dateText(days[0]!.date)} to ${dateText(days.at(-1)!.date)}`;

function worstHeadline({ site }: YearResult, spell: WorstSpell, left: LeaveOff): string {
  const need = needText(left.asDesigned, site.generator !== undefined);
  const answer =
    need === ''
      ? `sun and bank carry them${site.generator ? ' without the engine' : ''}`
      : `${need}; ${enoughText(left, site.generator !== undefined)}`;
  return `${site.name}, the ${spanText(spell)}: ${answer}.`;
}

const needText = ({ engineHours, darkKWh }: SpellNeed, hasEngine: boolean): string =>
  [
    ...(hasEngine && engineHours >= 0.005 ? [`the engine runs ${figure(engineHours)} h`] : []),
    ...(darkKWh >= 0.005 ? [`${energyText(darkKWh)} stay dark`] : []),
  ].join(' and ');

function enoughText({ enough, loads }: LeaveOff, hasEngine: boolean): string {
  const rest = hasEngine ? 'the engine rests' : 'nothing stays dark';
  if (enough && enough.length > 1 && enough.length === loads.length) {
    return `only with all loads left off ${hasEngine ? 'does the engine rest' : 'does nothing stay dark'}`;
  }
  if (enough) return `without ${enough.join(', ')} ${rest}`;
  const last = loads.at(-1)?.withAllBefore;
  return last ? `even with all below left off ${needText(last, hasEngine)}` : 'there is no load to leave off';
}

/** How the spell is chosen, and why the engine was started. */
export function spellNotes(spell: WorstSpell): string[] {
  const dates = new Map<string, string[]>();
  for (const { date, starts } of spell.days) {
    for (const reason of starts) dates.set(reason, [...(dates.get(reason) ?? []), shortDate(date)]);
  }
  const reasons = [...dates].map(([reason, on]) => `${reason} (${on.join(', ')})`);
  return [
    `They are the ${spell.days.length} days of the file's year with the least sun for the load: ${figure(spell.sunKWhPerM2, 1)} kWh/m2 on the flat for ${energyText(spell.loadKWh)}.`,
    ...(reasons.length > 0 ? [`Why the engine starts: ${reasons.join('; ')}.`] : []),
  ];
}

const shortDate = (date: string) => {
  const [day, month = ''] = dateInWords(dayOfDate(date) ?? 0).split(' ');
  return `${day} ${month.slice(0, 3)}`;
};

/** Head and rows of the days: units first, the sums last. */
export function spellTable({ days }: WorstSpell, units: UnitSystem): [head: string[], rows: string[][]] {
  const energies: { head: string; of: (day: SpellDay) => number; always?: true }[] = [
    { head: 'array', of: ({ arrayKWh }) => arrayKWh, always: true },
    { head: 'load', of: ({ loadKWh }) => loadKWh, always: true },
    { head: 'thrown', of: ({ thrownAwayKWh }) => thrownAwayKWh },
    { head: 'dark', of: ({ darkKWh }) => darkKWh },
  ];
  const shown = energies.filter(({ of, always }) => always || days.some((day) => of(day) > 5e-6));
  const sum = (of: (day: SpellDay) => number) => days.reduce((total, day) => total + of(day), 0);
  const scale = energyScale(
    Math.max(...shown.flatMap(({ of }) => days.map((day) => of(day) * 1000))),
    Math.max(...shown.map(({ of }) => sum(of) * 1000)),
  );
  const cell = (kWh: number) => (kWh < 5e-6 ? '-' : scale.textOf(kWh * 1000));
  const hours = (value: number) => (value < 0.005 ? '-' : figure(value, 1));
  return [
    ['', 'sun', ...shown.map(({ head }) => head), 'charge', 'lowest', 'bank', 'engine', 'starts'],
    [
      ['', 'kWh/m2', ...shown.map(() => scale.unit), 'at 18 h', '', temperatureUnit(units), 'h', ''],
      ...days.map((day) => [
        shortDate(day.date),
        day.sunKWhPerM2.toFixed(2),
        ...shown.map(({ of }) => cell(of(day))),
        percent(day.eveningCharge),
        percent(day.lowestCharge),
        figure(inTemperatureUnit(day.bankC, units), 0),
        hours(day.engineHours),
        day.starts.length === 0 ? '-' : String(day.starts.length),
      ]),
      [
        'sum',
        sum(({ sunKWhPerM2 }) => sunKWhPerM2).toFixed(2),
        ...shown.map(({ of }) => cell(sum(of))),
        '',
        '',
        '',
        hours(sum(({ engineHours }) => engineHours)),
        String(sum(({ starts }) => starts.length)),
      ],
    ],
  ];
}

function leaveOffText({ loads, asDesigned, from, to, hasMeasured }: LeaveOff, hasEngine: boolean): string {
  if (loads.length === 0) return 'No load of these days can be left off.';
  if (needText(asDesigned, hasEngine) === '') return 'Nothing need be left off.';
  const scale = energyScale(
    Math.max(...loads.map(({ loadKWh }) => loadKWh * 1000)),
    Math.max(...loads.map(({ loadKWh }) => loadKWh * 1000)),
  );
  const need = (of: SpellNeed) => (hasEngine ? figure(of.engineHours, 1) : figure(of.darkKWh, 1));
  const unit = hasEngine ? 'h' : 'kWh';
  const cold = loads.some(({ followsCold }) => followsCold);
  const rows = loads.map(({ name, followsCold, loadKWh, alone, withAllBefore }) => [
    `${name.length > 28 ? `${name.slice(0, 27)}.` : name}${followsCold ? ' *' : ''}`,
    scale.textOf(loadKWh * 1000),
    need(alone),
    need(withAllBefore),
  ]);
  const what = hasEngine ? 'engine' : 'dark';
  const notes = [
    `Left off from ${dateText(from)} to ${dateText(to)}, standby too; each figure is of the whole year run so.`,
    ...(cold ? ['* runs by outdoor cold: what it keeps from freezing comes first.'] : []),
    ...(hasMeasured ? ['The measured table cannot be taken apart, and is not left off.'] : []),
  ];
  return `${plainTable(
    ['Left off', 'asks for', `${what}, it alone`, 'and all above'],
    [['', scale.unit, unit, unit], ['nothing', '', need(asDesigned), need(asDesigned)], ...rows],
  )}\n${notes.map((note) => wrap(note)).join('\n')}`;
}
