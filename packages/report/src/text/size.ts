import { formatQuantity, type UnitSystem } from '@wintergap/quantity';
import type { Miss, SizeAnswer, SizedDesign, SnowTargets, TargetFigure } from '@wintergap/study';
import { valueText } from '@wintergap/study';
import { yearsInWords } from '../words/common-words.js';
import { count, figure, percent, wrap } from '../words/figures.js';
import { amountText } from '../words/money.js';
import { inVolumeUnit, volumeUnit } from '../words/shown-units.js';
import { handText } from './parts/hand.js';
import { plainTable } from './parts/plain-table.js';

/** The answer to `size` as a page of text, 80 columns, answer first. */
export function sizeText(answer: SizeAnswer, units: UnitSystem): string {
  return [
    [sizeHeadline(answer, units), snowLine(answer, units), searchedLine(answer)]
      .filter((part) => part !== '')
      .join('\n'),
    targetsTable(answer, units),
    triedTable(answer, units),
    answer.hand ? handText(answer, answer.hand, units) : '',
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
  const { met, design, surer, question, year, weather } = answer;
  const name = year.site.name;
  const targets = targetsText(answer, units);
  const size = `${figure(design.ratedKW)} kW of array and ${figure(design.bankKWh)} kWh of bank`;
  const sure = design.confidence === null ? '' : `, ${sureText(design)}`;
  const first = surer
    ? `${name}: the ${leastWords[question.least]} with ${targets} is, as far as ${yearsInWords(weather)} can tell, ${chosenText(design)}: ${size}. It misses ${design.misses.map((miss) => missText(miss, units, design)).join(' and ')}: no reason to build ${chosenText(surer)} (${figure(surer.ratedKW)} kW, ${figure(surer.bankKWh)} kWh), which is ${sureText(surer)}.`
    : met
      ? `${name}: the ${leastWords[question.least]} with ${targets} is ${chosenText(design)}: ${size}${sure}.`
      : `${name}: no design in these ranges has ${targets}. The nearest is ${chosenText(design)}, ${size}; it misses ${design.misses.map((miss) => missText(miss, units)).join(' and ')}.`;
  return wrap(first);
}

/** `84 % sure`: that the targets are met in years of this kind. */
function sureText({ confidence }: SizedDesign): string {
  const share = confidence ?? 1;
  return share > 0.995 ? 'more than 99 % sure' : `${percent(share)} sure`;
}

/** What becomes of the answer, and of the next smaller design, where snow never covers the arrays and where it always does. */
function snowLine({ snow, met }: SizeAnswer, units: UnitSystem): string {
  if (!snow) return '';
  const { design, nextSmaller } = snow;
  const misses = ({ misses }: SnowTargets['none']) => misses.map((miss) => missText(miss, units)).join(' and ');
  const isMet = (extreme: SnowTargets['none']) => extreme.misses.length === 0;
  const own = isMet(design.full)
    ? 'Snow does not change that: where it covers the arrays whole the target is met too.'
    : isMet(design.none)
      ? `Snow decides: without any on the arrays the target is met${met ? ', and with the snow of the site file' : ''}; where it covers them whole this design misses ${misses(design.full)}.`
      : `Without snow on the arrays it still misses ${misses(design.none)}, covered whole ${misses(design.full)}.`;
  const next =
    nextSmaller && isMet(nextSmaller.none) ? ' The next smaller design would do where snow never lay on them.' : '';
  return wrap(own + next);
}

function searchedLine({ designs, impossible, overLimits, tried }: SizeAnswer): string {
  const left = designs - impossible.count - overLimits.count - tried.length;
  const searched =
    left > 0
      ? `${tried.length} of ${count(designs, 'design')} were simulated; the other ${left} cannot be smaller.`
      : `All ${count(tried.length, 'design')} were simulated.`;
  const not =
    impossible.count > 0 ? ` ${count(impossible.count, 'design')} cannot be built (${impossible.reason}).` : '';
  const over =
    overLimits.count > 0 ? ` ${count(overLimits.count, 'design')} left out for a limit (${overLimits.reason}).` : '';
  return wrap(searched + not + over);
}

function targetsText({ question, weather }: SizeAnswer, units: UnitSystem): string {
  const { targets, judged } = question;
  const parts = (Object.entries(targets) as [TargetFigure, number][]).map(
    ([name, limit]) => `${limitText(name, limit, units)}`,
  );
  const inYear =
    weather.count === 1
      ? "in the file's year"
      : judged.kind === 'usual'
        ? `in the usual year (median of ${yearsInWords(weather)})`
        : `in a one-in-ten bad year (of ${yearsInWords(weather)})`;
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

const missText = ({ figure: name, by }: Miss, units: UnitSystem, of?: SizedDesign): string =>
  `${names[name]} by ${quantityText(name, by, units)}${of && of.errors[name] > 0 ? ` (standard error ${quantityText(name, of.errors[name], units)})` : ''}`;

const chosenText = ({ chosen }: SizedDesign): string =>
  Object.entries(chosen)
    .map(([path, value]) => `${path} ${valueText(value)}`)
    .join(', ');

function targetsTable({ design, surer, question, year, unpriced: lacking }: SizeAnswer, units: UnitSystem): string {
  const rows = (Object.entries(question.targets) as [TargetFigure, number][]).map(([name, limit]) => [
    names[name],
    `${name === 'autonomyDays' ? 'at least' : 'at most'} ${quantityText(name, limit, units)}`,
    reachedText(name, design.figures[name], limit, units),
    design.errors[name] > 0 ? `+/- ${quantityText(name, design.errors[name], units)}` : '',
    design.misses.some((miss) => miss.figure === name) ? (surer ? 'within the error' : 'missed') : 'met',
  ]);
  const { generator, throttle, load, bank } = year.summary;
  const usual = `The file's year: engine ${figure(generator.hours)} h in ${count(generator.starts, 'start')}, fuel ${formatQuantity(generator.fuelLitres, 'volume', units)}, dark ${figure(load.darkHours)} h, thrown away ${figure(throttle.kWh)} kWh, lowest charge ${percent(bank.minStateOfCharge)}, autonomy ${figure(bank.autonomyDays)} days.`;
  const unpriced = lacking.length > 0 ? ` Not in it, because it has no price: ${lacking.join(', ')}.` : '';
  const cost =
    design.cost === null
      ? ''
      : `\n${wrap(`Life-cycle cost, present value: ${amountText(design.cost, year.site.costs?.currency)}.${unpriced}`)}`;
  return `${plainTable(['', 'target', 'reached', 'error', ''], rows)}\n${wrap(usual)}${cost}`;
}

/** Designs that are shown beside the answer. */
const mostShown = 6;

/** What to show beside the answer: where size is known beforehand what failed just before it, otherwise the next best. */
function besideAnswer({ tried, design, met, question, weather, smaller }: SizeAnswer): {
  title: string;
  shown: SizedDesign[];
} {
  const others = tried.filter((one) => JSON.stringify(one.chosen) !== JSON.stringify(design.chosen));
  const { least } = question;
  if (met && (least === 'cost' || least === 'generatorHours')) {
    const measure = (one: SizedDesign) => (least === 'cost' ? one.cost! : one.figures.generatorHours);
    const good = others.filter(({ misses }) => misses.length === 0).sort((a, b) => measure(a) - measure(b));
    if (good.length > 0) return { title: 'Next best designs', shown: good.slice(0, mostShown) };
  }
  if (smaller.length > 0) return { title: 'Next smaller designs (* misses the target)', shown: smaller };
  const sooner = weather.count === 1 ? '' : '; with fewer years where that was sure sooner';
  return {
    title: `Designs tried last, smallest first (* misses the target${sooner})`,
    shown: others.slice(-mostShown),
  };
}

function triedTable(answer: SizeAnswer, units: UnitSystem): string {
  const { design, question } = answer;
  const { title, shown } = besideAnswer(answer);
  if (shown.length === 0) return '';
  const missed = answer.smaller.map((one) =>
    wrap(`${chosenText(one)} misses ${one.misses.map((miss) => missText(miss, units, one)).join(' and ')}.`, 80, '  '),
  );
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
  if (Math.max(...beside.split('\n').map((line) => line.length)) <= 80)
    return [wrap(title), beside, ...missed].join('\n');
  const numbered = shown.map((one, i) => [String(i + 1), ...figuresOf(one)]);
  const names = shown.map((one, i) => wrap(`${i + 1}: ${chosenText(one)}`, 80, '   '));
  return [wrap(title), plainTable(['', ...head], [['', ...unitRow], ...numbered]), ...names, ...missed].join('\n');
}
