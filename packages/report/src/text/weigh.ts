import { monthNames } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import {
  type CabinetChoice,
  type ChargerSizes,
  type Outcome,
  type PairedDifference,
  type RunningPrices,
  runningCost,
  type SiteWeights,
  type Weight,
} from '@wintergap/study';
import { hoursDifferenceInWords, namesInWords, yearsAgreeing, yearsInWords } from '../words/common-words.js';
import { count, figure, percent, wrap } from '../words/figures.js';
import { inShownUnits, inVolumeUnit, volumeUnit } from '../words/shown-units.js';
import { plainTable } from './parts/plain-table.js';

const pageWidth = 80;

/** What single things weigh, 80 columns, answer first. */
export function weighText(weights: SiteWeights, units: UnitSystem): string {
  return [
    headline(weights),
    withTiesBelow(loadsTable(weights, units), weights.loads),
    withTiesBelow(effectsTable(weights, units), weights.effects),
    weights.charger && chargerText(weights.charger, units),
    weights.cabinet && cabinetText(weights.cabinet, units),
  ]
    .filter((part) => part)
    .join('\n\n');
}

function headline({ siteName, weather, base, loads, effects, running }: SiteWeights): string {
  const answers = [heaviest('load', loads, base), heaviest('effect', effects, base)].filter((answer) => answer);
  const answer = answers.length > 0 ? answers.join('; ') : 'no single load or effect costs engine time or darkness';
  const note = `Each weight is what the mean year has more with that one thing than without it, over ${yearsInWords(weather)}, the same for each; +/- is the range it is sure to lie in, 9 in 10. "none" is no difference that these years can show. They do not add up. Array: what an effect takes from it in the months with engine hours or dark load, in the file's year.${running === null ? '' : ' Costs: fuel and service of the engine in a year, as far as they have prices.'} Lowest charge: of the file's year, without the thing.`;
  return `${wrap(`${siteName}: ${answer}.`)}\n${wrap(note)}`;
}

/** A load or an effect, as far as the order of both is spoken of. */
type Item = Pick<SiteWeights['loads'][number], 'name' | 'weight' | 'tiedWith'>;

/** The heaviest beyond chance, or all that may be it. */
function heaviest(kind: string, items: readonly Item[], base: Outcome): string {
  const [first] = items;
  if (!first) return '';
  const { generatorHours, darkKWh } = first.weight;
  const tied = items.filter(({ name, weight }) => first.tiedWith.includes(name) && weighs(weight));
  const are =
    tied.length === 0 || generatorHours.years === 1
      ? `the heaviest ${kind} is ${first.name}: without it`
      : `the heaviest ${kind} is one of ${namesInWords([first, ...tied].map(({ name }) => name))}, which these years do not tell apart: without ${first.name}`;
  if (generatorHours.verdict === 'more' || (generatorHours.years === 1 && generatorHours.mean > 0.05)) {
    return `${are} the engine runs ${figure(generatorHours.mean)} h less of ${figure(base.generatorHours)} h${sureText(generatorHours)}`;
  }
  return darkKWh.mean > 0.05 ? `${are} ${figure(darkKWh.mean)} kWh less stay dark of ${figure(base.darkKWh)}` : '';
}

/** Whether something weighs more than nothing beyond chance. */
const weighs = ({ generatorHours, darkKWh }: Weight): boolean =>
  generatorHours.verdict === 'more' || darkKWh.verdict === 'more';

/** A table, and below it which of its lines may stand in this order by chance. */
function withTiesBelow(table: string, items: readonly Item[]): string {
  const runs = tiedRuns(items.filter(({ weight }) => weighs(weight)));
  if (runs.length === 0) return table;
  return `${table}\n${wrap(`Not told apart by these years, each from the next: ${runs.map((names) => namesInWords(names)).join('; ')}.`)}`;
}

/** Names of neighbours in a list of which each is tied with the next. */
function tiedRuns(items: readonly Item[]): string[][] {
  const runs: string[][] = [];
  items.forEach(({ name, tiedWith }, i) => {
    const before = items[i - 1];
    if (before && tiedWith.includes(before.name)) runs.at(-1)!.push(name);
    else runs.push([name]);
  });
  return runs.filter((names) => names.length > 1);
}

const sureText = (difference: PairedDifference): string =>
  difference.low === null || difference.high === null
    ? ''
    : ` (${figure(difference.low)} to ${figure(difference.high)}, ${yearsAgreeing(difference)})`;

/** `5.2 +/- 0.8`, or `none`. */
function differenceCell({ mean, low, high, verdict, years }: PairedDifference): string {
  if (years > 1 && verdict === 'none') return 'none';
  return low === null || high === null ? figure(mean) : `${figure(mean)} +/- ${figure((high - low) / 2)}`;
}

