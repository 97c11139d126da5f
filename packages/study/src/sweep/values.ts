import { changedDesign, designOf, SiteError, type SiteFile } from '@wintergap/site';
import { type DesignAxis, variantAxis } from '../design/axis.js';
import { changesOf, type PathValue } from '../design/grid.js';

/** A value of an axis that fits no design. */
export interface ValueProblem {
  path: string;
  value: unknown;
  message: string;
}

/** Values of one axis that are tried beforehand, spread evenly over a longer one. */
const mostTried = 50;
/** Values of each other axis that one of them is tried with. */
const mostCompanions = 12;
/** Wrong values of one axis that are told; there may be more. */
const mostTold = 3;

/**
 * The values that cannot be right in any design, so that a slip is told at once and not in a million rows.
 *
 * A value is tried alone in the base and in every variant of the sweep, then together with each value of the other axes,
 * since some are right only together (start below 60 % and stop above 90 %).
 */
export function valueProblems(site: SiteFile, axes: readonly DesignAxis[]): ValueProblem[] {
  const variants = axes.find(({ path }) => path === variantAxis)?.values ?? ['base'];
  const problems: ValueProblem[] = [];
  for (const value of variants) {
    const message = value === 'base' ? null : failure('variants', () => designOf(site, String(value)));
    if (message !== null) problems.push({ path: variantAxis, value, message });
  }
  if (problems.length > 0) return problems;
  const changing = axes.filter(({ path }) => path !== variantAxis);
  /** What is wrong with these changes in every variant, without `path`; `null` when one of them takes them. */
  const objection = (pairs: readonly PathValue[], path: string): string | null => {
    let first: string | null = null;
    for (const variant of variants) {
      const message = failure(path, () =>
        changedDesign(site, changesOf(pairs), variant === 'base' ? undefined : String(variant)),
      );
      if (message === null) return null;
      first ??= message;
    }
    return first;
  };
  for (const { path, values } of changing) {
    const others = changing.filter((other) => other.path !== path);
    let told = 0;
    for (const value of spread(values, mostTried)) {
      const message = objection([[path, value]], path);
      if (message === null) continue;
      const isRightWith = ({ path: other, values }: DesignAxis) =>
        spread(values, mostCompanions).some(
          (companion) =>
            objection(
              [
                [path, value],
                [other, companion],
              ],
              path,
            ) === null,
        );
      if (others.some(isRightWith)) continue;
      problems.push({ path, value, message });
      if (++told === mostTold) break;
    }
  }
  return problems;
}

/** At most `most` values, evenly spread from the first to the last. */
function spread(values: readonly unknown[], most: number): readonly unknown[] {
  if (values.length <= most) return values;
  return Array.from({ length: most }, (_, i) => values[Math.round((i * (values.length - 1)) / (most - 1))]);
}

/** What a site error says, without the file's name and the path that is known already; `null` when there is none. */
function failure(path: string, attempt: () => unknown): string | null {
  try {
    attempt();
    return null;
  } catch (error) {
    if (!(error instanceof SiteError)) throw error;
    const known = `${path.replace(/\.(\d+)(?=\.|$)/g, '[$1]')}: `;
    const text = siteErrorText(error);
    for (const start of [known, `${path}: `]) if (text.startsWith(start)) return text.slice(start.length);
    return text;
  }
}

/** The problems of a site error on one line, without the file's name and place. */
export const siteErrorText = ({ problems }: SiteError): string =>
  problems.map(({ path, message }) => (path === '' ? message : `${path}: ${message}`)).join('; ');
