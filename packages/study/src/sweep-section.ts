import { readSection, SiteError, type SiteFile, type SiteProblem } from '@wintergap/year';
import { mapping, wholeNumber } from '@wintergap/year/fields';
import * as z from 'zod';
import { type DesignAxis, expandRange, mostValues, outermostFirst } from './design-axis.js';
import { gridSize } from './design-grid.js';
import type { DesignOrder } from './design-order.js';
import { type ValueProblem, valueProblems } from './sweep-values.js';

/** The `sweep` key of a site file. */
export interface SweepSection {
  /** Outermost first; the designs are counted in this order. */
  axes: DesignAxis[];
  order: DesignOrder;
}

const example = 'sweep: { designs: { bank.capacity: [500 Ah, 1000 Ah], arrays.0.strings: 2..8 } }';

const axisValues = z.unknown().transform((written, context) => {
  const items = Array.isArray(written) ? written : [written];
  const values = items.flatMap((item, i) => {
    try {
      return expandRange(item);
    } catch (error) {
      context.addIssue({ code: 'custom', path: Array.isArray(written) ? [i] : [], message: (error as Error).message });
      return [];
    }
  });
  const complain = (message: string) => context.addIssue({ code: 'custom', message });
  if (items.length === 0 || written === null) complain('found no values, expected a list or a range such as 2..8');
  if (values.length > mostValues) complain(`found ${values.length} values, expected at most ${mostValues}`);
  const seen = new Set<string>();
  for (const value of values) {
    const text = JSON.stringify(value);
    if (seen.has(text)) complain(`${text} is there twice; each value makes its own designs`);
    seen.add(text);
  }
  return values;
});

const sectionSchema = mapping({
  designs: z
    .record(z.string(), axisValues, { error: () => `expected what differs between the designs, such as ${example}` })
    .refine((axes) => Object.keys(axes).length > 0, { error: () => `found no ranges, expected such as ${example}` }),
  sample: mapping({
    count: wholeNumber(1, Number.MAX_SAFE_INTEGER, 'how many designs to take'),
    seed: wholeNumber(0, Number.MAX_SAFE_INTEGER, 'the seed of the sample'),
  }).optional(),
});

/**
 * Reads the `sweep` key of a site file.
 *
 * @throws SiteError with line and column when there is none, or a path or a value in it fits no design
 */
export function readSweep(site: SiteFile): SweepSection {
  const section = readSection(site, 'sweep', sectionSchema);
  if (!section) throw sweepError(site, [], `the site file has no sweep section; expected such as ${example}`);
  const axes = outermostFirst(Object.entries(section.designs).map(([path, values]) => ({ path, values })));
  const size = gridSize(axes);
  if (size > Number.MAX_SAFE_INTEGER) {
    throw sweepError(site, ['designs'], `the ranges make ${size.toExponential(1)} designs, expected fewer than 9e15`);
  }
  const { sample } = section;
  if (sample && sample.count > size) {
    throw sweepError(
      site,
      ['sample', 'count'],
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
    const { line, column } = document.locate(['sweep', 'designs', path, ...(item < 0 ? [] : [item])]);
    told.set(`${line}:${column} ${message}`, { line, column, path: `sweep.designs.${path}`, message });
  }
  return [...told.values()];
}

function sweepError({ file, document }: SiteFile, keys: readonly string[], message: string): SiteError {
  const path = ['sweep', ...keys];
  return new SiteError(file, [{ ...document.locate(path), path: path.join('.'), message }]);
}