/** The columns in which everything is weighed: heads with units, and how a weight or an outcome fills them. */
function columns(
  outcomes: readonly Outcome[],
  weights: readonly Weight[],
  units: UnitSystem,
  running: RunningPrices | null = null,
) {
  const litres = (value: number) => figure(inVolumeUnit(value, units));
  const engine = outcomes.some(({ starts }) => starts > 0) || weights.some(({ starts }) => starts !== 0);
  const dark =
    outcomes.some(({ darkKWh }) => Math.abs(darkKWh) > 0.05) ||
    weights.some(({ darkKWh }) => Math.abs(darkKWh.mean) > 0.05);
  const money = engine && running !== null;
  const paid = (hours: number, fuelLitres: number) =>
    money ? [figure(runningCost(running, { hours, fuelLitres }), 0)] : [];
  const cells = (
    hours: string,
    starts: number,
    fuelLitres: number,
    paidCell: string[],
    darkCell: string,
    lowest: number,
  ) => [
    ...(engine ? [hours, figure(starts), litres(fuelLitres), ...paidCell] : []),
    ...(dark ? [darkCell] : []),
    percent(lowest),
  ];
  return {
    head: [
      ...(engine ? ['engine', 'starts', 'fuel', ...(money ? ['costs'] : [])] : []),
      ...(dark ? ['dark'] : []),
      'lowest',
    ],
    unit: [
      ...(engine ? ['h', '', volumeUnit(units), ...(money ? [running.currency ?? 'a year'] : [])] : []),
      ...(dark ? ['kWh'] : []),
      'charge',
    ],
    ofOutcome: ({ generatorHours, starts, fuelLitres, darkKWh, darkMonthLowest }: Outcome) =>
      cells(
        figure(generatorHours),
        starts,
        fuelLitres,
        paid(generatorHours, fuelLitres),
        figure(darkKWh),
        darkMonthLowest,
      ),
    ofWeight: ({ generatorHours, starts, fuelLitres, darkKWh, darkMonthLowestWithout }: Weight) =>
      cells(
        differenceCell(generatorHours),
        starts,
        fuelLitres,
        paid(generatorHours.mean, fuelLitres),
        differenceCell(darkKWh),
        darkMonthLowestWithout,
      ),
  };
}

const sharedColumns = ({ base, loads, effects, running }: SiteWeights, units: UnitSystem) =>
  columns(
    [base],
    [...loads, ...effects].map(({ weight }) => weight),
    units,
    running,
  );

function loadsTable(weights: SiteWeights, units: UnitSystem): string {
  const { loads, base } = weights;
  if (loads.length === 0) return '';
  const shared = sharedColumns(weights, units);
  const standby = loads.some(({ standbyKWhYear }) => standbyKWhYear > 0);
  const optional = (cell: string) => (standby ? [cell] : []);
  const total = (of: (load: SiteWeights['loads'][number]) => number) => loads.reduce((sum, load) => sum + of(load), 0);
  return fittingTable(
    ['Loads', 'use', ...optional('standby'), 'share', ...shared.head],
    [
      ['', 'kWh', ...optional('kWh'), `of ${monthNames[weights.darkMonth - 1]}`, ...shared.unit],
      [
        'the whole year',
        figure(total((load) => load.kWhYear)),
        ...optional(figure(total((load) => load.standbyKWhYear))),
        '',
        ...shared.ofOutcome(base),
      ],
      ...loads.map(({ name, kWhYear, standbyKWhYear, darkMonthShare, weight }) => [
        name,
        figure(kWhYear),
        ...optional(standbyKWhYear > 0 ? figure(standbyKWhYear) : '-'),
        percent(darkMonthShare),
        ...shared.ofWeight(weight),
      ]),
    ],
  );
}

function effectsTable(weights: SiteWeights, units: UnitSystem): string {
  const shared = sharedColumns(weights, units);
  return fittingTable(
    ['Effects', 'array', ...shared.head],
    [
      ['', 'kWh', ...shared.unit],
      ['the whole year', '', ...shared.ofOutcome(weights.base)],
      ...weights.effects.map(({ name, meaning, arrayKWh, weight }) => [
        `${name} (${inShownUnits(meaning, units)})`,
        Math.abs(arrayKWh) < 0.05 ? '-' : figure(arrayKWh),
        ...shared.ofWeight(weight),
      ]),
    ],
  );
}

