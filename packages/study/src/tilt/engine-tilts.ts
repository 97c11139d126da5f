import { commonAnswer } from '../common/common-answer.js';
import type { CommonRun } from '../common/common-wish.js';
import { type DesignYears, meritDifference, meritOf } from '../common/merit.js';
import { type PairedDifference, type YearsMean, yearsMean } from '../common/paired-difference.js';
import type { SnowRange } from '../common/snow-range.js';

/** A tilt that was tried over the common years. */
export interface TriedTilt {
  tiltDeg: number;
  hours: YearsMean;
  usualHours: number;
  oneInTenHours: number;
  fuelLitres: number;
  /** Against the tilt with the least mean hours. */
  againstLeast: PairedDifference;
}

export interface TiltSpan {
  fromDeg: number;
  toDeg: number;
}

/**
 * Engine hours by tilt over the common years: a flat bottom and not a needle. Tilts within it are equal as far as these
 * years can show.
 */
export interface EngineTilts {
  /** Flattest first. */
  tried: TriedTilt[];
  /** The tilts around the least that chance does not tell apart from it. */
  equal: TiltSpan;
  /**
   * The tilt to choose among the equal ones, and for what: the designer's own where it is one of them, since then
   * nothing need be changed; otherwise the one with the most light in the dark months.
   */
  choose: { tiltDeg: number; reason: 'as designed' | 'light of the dark months' };
  /** `null` where snow never lies on the array. */
  snow: {
    none: TiltSpan;
    full: TiltSpan /** Equal whatever the snow does; `null` where there is none. */;
    steady: TiltSpan | null;
  } | null;
}

export interface TiltCandidate {
  tiltDeg: number;
  /** Name of its design in the runs. */
  name: string;
  /** Light of the dark months, kWh/m2. */
  darkLight: number;
}

/**
 * Reads engine hours by tilt from designs that were run over common years.
 *
 * @param candidates flattest first
 * @param snow the same designs in the two extremes of snow; `null` where snow never lies on the array
 * @param designedDeg the tilt as designed, if it is among the candidates
 */
export function engineTilts(
  candidates: readonly TiltCandidate[],
  run: CommonRun,
  snow: SnowRange | null,
  designedDeg: number | null,
): EngineTilts {
  const own = designsOf(candidates, run);
  const equal = equalSpan(own.designs, candidates);
  const spans = snow && snowSpans(snow, candidates, equal);
  return {
    tried: triedTilts(own, candidates),
    equal,
    choose: chosen(candidates, spans?.steady ?? equal, designedDeg),
    snow: spans,
  };
}

/** The candidates' designs out of a run that holds others too. */
function designsOf(candidates: readonly TiltCandidate[], { weather, designs }: CommonRun): CommonRun {
  return { weather, designs: candidates.map(({ name }) => designs.find((design) => design.name === name)!) };
}

function triedTilts(run: CommonRun, candidates: readonly TiltCandidate[]): TriedTilt[] {
  const merit = meritOf(run.designs);
  const least = leastOf(run.designs);
  return commonAnswer(run).designs.map((figures, i) => ({
    tiltDeg: candidates[i]!.tiltDeg,
    hours: figures.generatorHours,
    usualHours: figures.ranked.generatorHours.usual.value,
    oneInTenHours: figures.ranked.generatorHours.oneInTen.value,
    fuelLitres: figures.fuelLitres.mean,
    againstLeast: meritDifference(run.designs[i]!, least, merit),
  }));
}

function leastOf(designs: readonly DesignYears[]): DesignYears {
  const merit = meritOf(designs);
  const mean = ({ years }: DesignYears) => yearsMean(years.map((year) => year[merit])).mean;
  return designs.reduce((least, design) => (mean(design) < mean(least) ? design : least));
}

/** From the least to either side, as long as the next tilt is no different from it. */
function equalSpan(designs: readonly DesignYears[], candidates: readonly { tiltDeg: number }[]): TiltSpan {
  const merit = meritOf(designs);
  const least = leastOf(designs);
  const at = designs.indexOf(least);
  const isEqual = (i: number) => {
    const design = designs[i];
    return design !== undefined && meritDifference(design, least, merit).verdict === 'none';
  };
  let from = at;
  while (isEqual(from - 1)) from--;
  let to = at;
  while (isEqual(to + 1)) to++;
  return { fromDeg: candidates[from]!.tiltDeg, toDeg: candidates[to]!.tiltDeg };
}

function snowSpans(
  { none, full }: SnowRange,
  candidates: readonly TiltCandidate[],
  equal: TiltSpan,
): NonNullable<EngineTilts['snow']> {
  const spans = {
    none: equalSpan(designsOf(candidates, none.run).designs, candidates),
    full: equalSpan(designsOf(candidates, full.run).designs, candidates),
  };
  const fromDeg = Math.max(equal.fromDeg, spans.none.fromDeg, spans.full.fromDeg);
  const toDeg = Math.min(equal.toDeg, spans.none.toDeg, spans.full.toDeg);
  return { ...spans, steady: fromDeg <= toDeg ? { fromDeg, toDeg } : null };
}

function chosen(
  candidates: readonly TiltCandidate[],
  { fromDeg, toDeg }: TiltSpan,
  designedDeg: number | null,
): EngineTilts['choose'] {
  if (designedDeg !== null && designedDeg >= fromDeg && designedDeg <= toDeg) {
    return { tiltDeg: designedDeg, reason: 'as designed' };
  }
  const within = candidates.filter(({ tiltDeg }) => tiltDeg >= fromDeg && tiltDeg <= toDeg);
  const brightest = within.reduce((best, candidate) => (candidate.darkLight > best.darkLight ? candidate : best));
  return { tiltDeg: brightest.tiltDeg, reason: 'light of the dark months' };
}
