import type { Site } from '@wintergap/site';
import { yearSum } from '@wintergap/tally';
import type { YearResult } from '@wintergap/year';
import { type DesignOutcome, type Outcome, outcomeOf } from '../outcome.js';
import type { Trial } from './trials.js';

/** One size of charger, or of a set that gives DC, and the year it makes. */
export interface ChargerSize {
  /** Times the design's own size. */
  times: number;
  powerW: number;
  outcome: Outcome;
  /** What the engine gives to loads and charger while it runs, mean, W. */
  meanOutputW: number;
}

export interface ChargerSizes {
  /** What is varied: the charger of an AC set, or the output of a DC set with its fuel use in proportion. */
  varies: 'charger' | 'output';
  /** Smallest first. */
  sizes: ChargerSize[];
  /** Smallest size above which no larger one runs a tenth less; `null` where the largest still does. */
  enoughW: number | null;
  /** Charger power above which the set itself is the limit, W; `null` for a DC set. */
  setLimitW: number | null;
}

type Generator = NonNullable<Site['generator']>;

const allTimes = [0.5, 0.75, 1, 1.5, 2, 3, 4];

/** The sizes that are worth a run: once a charger can take all that the set gives, larger ones are alike. */
function timesOf(generator: Generator): number[] {
  const limitW = setLimitW(generator);
  if (limitW === null || generator.output.bus === 'dc') return allTimes;
  const powerW = generator.output.charger.power;
  const first = allTimes.findIndex((times) => times * powerW >= limitW);
  return first < 0 ? allTimes : allTimes.filter((times, i) => i <= first || times <= 1);
}

const setLimitW = ({ output }: Generator) => (output.bus === 'ac' ? output.power * output.charger.efficiency : null);

/** The designs that `chargerSizes` asks for, the design itself left out. */
export function chargerTrials({ site }: YearResult): Trial[] {
  const { generator } = site;
  if (!generator) return [];
  return timesOf(generator)
    .filter((times) => times !== 1)
    .map((times) => ({ id: trialId(times), site: { ...site, generator: scaled(generator, times) } }));
}

const trialId = (times: number) => `charger x ${times}`;

/**
 * The year against the size of the charger. A small one runs long; beyond some size the bank's acceptance, not the
 * charger, sets the pace, and the hours stop falling while an oversized set idles along on more fuel.
 *
 * @returns `null` for a place without a generator
 */
export function chargerSizes(base: DesignOutcome, yearsOf: (id: string) => DesignOutcome): ChargerSizes | null {
  const { generator } = base.own.site;
  if (!generator) return null;
  const sizes = timesOf(generator).map((times): ChargerSize => {
    const years = times === 1 ? base : yearsOf(trialId(times));
    const { ledger, site } = years.own;
    const { output } = site.generator!;
    const hours = yearSum(ledger.generatorH);
    return {
      times,
      powerW: output.bus === 'ac' ? output.charger.power : output.power,
      outcome: outcomeOf(years, base.own.summary.darkSeason.month),
      meanOutputW: hours > 0 ? yearSum(ledger.generatorWh) / hours : 0,
    };
  });
  return {
    varies: generator.output.bus === 'ac' ? 'charger' : 'output',
    sizes,
    enoughW: enoughW(sizes),
    setLimitW: setLimitW(generator),
  };
}

function scaled(generator: Generator, times: number): Generator {
  const { output, fuel } = generator;
  if (output.bus === 'ac') {
    return { ...generator, output: { ...output, charger: { ...output.charger, power: output.charger.power * times } } };
  }
  return {
    ...generator,
    output: { ...output, power: output.power * times },
    fuel: { ...fuel, atFull: fuel.atFull * times, idle: fuel.idle * times },
  };
}

function enoughW(sizes: readonly ChargerSize[]): number | null {
  for (let i = 0; i < sizes.length - 1; i++) {
    const hours = sizes[i]!.outcome.generatorHours;
    if (sizes.slice(i + 1).every(({ outcome }) => outcome.generatorHours > 0.9 * hours)) return sizes[i]!.powerW;
  }
  return null;
}
