import type { CommonAnswer, CommonFigures, PairedDifference, SnowRange } from '@wintergap/study';
import { darkKWhText } from './dark-text.js';
import { count, figure } from './figures.js';

// How what common years say is put in words: text pages and the HTML page take them from here.

/** `"a"`, `"a" and "b"`, `"a", "b" and "c"`. */
export function namesInWords(names: readonly string[]): string {
  const quoted = names.map((name) => `"${name}"`);
  return quoted.length < 2 ? quoted.join('') : `${quoted.slice(0, -1).join(', ')} and ${quoted.at(-1)}`;
}

/** `25 made years`, `3 real years`: what an answer rests on. */
export function yearsInWords({ count: years, kind }: CommonAnswer['weather']): string {
  const noun = { real: 'real year', resampled: 'resampled year', made: 'made year' }[kind];
  return years === 1 ? "the file's year" : count(years, noun);
}

/** `2.0 h less (1.6 to 2.4), in 23 of 25 years`, or that there is no difference. */
export function hoursDifferenceInWords(difference: PairedDifference, unit = 'h'): string {
  const { mean, low, high, years, verdict } = difference;
  if (verdict === 'none') return `no difference that ${count(years, 'year')} can show`;
  const word = mean < 0 ? 'less' : 'more';
  const [near, far] = mean < 0 ? [high, low] : [low, high];
  const range = near === null || far === null ? '' : ` (${rangeInWords(near, far, mean)})`;
  return `${figure(Math.abs(mean))} ${unit} ${word}${range}, ${yearsAgreeing(difference)}`;
}

function rangeInWords(near: number, far: number, mean: number): string {
  const sign = Math.sign(mean);
  return `${figure(sign * near)} to ${figure(sign * far)}`;
}

/** `in 23 of 25 years`: in how many the difference goes the way of its mean. */
export function yearsAgreeing({ mean, lessIn, equalIn, years }: PairedDifference): string {
  const agreeing = mean < 0 ? lessIn : years - lessIn - equalIn;
  return `in ${figure(agreeing, 0)} of ${count(years, 'year')}`;
}

/** `50 h in a usual year, one year in ten 71 h or more`. */
export function usualAndBad({ ranked: { generatorHours } }: CommonFigures): string {
  return `${figure(generatorHours.usual.value)} h in a usual year, one year in ten ${figure(generatorHours.oneInTen.value)} h or more`;
}

/** `28 kWh of load stay dark in a usual year, one year in ten 51 kWh or more, 60 kWh in the worst`. */
export function usualBadAndWorstDark({ ranked: { darkKWh } }: CommonFigures): string {
  const { usual, oneInTen, worst } = darkKWh;
  return `${darkKWhText(usual.value)} of load stay dark in a usual year, one year in ten ${darkKWhText(oneInTen.value)} or more, ${darkKWhText(worst)} in the worst`;
}

/**
 * The answer of a comparison in one or two sentences: a winner that chance does not explain, or a tie named as one; where
 * the order hangs on what snow does, that, and no winner.
 */
export function comparisonInWords(siteName: string, answer: CommonAnswer, snow: SnowRange | null = null): string {
  const { leaders, designs } = answer;
  if (!snow || designs.length < 2) return orderInWords(siteName, answer);
  if (snow.steady.length === 0) {
    const which = answer.merit === 'generatorHours' ? 'runs the engine least' : 'leaves the least load dark';
    return `${siteName}: snow decides which design ${which}: ${namesInWords(snow.none.leaders)} where it never lies on an array, ${namesInWords(snow.full.leaders)} where it covers them whole; with the snow of the site file ${namesInWords(leaders)}.`;
  }
  const stands =
    snow.steady.length === leaders.length
      ? 'That stands whatever snow does to the arrays.'
      : `Whatever snow does to the arrays, ${namesInWords(snow.steady)} ${snow.steady.length === 1 ? 'stays' : 'stay'} among the best.`;
  return `${orderInWords(siteName, answer)} ${stands}`;
}

function orderInWords(siteName: string, answer: CommonAnswer): string {
  const { leaders, merit, leftOut } = answer;
  const [base] = answer.designs;
  if (!base) return '';
  if (answer.designs.length === 1) return `${siteName}: the site file has no variants to compare.`;
  const designs = answer.designs.filter(({ name }) => !leftOut.includes(name));
  if (designs.length === 0) return `${siteName}: no design is within its limits, so none is recommended.`;
  const what = merit === 'generatorHours' ? 'engine' : 'dark load';
  if (answer.weather.count === 1) return oneYearInWords(siteName, designs, base, merit);
  const byName = (name: string) => designs.find((design) => design.name === name)!;
  const leading = leaders.map(byName);
  if (designs.length === 1) {
    return `${siteName}: only "${designs[0]!.name}" is within its limits, ${valueRange(designs, merit)}.`;
  }
  if (leaders.length === designs.length) {
    return `${siteName}: no difference in ${what} that ${yearsInWords(answer.weather)} can show between ${namesInWords(leaders)}: ${valueRange(leading, merit)}.`;
  }
  const [only] = leading;
  if (leading.length === 1 && only === base) {
    return `${siteName}: no variant is better than the base, ${merit === 'generatorHours' ? usualAndBad(base) : valueRange([base], merit)}.`;
  }
  if (leading.length === 1 && only) {
    const against = only.againstBase!;
    const gain =
      merit === 'generatorHours'
        ? `${usualAndBad(only)}; ${hoursDifferenceInWords(against.generatorHours)} against the base`
        : valueRange([only], merit);
    return `${siteName}: "${only.name}" ${merit === 'generatorHours' ? 'runs the engine least' : 'leaves the least load dark'}, ${gain}.`;
  }
  const tied = `${namesInWords(leaders)} are equal as far as ${yearsInWords(answer.weather)} can show, ${valueRange(leading, merit)}`;
  const rest = designs.filter(({ name }) => !leaders.includes(name)).map(({ name }) => name);
  return `${siteName}: ${tied}; beyond chance worse: ${namesInWords(rest)}.`;
}

/** One year shows what happened in it, and nothing of what usually happens. */
function oneYearInWords(
  siteName: string,
  designs: readonly CommonFigures[],
  base: CommonFigures,
  merit: CommonAnswer['merit'],
): string {
  const value = ({ ranked }: CommonFigures) => ranked[merit].usual.value;
  const least = designs.reduce((best, design) => (value(design) < value(best) ? design : best));
  const unit = merit === 'generatorHours' ? 'h of engine' : 'kWh dark';
  return `${siteName}: in this one year "${least.name}" needs least, ${figure(value(least))} ${unit} against ${figure(value(base))} of the base; one year cannot show whether that is luck (see --years).`;
}

function valueRange(designs: readonly CommonFigures[], merit: CommonAnswer['merit']): string {
  const [unit, values] =
    merit === 'generatorHours'
      ? ['h', designs.map(({ ranked }) => ranked.generatorHours.usual.value)]
      : ['kWh dark', designs.map(({ ranked }) => ranked.darkKWh.usual.value)];
  const least = figure(Math.min(...values));
  const most = figure(Math.max(...values));
  return `${least === most ? least : `${least} to ${most}`} ${unit} in a usual year`;
}
