// The reference of the site file, made from its schema, so that it cannot drift. After a build.
import { siteJsonSchema } from '@wintergap/site';

/** One row for each key: its path, what it takes, whether it must be there, what it is without it. */
export function siteKeys() {
  const rows = [];
  walk(siteJsonSchema(), '', rows);
  return rows;
}

/** The rows as a Markdown table. */
export function siteKeyRows() {
  const head = '| key | takes | without it | means |\n| --- | --- | --- | --- |';
  const lines = siteKeys().map(
    ({ path, takes, without, means }) => `| \`${path}\` | ${takes} | ${without} | ${means} |`,
  );
  return [head, ...lines].join('\n');
}

function walk(schema, path, rows) {
  for (const part of schema.anyOf ?? schema.oneOf ?? schema.allOf ?? []) walk(part, path, rows);
  if (schema.items) walk(schema.items, `${path}[]`, rows);
  for (const [key, inner] of Object.entries(schema.properties ?? {})) {
    const here = path === '' ? key : `${path}.${key}`;
    const must = (schema.required ?? []).includes(key);
    if (!rows.some((row) => row.path === here)) rows.push(row(here, inner, must));
    walk(inner, here, rows);
  }
}

function row(path, schema, must) {
  const { default: usual, description = '' } = schema;
  const without = usual !== undefined ? `\`${JSON.stringify(usual)}\`` : must ? 'must be there' : '';
  return { path, takes: takes(schema), without, means: description.replaceAll('|', '\\|') };
}

/** What may be written: words as they are, forms by name. */
function takes(schema) {
  const parts = schema.anyOf ?? schema.oneOf;
  if (parts) return [...new Set(parts.map(takes))].filter(Boolean).join(' or ');
  if (schema.const !== undefined) return `\`${schema.const}\``;
  if (schema.enum) return schema.enum.map((word) => `\`${word}\``).join(', ');
  const types = [schema.type].flat().filter(Boolean);
  if (types.includes('string') && types.includes('number')) return 'a quantity with its unit';
  return types
    .map((type) => ({ string: 'text', array: 'a list', object: 'keys', boolean: 'true or false' })[type] ?? `a ${type}`)
    .join(' or ');
}
