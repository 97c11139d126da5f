type Plain = Record<string, unknown>;

const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Name by which an item of a list is recognised in a variant. */
const nameOf = (item: unknown): unknown => (isPlain(item) ? item.name : undefined);

/**
 * Lays the changes of a variant over the base design.
 *
 * Mappings are merged key by key. An item of a list whose `name` is already there changes that item; with
 * `remove: true` it takes the item out; any other item is added. A list without names, a number or a text replaces
 * what was there, and so does a mapping with another `kind` or `chemistry`, since its keys would not fit. A key
 * without a value, `null`, takes that key away, whether the base has it or not.
 */
export function mergeVariant(base: unknown, changes: unknown): unknown {
  if (isPlain(base) && isPlain(changes)) return mergeMapping(base, changes);
  if (Array.isArray(base) && Array.isArray(changes) && changes.some((item) => nameOf(item) !== undefined)) {
    return mergeNamed(base, changes);
  }
  return withoutNulls(changes);
}

/** What stands in a variant alone: a key taken away is a key that is not there. */
function withoutNulls(written: unknown): unknown {
  if (Array.isArray(written)) return written.map(withoutNulls);
  if (!isPlain(written)) return written;
  const kept = Object.entries(written).filter(([, value]) => value !== null);
  return Object.fromEntries(kept.map(([key, value]) => [key, withoutNulls(value)]));
}

function mergeMapping(base: Plain, changes: Plain): Plain {
  for (const key of ['kind', 'chemistry']) {
    if (key in changes && changes[key] !== base[key]) {
      return withoutNulls(key === 'chemistry' ? { ...shared(base), ...changes } : changes) as Plain;
    }
  }
  const merged: Plain = { ...base };
  for (const [key, value] of Object.entries(changes)) {
    if (value === null) delete merged[key];
    else merged[key] = mergeVariant(base[key], value);
  }
  return merged;
}

/** What a bank of any chemistry has in common: kept when a variant changes the chemistry. */
function shared({ voltage, capacity, atRate, cabinet, stands, floor }: Plain): Plain {
  return Object.fromEntries(
    Object.entries({ voltage, capacity, atRate, cabinet, stands, floor }).filter(([, value]) => value !== undefined),
  );
}

function mergeNamed(base: unknown[], changes: unknown[]): unknown[] {
  const merged = [...base];
  for (const change of changes) {
    const name = nameOf(change);
    const at = merged.findIndex((item) => name !== undefined && nameOf(item) === name);
    if (at < 0) merged.push(withoutNulls(change));
    else if (isPlain(change) && change.remove === true) merged.splice(at, 1);
    else merged[at] = mergeVariant(merged[at], change);
  }
  return merged;
}
