import { formatQuantity, type UnitSystem } from '@wintergap/quantity';
import type { HandForYear, Miss, SizeAnswer, SizedDesign, TargetFigure } from '@wintergap/study';
import { valueText } from '@wintergap/study';
import { monthNames } from '@wintergap/tally';
import { count, figure, percent, wrap } from './figures.js';
import { plainTable } from './plain-table.js';

/** The answer to `size` as a page of text, 80 columns, answer first. */
export function sizeText(answer: SizeAnswer, units: UnitSystem): string {
  return [
    sizeHeadline(answer, units),
    targetsTable(answer, units),
    triedTable(answer, units),
    answer.hand ? handText(answer, answer.hand) : '',
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

const leastWords: Record<SizeAnswer['question']['least'], string> = {
  array: 'smallest array',
  bank: 'smallest bank',
  cost: 'cheapest design',
  generatorHours: 'design with the fewest generator hours',
};

function sizeHeadline(answer: SizeAnswer, units: UnitSystem): string {
  const { met, design, question, tried, designs, impossible, year } = answer;
  const name = year.site.name;
  const targets = targetsText(answer, units);
  const size = `${figure(design.ratedKW)} kW of array and ${figure(design.bankKWh)} kWh of bank`;
  const first = met
    ? `${name}: the ${leastWords[question.least]} with ${targets} is ${chosenText(design)}: ${size}.`
    : `${name}: no design in these ranges has ${targets}. The nearest is ${chosenText(design)}, ${size}; it misses ${design.misses.map((miss) => missText(miss, units)).join(' and ')}.`;
  const left = designs - impossible.count - tried.length;
  const searched =
    left > 0
      ? `${tried.length} of ${count(designs, 'design')} were simulated; the other ${left} cannot be smaller.`
      : `All ${count(designs - impossible.count, 'design')} were simulated.`;
  const not =
    impossible.count > 0 ? ` ${count(impossible.count, 'design')} cannot be built (${impossible.reason}).` : '';
  return [first, searched + not].map((sentence) => wrap(sentence)).join('\n');
}

function targetsText({ question }: SizeAnswer, units: UnitSystem): string {
  const { targets, judged } = question;
  const parts = (Object.entries(targets) as [TargetFigure, number][]).map(
    ([name, limit]) => `${limitText(name, limit, units)}`,
  );
  const inYear = judged.kind === 'usual' ? 'in the usual year' : `in a one-in-ten bad year (of ${judged.years})`;
  return `${parts.join(', ')} ${inYear}`;
}

const names: Record<TargetFigure, string> = {
  generatorHours: 'generator hours',
  fuelLitres: 'fuel',
  darkHours: 'dark hours',
  autonomyDays: 'autonomy',
};

/** A limit as it was written: `3`, not `3.0`. */
const amount = (value: number): string => (Number.isInteger(value) ? figure(value, 0) : figure(value));

function limitText(name: TargetFigure, limit: number, units: UnitSystem): string {
  if (name === 'autonomyDays') return `at least ${quantityText(name, limit, units)} of autonomy`;
  if (limit === 0) return `no ${names[name]}`;
  return name === 'fuelLitres'
    ? `at most ${quantityText(name, limit, units)} of fuel`
    : `at most ${amount(limit)} ${names[name]}`;
}

function quantityText(name: TargetFigure, value: number, units: UnitSystem): string {
  if (name === 'fuelLitres') return formatQuantity(value, 'volume', units);
  return name === 'autonomyDays' ? `${amount(value)} days` : `${amount(value)} h`;
}

const missText = ({ figure: name, by }: Miss, units: UnitSystem): string =>
  `${names[name]} by ${quantityText(name, by, units)}`;

const chosenText = ({ chosen }: SizedDesign): string =>
  Object.entries(chosen)
    .map(([path, value]) => `${path} ${valueText(value)}`)
    .join(', ');

function targetsTable({ design, question, year }: SizeAnswer, units: UnitSystem): string {
  const rows = (Object.entries(question.targets) as [TargetFigure, number][]).map(([name, limit]) => [
    names[name],
    `${name === 'autonomyDays' ? 'at least' : 'at most'} ${quantityText(name, limit, units)}`,
    quantityText(name, design.figures[name], units),
    design.misses.some((miss) => miss.figure === name) ? 'missed' : 'met',
  ]);
  const { generator, throttle, load, bank } = year.summary;
  const usual = `Usual year: engine ${figure(generator.hours)} h in ${count(generator.starts, 'start')}, fuel ${formatQuantity(generator.fuelLitres, 'volume', units)}, dark ${figure(load.darkHours)} h, thrown away ${figure(throttle.kWh)} kWh, lowest charge ${percent(bank.minStateOfCharge)}, autonomy ${figure(bank.autonomyDays)} days.`;
  const cost = design.cost === null ? '' : `\nLife-cycle cost, present value: ${figure(design.cost, 0)}.`;
  return `${plainTable(['', 'target', 'reached', ''], rows)}\n${wrap(usual)}${cost}`;
}

/** Designs that are shown beside the answer: the last that were tried. */
const mostShown = 6;

function triedTable({ tried, design, question }: SizeAnswer, units: UnitSystem): string {
  const others = tried.filter((one) => JSON.stringify(one.chosen) !== JSON.stringify(design.chosen));
  const shown = others.slice(-mostShown);
  if (shown.length === 0) return '';
  const paths = Object.keys(design.chosen);
  const marked = (one: SizedDesign, name: TargetFigure, text: string) =>
    one.misses.some((miss) => miss.figure === name) ? `${text} *` : text;
  const figuresOf = (one: SizedDesign) => [
    figure(one.ratedKW),
    figure(one.bankKWh),
    marked(one, 'generatorHours', figure(one.figures.generatorHours)),
    marked(one, 'fuelLitres', formatQuantity(one.figures.fuelLitres, 'volume', units)),
    marked(one, 'darkHours', figure(one.figures.darkHours)),
    marked(one, 'autonomyDays', figure(one.figures.autonomyDays)),
    ...(question.least === 'cost' ? [one.cost === null ? '' : figure(one.cost, 0)] : []),
  ];
  const head = ['array', 'bank', 'engine', 'fuel', 'dark', 'autonomy', ...(question.least === 'cost' ? ['cost'] : [])];
  const unitRow = ['kW', 'kWh', 'h', '', 'h', 'days', ...(question.least === 'cost' ? [''] : [])];
  const title = `Designs tried last, in the order of trying (* misses the target${question.judged.kind === 'usual' ? '' : '; with fewer years where that was sure sooner'})`;
  const beside = plainTable(
    [...paths.map((path) => path.slice(path.lastIndexOf('.') + 1)), ...head],
    [
      [...paths.map(() => ''), ...unitRow],
      ...shown.map((one) => [...paths.map((path) => valueText(one.chosen[path])), ...figuresOf(one)]),
    ],
  );
  if (Math.max(...beside.split('\n').map((line) => line.length)) <= 80) return `${wrap(title)}\n${beside}`;
  const numbered = shown.map((one, i) => [String(i + 1), ...figuresOf(one)]);
  const names = shown.map((one, i) => wrap(`${i + 1}: ${chosenText(one)}`, 80, '   '));
  return [wrap(title), plainTable(['', ...head], [['', ...unitRow], ...numbered]), ...names].join('\n');
}

function handText({ design, year }: SizeAnswer, hand: HandForYear): string {
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
      `${figure(bank.capacityAh)} at ${figure(bank.dischargeTimeH, 0)} h`,
      `${figure(site.bank.capacity)} at ${figure(site.bank.atRate, 0)} h`,
      times(bank.capacityAh, site.bank.capacity),
    ],
    ['days without sun', figure(settings.autonomyDays), figure(summary.bank.autonomyDays), ''],
  );
  const sun = array
    ? `${month} decides: ${figure(array.dailyLoadAh)} Ah a day at the bus, ${figure(array.sunHours)} h of sun on the plane, array-to-load ratio ${settings.ratio}, ${percent(settings.losses)} lost. `
    : 'No array is large enough by hand: a month has no sun. ';
  const store =
    `Bank: ${figure(bank.unadjustedAh)} Ah without sun, set by ${bank.decidedBy}, x ${bank.temperatureFactor.toFixed(2)} for ${figure(hand.lowestC)} degC, x ${bank.margin} to spare.` +
    " A bank gives more over a longer time: compare in the maker's table.";
  return [
    'By hand (IEEE 1562 array, IEEE 1013 bank), which knows no hours, snow or engine',
    plainTable(['', 'by hand', 'this design', 'by hand is'], rows),
    wrap(sun + store),
  ].join('\n');
}

const times = (hand: number, design: number): string => (design > 0 ? `${(hand / design).toFixed(2)} times` : '');
