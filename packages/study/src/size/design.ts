import { type Costs, labelledKWh, ratedKW, unpricedNames } from '@wintergap/seasonal';
import { changedDesign, type Site, SiteError, type SiteFile } from '@wintergap/site';
import { exceededLimits, PreparedCache, simulateSite, siteLimits, type YearResult } from '@wintergap/year';
import { snowCovers } from '../common/snow-range.js';
import { gridChanges, gridDesign, gridSize } from '../design/grid.js';
import { type HandForYear, handForYear } from '../hand/from-year.js';
import { sectionError } from '../section-error.js';
import type { YearFigures } from '../year-figures.js';
import { judgedAgainst } from './judged.js';
import { costOf, leastCost, readSizeCosts } from './measure.js';
import { nearestTo } from './nearest.js';
import { type Candidate, searchSmallest, type Tried } from './search.js';
import type { SizeQuestion } from './section.js';
import { type SnowTargets, snowTargets } from './snow-targets.js';
import type { Miss, Targets, TargetValues } from './targets.js';
import { createTrial, judgedShare, type SizeTrial } from './trial.js';

/** A design that was looked at while sizing. */
export interface SizedDesign {
  /** What was chosen, as written in the site file. */
  chosen: Record<string, unknown>;
  ratedKW: number;
  bankKWh: number;
  /** Life-cycle cost under the site's own weather; `null` unless sizing goes by cost and the targets are met. */
  cost: number | null;
  /** The figures held against the targets: medians of the common years, or their one-in-ten values. */
  figures: TargetValues;
  /** Standard errors of these figures; 0 where one year is all there is. */
  errors: TargetValues;
  /** How sure it is, 0 to 1, that the target which is least sure is met; `null` of one year. */
  confidence: number | null;
  /** Empty when every target is met. */
  misses: Miss[];
  /** Weather years behind the figures; fewer than asked for when the design had failed by then. */
  yearsRun: number;
}

export interface SizeAnswer {
  /** Whether a design meets the targets, or misses them by less than the years' error. */
  met: boolean;
  /** The smallest design that does, or else the one that comes nearest. */
  design: SizedDesign;
  /**
   * The smallest design whose figures lie within the targets, where `design` is a smaller one that misses them by less
   * than the error; otherwise `null`.
   */
  surer: SizedDesign | null;
  /** The next smaller designs, the next one first, each run through all years. */
  smaller: SizedDesign[];
  /** The answer and the next smaller design without snow and with full cover; `null` where snow covers no array. */
  snow: { design: SnowTargets; nextSmaller: SnowTargets | null } | null;
  /** Its year under the site's own weather. */
  year: YearResult;
  /** What the rule of thumb would install; `null` without array or load. */
  hand: HandForYear | null;
  question: SizeQuestion;
  /** The common years. */
  weather: SizeTrial['weather'];
  /** Designs in the ranges, and how many of them cannot be built, with the first reason. */
  designs: number;
  impossible: { count: number; reason: string | null };
  /** Designs that came up and exceed a limit, so that they must not be built; with the first reason. */
  overLimits: { count: number; reason: string | null };
  /** Names of things without a price, which no cost has in it. */
  unpriced: string[];
  /** Every design that was simulated, in the order of trying; those left out cannot be smaller than the answer. */
  tried: SizedDesign[];
}

interface Choice {
  site: Site;
  chosen: Record<string, unknown>;
}

interface Outcome extends Choice {
  years: YearFigures[];
  meets: boolean;
  measure: number;
  sized: SizedDesign;
}

/** Next smaller designs that are run through all years. */
const mostSmaller = 4;

/**
 * The smallest or cheapest of the designs in `question.axes` that meets its targets, found as exhaustive search would
 * find it (see `searchSmallest`); then a smaller one where that misses a target by less than the error of the years, which
 * is no reason to buy more. A target of none stays one: no error excuses dark hours.
 *
 * @param prepared shared with other runs of the same site
 * @param onTried called after each design with how many were tried, and how many there are at most
 * @throws SiteError when no design can be built, or `least: cost` lacks prices
 */
