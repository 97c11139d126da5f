import type { YearFigures } from '../year-figures.js';
import { type PairedDifference, pairedDifference } from './paired-difference.js';

/** A design and its figures in each of the common years, in their order. */
export interface DesignYears {
  name: string;
  years: readonly YearFigures[];
}

/** What designs of a place are held against each other by. */
export type Merit = 'generatorHours' | 'darkKWh';

/** Engine hours where any design runs an engine, otherwise the load that stays dark. */
export function meritOf(designs: readonly DesignYears[]): Merit {
  const runs = designs.some(({ years }) => years.some(({ generatorHours }) => generatorHours > 0));
  return runs ? 'generatorHours' : 'darkKWh';
}

/** Nobody decides on less than half an hour of engine a year, nor on less than a hundredth of what there is. */
const smallestHours = 0.5;
/** Nor on half a kilowatt-hour of dark load. */
const smallestDarkKWh = 0.5;
const smallestShare = 0.01;

const valuesOf = (design: DesignYears, figure: keyof YearFigures): number[] =>
  design.years.map((year) => year[figure] as number);

/** The least mean difference from `base` that counts in a figure. */
function smallestThatMatters(base: readonly number[], figure: Merit): number {
  return smallestOf(base.reduce((sum, value) => sum + value, 0) / base.length, figure);
}

const smallestOf = (mean: number, figure: Merit): number =>
  Math.max(figure === 'generatorHours' ? smallestHours : smallestDarkKWh, smallestShare * mean);

/** Whether anybody would decide on `saved` of a figure that is `of`. */
export const matters = (saved: number, of: number, figure: Merit): boolean => saved >= smallestOf(of, figure);

/** What a design has more of its place's merit figure than the other, over the common years. */
export function meritDifference(design: DesignYears, base: DesignYears, merit: Merit): PairedDifference {
  const of = valuesOf(base, merit);
  return pairedDifference(valuesOf(design, merit), of, smallestThatMatters(of, merit));
}

/**
 * Whether a design is better than another beyond chance: less engine time, and no more load left dark for it; or as much
 * engine time and less dark load.
 */
export function isBetter(design: DesignYears, other: DesignYears): boolean {
  const dark = meritDifference(design, other, 'darkKWh').verdict;
  const hours = meritDifference(design, other, 'generatorHours').verdict;
  return (hours === 'less' && dark !== 'more') || (dark === 'less' && hours !== 'more');
}

/** The designs that no other is better than, in their order: one winner, or those that chance does not tell apart. */
export function leadersOf<Design extends DesignYears>(designs: readonly Design[]): Design[] {
  return designs.filter((design) => !designs.some((other) => other !== design && isBetter(other, design)));
}

/**
 * Whether more years could change what is said of the best of these designs: another seems worse, or as good as better,
 * by enough to matter, and chance alone might make it so.
 */
export function moreYearsCouldTell(designs: readonly DesignYears[]): boolean {
  const merit = meritOf(designs);
  const mean = (design: DesignYears) => valuesOf(design, merit).reduce((sum, value) => sum + value, 0);
  const [first] = designs;
  if (!first) return false;
  const least = designs.reduce((best, design) => (mean(design) < mean(best) ? design : best));
  return designs.some((design) => {
    if (design === least) return false;
    const { mean: apart, verdict } = meritDifference(design, least, merit);
    return verdict === 'none' && apart >= smallestThatMatters(valuesOf(least, merit), merit);
  });
}
