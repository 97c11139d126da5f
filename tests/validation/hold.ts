import { expect, TestRunner } from 'vitest';

/**
 * How a published value came here: `looked up` in the text that is named; `from memory` of it; `recomputed` apart from
 * the program by the equation that is named; `independent` program or data of others; `law` that must hold whatever the
 * model; `common practice`, which has no source; `stated only` where nothing is
 * published to hold it against.
 */
export type Sure =
  | 'looked up'
  | 'from memory'
  | 'recomputed'
  | 'independent'
  | 'law'
  | 'common practice'
  | 'stated only';

/** Where a value is from: author, year, table, equation or example. */
export interface Source {
  from: string;
  sure: Sure;
}

/** One line of VALIDATION.md. */
export interface Held extends Source {
  /** What is compared, with its unit. */
  what: string;
  published: string;
  ours: string;
  difference: string;
  allowed: string;
}

declare module 'vitest' {
  interface TaskMeta {
    held?: Held[];
  }
}

/** How far ours may be: in the unit of the value, or as a share of it. */
export type Allowed = { within: number } | { share: number };

/** Ours is the published value, as near as allowed; the comparison goes into VALIDATION.md. */
export function holds(source: Source, what: string, ours: number, published: number, allowed: Allowed): void {
  holdsAll(source, what, [[ours, published]], allowed);
}

/** As `holds` for the values of a table or curve; the worst of them is printed, and how many there are. */
export function holdsAll(
  source: Source,
  what: string,
  pairs: readonly (readonly [ours: number, published: number])[],
  allowed: Allowed,
): void {
  const asShare = 'share' in allowed;
  const limit = asShare ? allowed.share : allowed.within;
  const off = ([ours, published]: readonly [number, number]) => (asShare ? ours / published - 1 : ours - published);
  const worst = pairs.reduce((far, pair) => (Math.abs(off(pair)) > Math.abs(off(far)) ? pair : far));
  const [ours, published] = worst;
  const digits = digitsOf(published, asShare ? published * limit : limit);
  record({
    ...source,
    what: pairs.length > 1 ? `${what} (worst of ${pairs.length})` : what,
    published: fixed(published, digits),
    ours: fixed(ours, digits),
    difference: asShare ? percent(off(worst)) : signed(off(worst), digits),
    allowed: asShare ? `${number(100 * limit)} %` : number(limit),
  });
  expect(Math.abs(off(worst)), `${what}: ${ours} against ${published} (${source.from})`).toBeLessThanOrEqual(limit);
}

/** Ours lies between two published bounds. */
export function liesWithin(source: Source, what: string, ours: number, low: number, high: number): void {
  const digits = digitsOf(high, (high - low) / 10);
  record({
    ...source,
    what,
    published: `${number(low)} to ${number(high)}`,
    ours: fixed(ours, digits),
    difference: ours < low || ours > high ? 'outside' : 'within',
    allowed: '',
  });
  expect(ours, `${what} (${source.from})`).toBeGreaterThanOrEqual(low);
  expect(ours, `${what} (${source.from})`).toBeLessThanOrEqual(high);
}

/** A figure that nothing published stands against: it is told, so that a reader sees how much a choice of model moves. */
export function states(what: string, ours: number, digits: number): void {
  const line = { from: 'none', sure: 'stated only', published: '', difference: '', allowed: '' } as const;
  record({ ...line, what, ours: fixed(ours, digits) });
}

function record(line: Held): void {
  const test = TestRunner.getCurrentTest();
  if (!test) throw new Error('a published value is held against ours outside a test');
  test.meta.held = [...(test.meta.held ?? []), line];
}

/** Decimals that show a difference of the size allowed, and no more than a reader can use. */
function digitsOf(value: number, limit: number): number {
  if (limit < 1e-8) return String(Number(value.toPrecision(6))).split('.')[1]?.length ?? 0;
  const wanted = Math.ceil(-Math.log10(limit)) + 1;
  const size = Math.floor(Math.log10(Math.max(Math.abs(value), 1e-12)));
  return Math.max(0, Math.min(wanted, 6 - size, 9));
}

const fixed = (value: number, digits: number): string => (Number(value.toFixed(digits)) || 0).toFixed(digits);
const signed = (value: number, digits: number): string => {
  const text = fixed(value, digits);
  return Number(text) > 0 ? `+${text}` : text;
};
const percent = (share: number): string => `${signed(100 * share, 2)} %`;
const number = (value: number): string => String(Number(value.toPrecision(6)));