export function sizeDesign(
  site: SiteFile,
  question: SizeQuestion,
  prepared: PreparedCache = new PreparedCache(),
  onTried?: (tried: number, atMost: number) => void,
): SizeAnswer {
  const { targets, judged, least } = question;
  const share = judgedShare[judged.kind];
  const costs = least === 'cost' ? readSizeCosts(site, question.axes, prepared) : null;
  const { choices, reasons } = choicesOf(site, question);
  const candidates = choices.map((choice) => candidateOf(choice, question, costs));
  const trial = createTrial(site.base, judged, targets);
  const ownYearOf = (choice: Choice): YearResult => simulateSite(choice.site, prepared);
  const outcomeOf = (choice: Choice, years: YearFigures[]): Outcome => {
    const { figures, errors, misses, confidence } = judgedAgainst(years, targets, share);
    const meets = years.length === trial.weather.count && misses.length === 0;
    const sized: SizedDesign = {
      chosen: choice.chosen,
      ratedKW: ratedKW(choice.site),
      bankKWh: labelledKWh(choice.site),
      cost: costs && meets ? costOf(ownYearOf(choice), costs) : null,
      figures,
      errors,
      confidence,
      misses,
      yearsRun: years.length,
    };
    return { ...choice, years, meets, measure: meets ? measureOf(sized, question) : Number.POSITIVE_INFINITY, sized };
  };
  const overLimits: string[] = [];
  const tryOut = (choice: Choice): Tried<Outcome> | null => {
    const [limit] = exceededLimits(siteLimits(choice.site, prepared));
    if (limit) {
      overLimits.push(`${limit.array}: ${limit.text}`);
      return null;
    }
    const outcome = outcomeOf(choice, trial.run(choice.site));
    return { meets: outcome.meets, measure: outcome.measure, outcome };
  };
  const { best, tried } = searchSmallest(candidates, tryOut, (count) => onTried?.(count, candidates.length));
  const outcomes = tried.map(({ outcome }) => outcome);
  if (outcomes.length === 0) {
    throw sectionError(site, ['size', 'choose'], `every design exceeds a limit, the first: ${overLimits[0]}`);
  }
  const inFull = (outcome: Outcome): Outcome => outcomeOf(outcome, trial.complete(outcome.site, outcome.years));
  const smaller = best ? smallerThan(best, outcomes, question).slice(0, mostSmaller).map(inFull) : [];
  const preferred = smaller.findLastIndex(({ sized }) => isWithinError(sized, targets));
  const answer = smaller[preferred] ?? best ?? inFull(nearestTo(targets, outcomes, share));
  const below = smaller.slice(preferred + 1);
  const year = ownYearOf(answer);
  return {
    met: best !== null,
    design: answer.sized,
    surer: best !== null && answer !== best ? best.sized : null,
    smaller: below.map(({ sized }) => sized),
    snow: snowCovers([year]) ? snowOf(answer, below[0], trial, question) : null,
    year,
    hand: handForYear(year, question.hand),
    question,
    weather: trial.weather,
    designs: gridSize(question.axes),
    impossible: { count: reasons.length, reason: reasons[0] ?? null },
    overLimits: { count: overLimits.length, reason: overLimits[0] ?? null },
    unpriced: costs ? unpricedNames(year.site, costs) : [],
    tried: outcomes.map(({ sized }) => sized),
  };
}

/** How surely the answer and the next smaller one meet the targets if snow stays, or slides at once. */
const snowOf = (
  answer: Outcome,
  nextSmaller: Outcome | undefined,
  trial: ReturnType<typeof createTrial>,
  question: SizeQuestion,
): SizeAnswer['snow'] => ({
  design: snowTargets(answer.site, trial, question),
  nextSmaller: nextSmaller ? snowTargets(nextSmaller.site, trial, question) : null,
});

/** Designs that failed and are smaller than the best, the largest of them first; none where size is not what counts. */
function smallerThan(best: Outcome, outcomes: readonly Outcome[], { least }: SizeQuestion): Outcome[] {
  // Tried in the order of array or bank. What a design costs that fails is not known without running it.
  if (least !== 'array' && least !== 'bank') return [];
  return outcomes.slice(0, outcomes.indexOf(best)).reverse();
}

/** Whether every target is met, or missed by less than the standard error. */
const isWithinError = ({ misses, errors }: SizedDesign, targets: Targets): boolean =>
  misses.every(({ figure, by }) => targets[figure]! > 0 && by < errors[figure]);

/** Every design of the ranges that can be built, and why the others cannot. */
function choicesOf(site: SiteFile, { axes }: SizeQuestion): { choices: Choice[]; reasons: string[] } {
  const choices: Choice[] = [];
  const reasons: string[] = [];
  let first: SiteError | null = null;
  for (let number = 1; number <= gridSize(axes); number++) {
    const { values } = gridDesign(axes, number);
    const { variant, changes } = gridChanges(axes, values);
    try {
      const chosen = Object.fromEntries(axes.map(({ path }, a) => [path, values[a]]));
      choices.push({ site: changedDesign(site, changes, variant), chosen });
    } catch (error) {
      if (!(error instanceof SiteError)) throw error;
      first ??= error;
      reasons.push(error.problems.map(({ path, message }) => `${path}: ${message}`).join('; '));
    }
  }
  if (choices.length === 0 && first) throw first;
  return { choices, reasons };
}

function candidateOf(choice: Choice, { least }: SizeQuestion, costs: Costs | null): Candidate<Choice> {
  const array = ratedKW(choice.site);
  const bank = labelledKWh(choice.site);
  switch (least) {
    case 'array':
      return { design: choice, atLeast: array, tieBreak: [bank] };
    case 'bank':
      return { design: choice, atLeast: bank, tieBreak: [array] };
    case 'cost':
      return { design: choice, atLeast: leastCost(choice.site, costs!), tieBreak: [array, bank] };
    case 'generatorHours':
      return { design: choice, atLeast: 0, tieBreak: [array, bank] };
  }
}

function measureOf({ ratedKW: array, bankKWh: bank, cost, figures }: SizedDesign, { least }: SizeQuestion): number {
  switch (least) {
    case 'array':
      return array;
    case 'bank':
      return bank;
    case 'cost':
      return cost!;
    case 'generatorHours':
      return figures.generatorHours;
  }
}
