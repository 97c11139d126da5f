import { createHash } from 'node:crypto';
import type { DesignAxis } from './axis.js';
import { variantAxis } from './axis.js';

/** What one design of a grid changes. */
export interface GridDesign {
  /** 1 to the size of the grid. */
  number: number;
  /**
   * Sixteen hexadecimal digits made from the values alone: the same combination has the same id whatever the ranges,
   * their order and the number that these give it.
   */
  id: string;
  /** A value for each axis, as written in the site file. */
  values: unknown[];
}

/** How many designs the axes make; above 2^53 it is no longer exact. */
export const gridSize = (axes: readonly DesignAxis[]): number =>
  axes.reduce((size, { values }) => size * values.length, 1);

/** The design of a number: the last axis turns fastest, as the last digit of a counter does. */
export function gridDesign(axes: readonly DesignAxis[], number: number): GridDesign {
  const values = new Array<unknown>(axes.length);
  let rest = number - 1;
  for (let a = axes.length - 1; a >= 0; a--) {
    const axis = axes[a]!.values;
    values[a] = axis[rest % axis.length];
    rest = Math.floor(rest / axis.length);
  }
  return { number, id: designId(axes, values), values };
}

/** Neighbouring designs that differ only in bank, generator and other settings of the balance. */
export function designsInBlock(axes: readonly DesignAxis[]): number {
  let designs = 1;
  for (let a = axes.length - 1; a >= 0 && !changesStages(axes[a]!.path); a--) designs *= axes[a]!.values.length;
  return designs;
}

const changesStages = (path: string) =>
  !/^(bank|generator)(\.|$)/.test(path) || /^bank\.(voltage|chemistry)$/.test(path);

function designId(axes: readonly DesignAxis[], values: readonly unknown[]): string {
  const named = axes.map(({ path }, a) => [path, values[a]] as const).sort(([a], [b]) => (a < b ? -1 : 1));
  return createHash('sha256').update(JSON.stringify(named)).digest('hex').slice(0, 16);
}

/** A place in the site file and the value that it is to have. */
export type PathValue = readonly [path: string, value: unknown];

/** Changes in the form that `changedDesign` takes; a key goes before the keys inside it. */
export const changesOf = (pairs: readonly PathValue[]): Record<string, unknown> =>
  Object.fromEntries(pairs.toSorted(([a], [b]) => a.split('.').length - b.split('.').length));

/** The variant that a design starts from (`undefined`: the base), and what it changes there. */
export function gridChanges(
  axes: readonly DesignAxis[],
  values: readonly unknown[],
): { variant: string | undefined; changes: Record<string, unknown> } {
  let variant: string | undefined;
  const pairs: PathValue[] = [];
  axes.forEach(({ path }, a) => {
    if (path !== variantAxis) pairs.push([path, values[a]]);
    else if (values[a] !== 'base') variant = String(values[a]);
  });
  return { variant, changes: changesOf(pairs) };
}
