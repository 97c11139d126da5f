import { type Costs, labelledKWh, ratedKW } from '@wintergap/seasonal';
import { changedDesign, type Site, SiteError, type SiteFile } from '@wintergap/site';
import { PreparedCache, simulateSite, type YearResult } from '@wintergap/year';
import { gridChanges, gridDesign, gridSize } from '../design/grid.js';
import { type HandForYear, handForYear } from '../hand/from-year.js';
import type { YearFigures } from '../year-figures.js';
import { costOf, leastCost, readSizeCosts } from './measure.js';
import { nearestTo } from './nearest.js';
import { type Candidate, searchSmallest, type Tried } from './search.js';
import type { SizeQuestion } from './section.js';
import { type Miss, missesOf, type TargetValues } from './targets.js';
import { createTrial, judgedValues, type TrialRun } from './trial.js';

/** A design that was looked at while sizing. */
export interface SizedDesign {
  /** What was chosen, as written in the site file. */
  chosen: Record<string, unknown>;
  ratedKW: number;
  bankKWh: number;
  /** Life-cycle cost under the site's own weather; `null` unless sizing goes by cost and the targets are met. */
  cost: number | null;
  /** The figures held against the targets: those of the usual year, or of the one-in-ten year. */
  figures: TargetValues;
  /** Empty when every target is met. */
  misses: Miss[];
  /** Weather years behind the figures; fewer than asked for when the design had failed by then. */
  yearsRun: number;
}

export interface SizeAnswer {
  /** Whether a design meets the targets. */
  met: boolean;
  /** The smallest design that does, or else the one that comes nearest. */
  design: SizedDesign;
  /** Its year under the site's own weather. */
  year: YearResult;
  /** What the rule of thumb would install; `null` without array or load. */
  hand: HandForYear | null;
  question: SizeQuestion;
  /** Designs in the ranges, and how many of them cannot be built, with the first reason. */
  designs: number;
  impossible: { count: number; reason: string | null };
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
  sized: SizedDesign;
}

/**
 * The smallest or cheapest of the designs in `question.axes` that meets its targets, found as exhaustive search would
 * find it; see `searchSmallest`.
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
  const costs = question.least === 'cost' ? readSizeCosts(site, prepared) : null;
  const { choices, reasons } = choicesOf(site, question);
  const candidates = choices.map((choice) => candidateOf(choice, question, costs));
  const trial = createTrial(site.base, question.judged, question.targets, prepared);
  const ownYearOf = (choice: Choice): YearResult => simulateSite(choice.site, prepared);
  const outcomeOf = (choice: Choice, { years, ownYear }: TrialRun): Outcome => {
    const figures = judgedValues(years);
    const misses = missesOf(figures, question.targets);
    const meets = years.length === trial.years && misses.length === 0;
    const sized: SizedDesign = {
      chosen: choice.chosen,
      ratedKW: ratedKW(choice.site),
      bankKWh: labelledKWh(choice.site),
      cost: costs && meets ? costOf(ownYear ?? ownYearOf(choice), costs) : null,
      figures,
      misses,
      yearsRun: years.length,
    };
    return { ...choice, years, meets, sized };
  };
  const tryOut = (choice: Choice): Tried<Outcome> => {
    const outcome = outcomeOf(choice, trial.run(choice.site));
    const { meets, sized } = outcome;
    return { meets, measure: meets ? measureOf(sized, question) : Number.POSITIVE_INFINITY, outcome };
  };
  const { best, tried } = searchSmallest(candidates, tryOut, (count) => onTried?.(count, candidates.length));
  let answer = best;
  if (answer === null) {
    const nearest = nearestTo(
      question.targets,
      tried.map(({ outcome }) => outcome),
    );
    answer = nearest.years.length < trial.years ? outcomeOf(nearest, trial.runAll(nearest.site)) : nearest;
  }
  const year = ownYearOf(answer);
  return {
    met: best !== null,
    design: answer.sized,
    year,
    hand: handForYear(year, question.hand),
    question,
    designs: gridSize(question.axes),
    impossible: { count: reasons.length, reason: reasons[0] ?? null },
    tried: tried.map(({ outcome }) => outcome.sized),
  };
}

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
