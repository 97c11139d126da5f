import { hoursPerYear } from '@wintergap/ground';
import { readSection, type SiteFile } from '@wintergap/site';
import {
  between,
  fraction,
  mapping,
  number,
  quantity,
  type Schema,
  upTo,
  wholeNumber,
  word,
} from '@wintergap/site/fields';
import type * as z from 'zod';
import type { CommonYearsWish } from '../common/common-years.js';
import { type DesignAxis, outermostFirst } from '../design/axis.js';
import { gridSize } from '../design/grid.js';
import { designRanges } from '../design/ranges.js';
import type { HandSettings } from '../hand/from-year.js';
import { sectionError } from '../section-error.js';
import { valueProblems } from '../sweep/values.js';
import { type Targets, targetFigures } from './targets.js';

/** What counts as smaller. */
const leastWords = ['array', 'bank', 'cost', 'generatorHours'] as const;

/** The `size` key of a site file: what may be chosen, what must be met, and what is to be smallest. */
export interface SizeQuestion {
  axes: readonly DesignAxis[];
  targets: Targets;
  /**
   * The median or the one-in-ten bad year of the common years; 1 year is that of the file alone. Years left out are the
   * site's real ones, or the usual number of made ones.
   */
  judged: { kind: 'usual' | 'one-in-ten'; years?: number; seed: number };
  least: (typeof leastWords)[number];
  hand: HandSettings;
}

/** Most designs that are looked at; beyond it ranges are to be coarser. */
const mostDesigns = 50_000;

const example =
  'size: { choose: { arrays.0.strings: 2..8, bank.capacity: [500 Ah, 800 Ah] }, target: { generatorHours: 60 h }, least: array }';

const ofYear = between(0, hoursPerYear, 'h');

const schema = mapping({
  choose: designRanges(example),
  target: mapping({
    generatorHours: quantity('duration', ofYear).optional(),
    fuel: quantity('volume', between(0, 1e9, 'L')).optional(),
    darkHours: quantity('duration', ofYear).optional(),
    autonomy: quantity('duration', ofYear).optional(),
    in: word(['usual', 'one-in-ten']).default('usual'),
  }),
  least: word(leastWords).default('array'),
  /** Common weather years behind the answer, and their seed. */
  years: wholeNumber(1, 1000, 'how many weather years').optional(),
  seed: wholeNumber(0, 2 ** 31, 'a seed').default(1),
  /** What goes into the hand method beside the answer. */
  hand: mapping({
    autonomy: quantity('duration', upTo(hoursPerYear, 'h')).optional(),
    ratio: number(0.5, 5, 'an array-to-load ratio').default(1.3),
    losses: fraction({ min: 0, max: 0.9, say: '0 % to 90 %' }).default(0.15),
    margin: number(1, 3, 'a margin, such as 1.1').default(1.1),
  }).prefault({}),
});

/** How the `size` key of a site file is written. */
export const sizeSection: Schema = schema;

/** Days of autonomy when neither the target nor `hand` says: common practice, no source. */
const usualAutonomyDays = { withEngine: 3, withoutEngine: 7 };

/** Weather years behind a one-in-ten answer when nobody says: fewer cannot bound the one-in-ten value from above. */
const oneInTenYears = 40;
/** Fewest years of which one in ten can be told. */
const fewestOneInTen = 10;

/**
 * Reads the `size` key of a site file.
 *
 * @param asked years and seed that go before those of the section
 * @throws SiteError with line and column when there is none, or something in it fits no design
 */
export function readSize(site: SiteFile, asked: CommonYearsWish = {}): SizeQuestion {
  const section = readSection(site, 'size', schema);
  if (!section) throw sectionError(site, ['size'], `the site file has no size section; expected such as ${example}`);
  const { choose, target, least, hand } = section;
  const years = asked.years ?? section.years ?? (target.in === 'one-in-ten' ? oneInTenYears : undefined);
  const seed = asked.seed ?? section.seed;
  if (target.in === 'one-in-ten' && years! > 1 && years! < fewestOneInTen) {
    throw sectionError(
      site,
      ['size', 'target', 'in'],
      `a one-in-ten year cannot be told from ${years} years, expected at least ${fewestOneInTen}, or 1 for the year of the file`,
    );
  }
  const axes = outermostFirst(Object.entries(choose).map(([path, written]) => ({ path, values: written })));
  const count = gridSize(axes);
  if (count > mostDesigns) {
    throw sectionError(
      site,
      ['size', 'choose'],
      `the ranges make ${count} designs, expected at most ${mostDesigns}; take larger steps`,
    );
  }
  const problem = valueProblems(site, axes)[0];
  if (problem) {
    throw sectionError(
      site,
      ['size', 'choose', problem.path],
      `${JSON.stringify(problem.value)} fits no design: ${problem.message}`,
    );
  }
  const targets = targetsOf(site, target);
  const autonomyHours = hand.autonomy ?? target.autonomy;
  return {
    axes,
    targets,
    judged: { kind: target.in, ...(years !== undefined && { years }), seed },
    least,
    hand: {
      autonomyDays:
        autonomyHours !== undefined && autonomyHours > 0
          ? autonomyHours / 24
          : site.base.generator
            ? usualAutonomyDays.withEngine
            : usualAutonomyDays.withoutEngine,
      ratio: hand.ratio,
      losses: hand.losses,
      margin: hand.margin,
    },
  };
}

/** The targets of the section, in the units they are judged in. */
function targetsOf(site: SiteFile, target: z.output<typeof schema>['target']): Targets {
  const targets: Targets = {
    ...(target.generatorHours !== undefined && { generatorHours: target.generatorHours }),
    ...(target.fuel !== undefined && { fuelLitres: target.fuel }),
    ...(target.darkHours !== undefined && { darkHours: target.darkHours }),
    ...(target.autonomy !== undefined && { autonomyDays: target.autonomy / 24 }),
  };
  if (targetFigures(targets).length === 0) {
    throw sectionError(
      site,
      ['size', 'target'],
      'found no target, expected at least one of generatorHours, fuel, darkHours, autonomy',
    );
  }
  return targets;
}
