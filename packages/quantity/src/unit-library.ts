import { createRequire } from 'node:module';

/** What js-quantities makes of a text such as `1 BTU/h`. */
export interface Qty {
  isCompatible(unit: string): boolean;
  to(unit: string): Qty;
  kind(): string | undefined;
  readonly scalar: number;
}
export type MakeQty = (text: string) => Qty;

let makeQty: MakeQty | null = null;

// js-quantities takes tens of milliseconds to load and the table of common units covers nearly every file,
// so it is loaded the first time a unit outside that table turns up.
export function unitLibrary(): MakeQty {
  makeQty ??= createRequire(import.meta.url)('js-quantities') as MakeQty;
  return makeQty;
}
