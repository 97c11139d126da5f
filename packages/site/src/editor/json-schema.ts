import { dimensionFacts, likelySpellings } from '@wintergap/quantity';
import * as z from 'zod';
import { aroundDesign, designSchema } from '../schema/design.js';
import { type FieldFacts, factsOf } from '../schema/field-facts.js';
import { changesOf } from './changes-schema.js';
import { keyWords } from './key-words.js';
import type { JsonSchema } from './schema-form.js';

/** Where a field's facts are kept until its key is described. */
const takes = 'x-takes';

/**
 * The site file's JSON Schema, for completion and hover in an editor: made from the schema that reads the file. It says
 * which keys there are and what kind of value each takes; ranges of quantities, and what must fit together, are words in
 * the descriptions and errors of the program.
 *
 * @param sections schemas of the keys beside the design, such as `sweep`; any value is allowed for those left out
 */
export function siteJsonSchema(sections: Readonly<Record<string, z.ZodType>> = {}): JsonSchema {
  const design = withTables(jsonSchemaOf(designSchema));
  const variants: JsonSchema = { type: 'object', additionalProperties: changesOf(design) };
  const around = Object.fromEntries(
    aroundDesign.map((key) => {
      const section = sections[key] ? jsonSchemaOf(sections[key]) : {};
      // Some keys of a section may belong to the design, which knows them better.
      const ofDesign = design.properties?.[key]?.properties;
      return [key, ofDesign ? { ...section, properties: { ...section.properties, ...ofDesign } } : section];
    }),
  );
  const whole: JsonSchema = {
    ...design,
    title: 'Wintergap site file',
    properties: { ...design.properties, ...around, modules: listOfFiles(), variants },
  };
  describeKeys(whole, '');
  return whole;
}

// Made anew each time: facts are taken from a schema as it is described.
const fileOfTable = (): JsonSchema => ({ type: 'string', [takes]: 'a CSV file' });
const listOfFiles = (): JsonSchema => ({ anyOf: [fileOfTable(), { type: 'array', items: { type: 'string' } }] });

/** What tables of parts allow beside what the schema reads once they are written out: a module's name, a list of loads. */
function withTables(design: JsonSchema): JsonSchema {
  const { arrays, loads } = design.properties!;
  const array = arrays!.items!;
  const list: JsonSchema = {
    type: 'object',
    properties: { list: fileOfTable() },
    required: ['list'],
    additionalProperties: false,
  };
  const byName: JsonSchema = { type: 'string', [takes]: 'or the name of one in a table of `modules`' };
  const module: JsonSchema = { anyOf: [array.properties!.module!, byName] };
  return {
    ...design,
    properties: {
      ...design.properties,
      arrays: { ...arrays, items: { ...array, properties: { ...array.properties, module } } },
      loads: { ...loads, items: { anyOf: [loads!.items!, list] } },
    },
  };
}

function jsonSchemaOf(schema: z.ZodType): JsonSchema {
  return z.toJSONSchema(schema, {
    target: 'draft-7',
    io: 'input',
    unrepresentable: 'any',
    override({ zodSchema, jsonSchema }) {
      const facts = factsOf(zodSchema);
      if (!facts) return;
      // Text and number of a quantity are one way to write it.
      if (facts.kind !== 'said') delete jsonSchema.anyOf;
      Object.assign(jsonSchema, written(facts));
    },
  }) as JsonSchema;
}

/** How a field is written. */
function written(facts: FieldFacts): JsonSchema {
  switch (facts.kind) {
    case 'quantity': {
      const { name } = dimensionFacts(facts.dimension);
      const examples = likelySpellings(undefined, facts.dimension).slice(0, 2);
      const range = facts.range === null ? '' : `; ${facts.range}`;
      const says = `${name}, written such as ${examples.join(' or ')}${range}`;
      // A fraction may be bare; everything else needs its unit.
      return { type: facts.dimension === 'fraction' ? ['string', 'number'] : 'string', [takes]: says };
    }
    case 'number': {
      const { min, max, whole } = facts;
      const says = `a bare ${whole ? 'whole ' : ''}number, ${min} to ${max}`;
      return { type: whole ? 'integer' : 'number', minimum: min, maximum: max, [takes]: says };
    }
    case 'said':
      return { [takes]: facts.says };
    case 'azimuth':
      return {
        type: ['number', 'string'],
        minimum: 0,
        maximum: 360,
        [takes]: 'degrees clockwise from north, or a point of the compass such as south or SSE',
      };
    case 'date':
      return { type: 'string', pattern: '^\\d\\d-\\d\\d$', [takes]: 'a date as MM-DD, such as 10-01' };
  }
}

/** Gives each key below a schema its words, with unit and range. */
function describeKeys(schema: JsonSchema, path: string): void {
  for (const part of partsOf(schema)) describeKeys(part, path);
  for (const [key, value] of Object.entries(schema.properties ?? {})) {
    const at = path === '' ? key : `${path}.${key}`;
    const words = keyWords[at];
    const ways = [...new Set(waysToWrite(value))];
    const description = [words, ...ways].filter((text) => text !== undefined).join('. ');
    if (description !== '') value.description = `${description}.`;
    describeKeys(value, at);
  }
  const { additionalProperties } = schema;
  // What a variant changes is described by the words of the key it changes.
  if (typeof additionalProperties === 'object') describeKeys(additionalProperties, path === 'variants' ? '' : path);
  delete schema[takes];
}

/** What may stand in the place of a schema, without a further key. */
const partsOf = ({ items, prefixItems = [], anyOf = [], oneOf = [] }: JsonSchema): JsonSchema[] => [
  ...(items && !Array.isArray(items) ? [items] : ((items as JsonSchema[] | undefined) ?? [])),
  ...prefixItems,
  ...anyOf,
  ...oneOf,
];

/** What the fields say that a key's value may be. */
function waysToWrite(schema: JsonSchema): string[] {
  const own = schema[takes];
  const sentence = (text: string) => text[0]!.toUpperCase() + text.slice(1);
  const inner = schema.properties ? [] : partsOf(schema).flatMap(waysToWrite);
  return [...(typeof own === 'string' ? [sentence(own)] : []), ...inner];
}
