import { type Ranked, type RankedFigure, rankedFigures, rankYears } from '../outlook/rank.js';
import type { CommonRun } from './common-wish.js';
import { type DesignYears, isBetter, leadersOf, type Merit, meritDifference, meritOf } from './merit.js';
import { type PairedDifference, type YearsMean, yearsMean } from './paired-difference.js';

/** One design over the common years: its usual and its bad year, and what it has more than the base. */
export interface CommonFigures {
  name: string;
  ranked: Record<RankedFigure, Ranked>;
  generatorHours: YearsMean;
  fuelLitres: YearsMean;
  darkKWh: YearsMean;
  /** Mean engine hours of each month, January first. */
  monthHours: number[];
  /** Mean engine hours of each of 52 weeks from 1 January, and the share of years in which it runs in that week. */
  weekHours: number[];
  weekRuns: number[];
  /** Engine hours of each year, in the order of the years. */
  hoursOfYears: number[];
  /** Fuel of each year, in the same order. */
  litresOfYears: number[];
  /** Less the base, year by year; of the base itself, nothing. */
  againstBase: { generatorHours: PairedDifference; darkKWh: PairedDifference } | null;
}

/** Designs over common years. */
export interface CommonAnswer {
  weather: CommonRun['weather'];
  merit: Merit;
  /** The base first. */
  designs: CommonFigures[];
  /** Names of designs that exceed a calculated limit: they are shown, and never lead. */
  leftOut: string[];
  /** Names of the designs that no other is better than: one, or those that chance does not tell apart. */
  leaders: string[];
  /** Of each design, the names of those that are better than it beyond chance. */
  beatenBy: Record<string, string[]>;
}

/**
 * What common years say of designs; the first is the base that the others are held against.
 *
 * @param leftOut names of designs that must not be recommended
 */
export function commonAnswer({ weather, designs }: CommonRun, leftOut: readonly string[] = []): CommonAnswer {
  const sound = designs.filter(({ name }) => !leftOut.includes(name));
  const merit = meritOf(designs);
  const [base] = designs;
  return {
    weather,
    merit,
    designs: designs.map((design) => figuresOf(design, design === base ? null : base!)),
    leftOut: [...leftOut],
    leaders: leadersOf(sound).map(({ name }) => name),
    beatenBy: Object.fromEntries(
      designs.map((design) => [
        design.name,
        sound.filter((other) => other !== design && isBetter(other, design)).map(({ name }) => name),
      ]),
    ),
  };
}

function figuresOf(design: DesignYears, base: DesignYears | null): CommonFigures {
  const { name, years } = design;
  const figures = Object.keys(rankedFigures) as RankedFigure[];
  const of = (figure: 'generatorHours' | 'fuelLitres' | 'darkKWh') => years.map((year) => year[figure]);
  return {
    name,
    ranked: Object.fromEntries(figures.map((figure) => [figure, rankYears(years, figure)])) as CommonFigures['ranked'],
    generatorHours: yearsMean(of('generatorHours')),
    fuelLitres: yearsMean(of('fuelLitres')),
    darkKWh: yearsMean(of('darkKWh')),
    monthHours: meanOfEach(years.map(({ generatorMonthHours }) => generatorMonthHours)),
    weekHours: meanOfEach(years.map(({ generatorWeekHours }) => generatorWeekHours)),
    weekRuns: meanOfEach(years.map(({ generatorWeekHours }) => generatorWeekHours.map((hours) => (hours > 0 ? 1 : 0)))),
    hoursOfYears: of('generatorHours'),
    litresOfYears: of('fuelLitres'),
    againstBase: base && {
      generatorHours: meritDifference(design, base, 'generatorHours'),
      darkKWh: meritDifference(design, base, 'darkKWh'),
    },
  };
}

/** Place by place the mean of lists of one length. */
const meanOfEach = (lists: readonly (readonly number[])[]): number[] =>
  lists[0]!.map((_, at) => lists.reduce((sum, list) => sum + (list[at] ?? 0), 0) / lists.length);
