import type { JsonSchema } from './schema-form.js';

/**
 * The schema of changes to what a schema describes, as a variant has them: nothing must be there, what need not be there
 * may be taken away by `null`, and items of a list that have a name may be taken out.
 */
export function changesOf(schema: JsonSchema): JsonSchema {
  const { $schema: _schema, required = [], default: _default, oneOf, anyOf, properties, items, ...rest } = schema;
  const changed: JsonSchema = { ...rest };
  const either = oneOf ?? anyOf;
  if (either?.every((kind) => kind.properties)) return { ...rest, ...changesOf(anyKind(either)) };
  if (either) changed.anyOf = either.map(changesOf);
  if (items) changed.items = Array.isArray(items) ? items : changesOf(items);
  if (properties) {
    changed.properties = Object.fromEntries(
      Object.entries(properties).map(([key, value]) => {
        const change = changesOf(value);
        return [key, required.includes(key) ? change : { anyOf: [change, { type: 'null' }] }];
      }),
    );
    if ('name' in properties) changed.properties.remove = { const: true, description: 'Takes the item out.' };
  }
  return changed;
}

/**
 * One mapping with the keys of several kinds: a change need not repeat the key that tells the kind, and takes away what
 * another kind has not.
 */
function anyKind(kinds: readonly JsonSchema[]): JsonSchema {
  const ways = new Map<string, JsonSchema[]>();
  for (const { properties = {} } of kinds) {
    for (const [key, value] of Object.entries(properties)) {
      const known = ways.get(key) ?? [];
      const isNew = known.every((one) => JSON.stringify(one) !== JSON.stringify(value));
      ways.set(key, isNew ? [...known, value] : known);
    }
  }
  const oneWay = (values: JsonSchema[]): JsonSchema => {
    if (values.length === 1) return values[0]!;
    const words = values.map((value) => value.const);
    return words.every((word) => word !== undefined) ? { type: 'string', enum: words } : { anyOf: values };
  };
  return {
    type: 'object',
    properties: Object.fromEntries([...ways].map(([key, values]) => [key, oneWay(values)])),
    required: [...ways.keys()].filter((key) => kinds.every(({ required = [] }) => required.includes(key))),
    additionalProperties: false,
  };
}