function chargerText(charger: ChargerSizes, units: UnitSystem): string {
  const { sizes, varies, enoughW, setLimitW } = charger;
  if (sizes.every(({ outcome }) => outcome.generatorHours === 0)) return '';
  const shared = columns(
    sizes.map(({ outcome }) => outcome),
    [],
    units,
  );
  const table = fittingTable(
    [varies === 'charger' ? 'Charger' : 'Set', 'power', ...shared.head, 'gives'],
    [
      ['', 'kW', ...shared.unit, 'kW'],
      ...sizes.map(({ times, powerW, outcome, meanOutputW }) => [
        times === 1 ? 'as designed' : `x ${times}`,
        figure(powerW / 1000, 1),
        ...shared.ofOutcome(outcome),
        figure(meanOutputW / 1000, 1),
      ]),
    ],
  );
  const noun = varies === 'charger' ? 'charger' : 'set';
  const answer =
    enoughW === null
      ? `The hours still fall with the largest ${noun} tried.`
      : setLimitW !== null && enoughW >= 0.75 * setLimitW
        ? `Above ${figure(enoughW / 1000, 1)} kW of charger the set itself, with the loads it carries, sets the pace.`
        : `Above ${figure(enoughW / 1000, 1)} kW a larger ${noun} saves less than a tenth of the hours: from there on the bank's acceptance sets the pace.`;
  const scale =
    varies === 'output' ? ' Fuel use is scaled with the size, so a set that the bank does not load burns more.' : '';
  return `${wrap(answer + scale)}\n${table}`;
}

function cabinetText(choices: readonly CabinetChoice[], units: UnitSystem): string {
  const [own, ...others] = choices;
  if (!own || others.length === 0) return '';
  const outcomes = choices.map(({ outcome }) => outcome);
  const shared = columns(outcomes, [], units);
  // Starts give way to the years of the bank.
  const startsAt = shared.head.indexOf('starts');
  const withoutStarts = (cells: readonly string[]) => cells.filter((_, column) => column !== startsAt);
  const heated = choices.some(({ heaterKWh }) => heaterKWh > 0.05);
  const priced = choices.some(({ wearPerYear }) => wearPerYear !== null);
  const degrees = units === 'us' ? 'degF' : 'degC';
  const inDegrees = (celsius: number) => figure(units === 'us' ? celsius * 1.8 + 32 : celsius, 0);
  const byHours = outcomes.some(({ generatorHours }) => generatorHours > 0);
  const answer = others.map((choice) => cabinetAnswer(choice, own, byHours));
  const table = fittingTable(
    [
      'Cabinet',
      ...withoutStarts(shared.head),
      'cold',
      'warm',
      ...(heated ? ['heater'] : []),
      'bank',
      ...(priced ? ['wear'] : []),
    ],
    [
      [
        '',
        ...withoutStarts(shared.unit),
        degrees,
        degrees,
        ...(heated ? ['kWh'] : []),
        'years',
        ...(priced ? ['a year'] : []),
      ],
      ...choices.map(({ name, outcome, coldestBankC, warmestBankC, heaterKWh, bankYears, wearPerYear }) => [
        name,
        ...withoutStarts(shared.ofOutcome(outcome)),
        inDegrees(coldestBankC),
        inDegrees(warmestBankC),
        ...(heated ? [figure(heaterKWh)] : []),
        figure(bankYears, 1),
        ...(wearPerYear === null ? [] : [figure(wearPerYear, 0)]),
      ]),
    ],
  );
  const note = `Bank: years to 80 % of its capacity as the file's year uses and warms it${priced ? '; wear: its price over those years' : ''}.`;
  return `${wrap(`Cabinet: ${answer.join('; ')}. ${note}`)}\n${table}`;
}

/** What a cabinet does to engine or darkness, as far as the years can show it, and to the life of the bank. */
function cabinetAnswer({ name, difference, bankYears }: CabinetChoice, own: CabinetChoice, byHours: boolean): string {
  const { generatorHours, darkKWh } = difference!;
  const does = byHours
    ? hoursDifferenceInWords(generatorHours)
    : darkKWh.verdict === 'none'
      ? `no difference that ${count(darkKWh.years, 'year')} can show`
      : `${figure(Math.abs(darkKWh.mean))} kWh ${darkKWh.verdict} dark, ${yearsAgreeing(darkKWh)}`;
  const years = figure(bankYears, 1);
  const lasts =
    years === figure(own.bankYears, 1) ? '' : `, the bank lasts ${years} years, not ${figure(own.bankYears, 1)}`;
  return `${name}: ${does}${lasts}`;
}

/** A table whose first column gives way where the whole would be wider than the page. */
function fittingTable(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const widest = head.map((title, column) => Math.max(title.length, ...rows.map((row) => row[column]?.length ?? 0)));
  const others = widest.slice(1).reduce((sum, width) => sum + width + 2, 0);
  const room = Math.max(pageWidth - others, 8);
  return plainTable(
    head,
    rows.map(([name = '', ...cells]) => [name.length > room ? `${name.slice(0, room - 1)}~` : name, ...cells]),
  );
}
