export type Plain = Record<string, unknown>;

/**
 * What a set-up has otherwise than the base design, as a variant of the site file would write it: to save it is to write
 * it there, and nothing is translated.
 */
export type Change = Plain;

/** A set-up under the name it is shown by. */
export interface NamedChange {
  name: string;
  change: Change;
}

/** A key, or the item of a list that bears a name. */
export type Step = string | { item: string };

/**
 * The change with one value more, or another. `null` takes a key of the base away; `undefined` leaves the key to the base
 * again, and what is left without keys goes with it.
 */
export function withValue(change: Change, path: readonly Step[], value: unknown): Change {
  return (placed(change, path, value) ?? {}) as Change;
}

function placed(at: unknown, [step, ...rest]: readonly Step[], value: unknown): unknown {
  if (step === undefined) return value;
  if (typeof step === 'string') {
    const { [step]: inner, ...others } = isPlain(at) ? at : {};
    const next = placed(inner, rest, value);
    const kept = next === undefined ? others : { ...others, [step]: next };
    return Object.keys(kept).length > 0 ? kept : undefined;
  }
  const list = Array.isArray(at) ? (at as unknown[]) : [];
  const has = list.some((item) => nameOf(item) === step.item);
  const inner = { name: step.item };
  const items = (has ? list : [...list, inner]).flatMap((item) => {
    if (nameOf(item) !== step.item) return [item];
    const next = placed(item, rest, value);
    // A name alone changes nothing.
    return isPlain(next) && Object.keys(next).some((key) => key !== 'name') ? [next] : [];
  });
  return items.length > 0 ? items : undefined;
}

const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const nameOf = (item: unknown): unknown => (isPlain(item) ? item.name : undefined);
