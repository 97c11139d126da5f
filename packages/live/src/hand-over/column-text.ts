/** Hourly columns stand in JSON as lists of numbers under the name of their kind; every number comes back to the last bit. */
const kinds = { f64: Float64Array, i32: Int32Array, u8: Uint8Array } as const;

type Kind = keyof typeof kinds;

/** JSON of plain values and typed arrays, however deep. */
export function columnText(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) => {
    for (const [kind, Column] of Object.entries(kinds)) {
      if (inner instanceof Column) return { [kind]: Array.from(inner) };
    }
    return inner;
  });
}

/** What `columnText` was made from. */
export function valueOfText(text: string): unknown {
  return JSON.parse(text, (_key, inner: unknown) => {
    if (typeof inner !== 'object' || inner === null) return inner;
    const [kind, ...more] = Object.keys(inner);
    if (kind === undefined || more.length > 0 || !Object.hasOwn(kinds, kind)) return inner;
    const numbers = (inner as Record<string, unknown>)[kind];
    return Array.isArray(numbers) ? kinds[kind as Kind].from(numbers as number[]) : inner;
  });
}

/** The buffers behind all typed arrays of a value, each once: what is handed over and not copied. */
export function buffersOf(value: unknown, found: Set<ArrayBuffer> = new Set()): Set<ArrayBuffer> {
  if (ArrayBuffer.isView(value)) found.add(value.buffer as ArrayBuffer);
  else if (typeof value === 'object' && value !== null)
    for (const inner of Object.values(value)) buffersOf(inner, found);
  return found;
}
