import { formatQuantity, type UnitSystem } from '@wintergap/quantity';
import type { Miss, SizeAnswer, SizedDesign, TargetFigure } from '@wintergap/study';
import { valueText } from '@wintergap/study';
import { count, figure, percent, wrap } from '../figures.js';
import { inVolumeUnit, volumeUnit } from '../shown-units.js';
import { handText } from './hand.js';
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

/** What a design reaches, with as many decimals as tell it from the limit that it misses. */
function reachedText(name: TargetFigure, value: number, limit: number, units: UnitSystem): string {
  const text = quantityText(name, value, units);
  if (value === limit || text !== quantityText(name, limit, units)) return text;
  const scale = name === 'fuelLitres' ? inVolumeUnit(1, units) : 1;
  const unit = name === 'fuelLitres' ? volumeUnit(units) : name === 'autonomyDays' ? 'days' : 'h';
  for (let digits = 1; digits < 6; digits++) {
    const finer = (value * scale).toFixed(digits);
    if (Number(finer) !== Number((limit * scale).toFixed(digits))) return `${finer} ${unit}`;
  }
  return text;
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
    reachedText(name, design.figures[name], limit, units),
    design.misses.some((miss) => miss.figure === name) ? 'missed' : 'met',
  ]);
  const { generator, throttle, load, bank } = year.summary;
  const usual = `Usual year: engine ${figure(generator.hours)} h in ${count(generator.starts, 'start')}, fuel ${formatQuantity(generator.fuelLitres, 'volume', units)}, dark ${figure(load.darkHours)} h, thrown away ${figure(throttle.kWh)} kWh, lowest charge ${percent(bank.minStateOfCharge)}, autonomy ${figure(bank.autonomyDays)} days.`;
  const cost = design.cost === null ? '' : `\nLife-cycle cost, present value: ${figure(design.cost, 0)}.`;
  return `${plainTable(['', 'target', 'reached', ''], rows)}\n${wrap(usual)}${cost}`;
}

/** Designs that are shown beside the answer. */
const mostShown = 6;

/** What to show beside the answer: where size is known beforehand what failed just before it, otherwise the next best. */
function besideAnswer({ tried, design, met, question }: SizeAnswer): { title: string; shown: SizedDesign[] } {
  const others = tried.filter((one) => JSON.stringify(one.chosen) !== JSON.stringify(design.chosen));
  const { least, judged } = question;
  if (met && (least === 'cost' || least === 'generatorHours')) {
    const measure = (one: SizedDesign) => (least === 'cost' ? one.cost! : one.figures.generatorHours);
    const good = others.filter(({ misses }) => misses.length === 0).sort((a, b) => measure(a) - measure(b));
    if (good.length > 0) return { title: 'Next best designs', shown: good.slice(0, mostShown) };
  }
  const sooner = judged.kind === 'usual' ? '' : '; with fewer years where that was sure sooner';
  return {
    title: `Designs tried last, smallest first (* misses the target${sooner})`,
    shown: others.slice(-mostShown),
  };
}

function triedTable(answer: SizeAnswer, units: UnitSystem): string {
  const { design, question } = answer;
  const { title, shown } = besideAnswer(answer);
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
