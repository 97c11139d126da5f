import { locate, readSection, SiteError, type SiteFile, type SiteProblem } from '@wintergap/site';
import { mapping, type Schema, wholeNumber } from '@wintergap/site/fields';
import { type DesignAxis, outermostFirst } from '../design/axis.js';
import { gridSize } from '../design/grid.js';
import type { DesignOrder } from '../design/order.js';
import { designRanges } from '../design/ranges.js';
import { sectionError } from '../section-error.js';
import { type ValueProblem, valueProblems } from './values.js';

/** The `sweep` key of a site file. */
export interface SweepSection {
  /** Outermost first; the designs are counted in this order. */
  axes: DesignAxis[];
  order: DesignOrder;
}

const example = 'sweep: { designs: { bank.capacity: [500 Ah, 1000 Ah], arrays.0.strings: 2..8 } }';

const schema = mapping({
  designs: designRanges(example),
  sample: mapping({
    count: wholeNumber(1, 1e9, 'how many designs to take'),
    seed: wholeNumber(0, 2 ** 31, 'the seed of the sample'),
  }).optional(),
});

/** How the `sweep` key of a site file is written. */
export const sweepSection: Schema = schema;

/**
 * Reads the `sweep` key of a site file.
 *
 * @throws SiteError with line and column when there is none, or a path or a value in it fits no design
 */
export function readSweep(site: SiteFile): SweepSection {
  const section = readSection(site, 'sweep', schema);
  if (!section) throw sectionError(site, ['sweep'], `the site file has no sweep section; expected such as ${example}`);
  const axes = outermostFirst(Object.entries(section.designs).map(([path, values]) => ({ path, values })));
  const size = gridSize(axes);
  if (size > Number.MAX_SAFE_INTEGER) {
    throw sectionError(
      site,
      ['sweep', 'designs'],
      `the ranges make ${size.toExponential(1)} designs, expected fewer than 9e15`,
    );
  }
  const { sample } = section;
  if (sample && sample.count > size) {
    throw sectionError(
      site,
      ['sweep', 'sample', 'count'],
      `found ${sample.count}, but the ranges make ${size} designs; leave sample out to run them all`,
    );
  }
  const problems = valueProblems(site, axes);
  if (problems.length > 0) throw new SiteError(site.file, placed(site, problems));
  return { axes, order: { gridSize: size, sample: sample ?? null } };
}

/** The problems with their places in the file, each once though many values of a range may have it. */
function placed({ document }: SiteFile, problems: readonly ValueProblem[]): SiteProblem[] {
  const { designs } = document.content.sweep as { designs: Record<string, unknown> };
  const told = new Map<string, SiteProblem>();
  for (const { path, value, message } of problems) {
    const written = designs[path];
    const item = Array.isArray(written)
      ? written.findIndex((one) => JSON.stringify(one) === JSON.stringify(value))
      : -1;
    const { line, column } = locate(document, ['sweep', 'designs', path, ...(item < 0 ? [] : [item])]);
    told.set(`${line}:${column} ${message}`, { line, column, path: `sweep.designs.${path}`, message });
  }
  return [...told.values()];
}
