import { resolve } from 'node:path';
import { distance } from 'fastest-levenshtein';
import { moduleKeys } from '../schema/array.js';
import { applianceColumns } from './appliance-columns.js';
import { nearestHint } from './nearest-word.js';
import { type PartRow, readPartTable } from './part-table.js';
import type { Place, Places } from './places.js';
import { pathText, type SiteProblem } from './site-problem.js';

type Plain = Record<string, unknown>;

const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The tables of parts that a site file names: plain data, read once. */
export interface PartLists {
  /** Modules by name. */
  modules: ReadonlyMap<string, PartRow>;
  /** The appliances of each table, by its name in the site file. */
  appliances: ReadonlyMap<string, readonly PartRow[]>;
  /** Where the tables are. */
  paths: readonly string[];
}

/** A problem that stands in the site file, by keys. */
interface KeyedProblem {
  path: PropertyKey[];
  message: string;
}

/**
 * Reads the tables that a site file names: `modules: modules.csv`, and `- list: appliances.csv` among the loads of the
 * base or of a variant.
 *
 * @param folder that of the site file
 * @param problems to which everything is added that is wrong with the tables
 */
export function readPartLists(content: Plain, folder: string, problems: SiteProblem[]): PartLists {
  const modules = new Map<string, PartRow>();
  const appliances = new Map<string, readonly PartRow[]>();
  const paths: string[] = [];
  const read = (file: string, columns: Parameters<typeof readPartTable>[2]) => {
    const path = resolve(folder, file);
    paths.push(path);
    return readPartTable(path, file, columns, problems);
  };
  for (const file of [content.modules].flat()) {
    if (typeof file !== 'string') continue;
    for (const row of read(file, { keys: ['name', ...moduleKeys], bare: ['cells', 'price'] })) {
      const name = String(row.values.name);
      const other = modules.get(name);
      if (other) {
        const message = `"${name}" stands in ${other.file} too, on line ${other.line}; give each its own name`;
        problems.push({ file, line: row.line, column: row.columns.name ?? 1, path: 'name', message });
      }
      modules.set(name, row);
    }
  }
  const designs = [content, ...(isPlain(content.variants) ? Object.values(content.variants) : [])];
  for (const design of designs) {
    for (const item of isPlain(design) && Array.isArray(design.loads) ? design.loads : []) {
      const list = isPlain(item) ? item.list : undefined;
      if (typeof list !== 'string' || appliances.has(list)) continue;
      appliances.set(list, read(list, applianceColumns));
    }
  }
  return { modules, appliances, paths };
}

/** The loads of a design with the tables among them written out, as if each appliance stood there. */
export function withAppliances<Design extends Plain>(design: Design, { appliances }: PartLists): Design {
  if (!Array.isArray(design.loads) || appliances.size === 0) return design;
  const loads = design.loads.flatMap((item: unknown) => {
    const list = isPlain(item) && typeof item.list === 'string' ? appliances.get(item.list) : undefined;
    return list ? list.map(({ values }) => values) : [item];
  });
  return { ...design, loads };
}

/** Of each load, tables written out, the number of the item in the site file that it comes from. */
export function itemsOfLoads(loads: unknown, { appliances }: PartLists): number[] {
  if (!Array.isArray(loads)) return [];
  return loads.flatMap((item: unknown, i) => {
    const list = isPlain(item) && typeof item.list === 'string' ? appliances.get(item.list) : undefined;
    return list ? list.map(() => i) : [i];
  });
}

/** Places of a site file's values, with the loads counted as they are when tables are written out. */
export function placesWithAppliances(places: Places, items: readonly number[]): Places {
  if (items.every((item, i) => item === i)) return places;
  const moved = new Map<string, Place>();
  for (const [path, place] of places) {
    const [, item, inner] = /^loads\[(\d+)\](.*)$/.exec(path) ?? [];
    if (item === undefined) moved.set(path, place);
    else {
      items.forEach((of, i) => {
        if (of === Number(item)) moved.set(`loads[${i}]${inner}`, place);
      });
    }
  }
  return moved;
}

/** A design in which each module that is named stands as its table has it; names that no table has are told. */
export function withModules(
  design: Plain,
  { modules, paths }: PartLists,
): { design: Plain; problems: KeyedProblem[]; named: ReadonlyMap<string, PartRow> } {
  const problems: KeyedProblem[] = [];
  const named = new Map<string, PartRow>();
  if (!Array.isArray(design.arrays)) return { design, problems, named };
  const arrays = design.arrays.map((array: unknown, i) => {
    if (!isPlain(array) || typeof array.module !== 'string') return array;
    const path = ['arrays', i, 'module'];
    const row = modules.get(array.module);
    if (!row) {
      problems.push({ path, message: noModule(array.module, [...modules.keys()], paths.length > 0) });
      return array;
    }
    named.set(pathText(path), row);
    const { name: _, ...module } = row.values;
    return { ...array, module };
  });
  return { design: { ...design, arrays }, problems, named };
}

/** A design, or a change to one, as if the parts of its tables stood in the site file. */
export const partsWrittenOut = (design: Plain, lists: PartLists): Plain =>
  withModules(withAppliances(design, lists), lists).design;

/** Names that are offered where one is not there. */
const mostNames = 5;

function noModule(name: string, known: readonly string[], hasTables: boolean): string {
  if (!hasTables) {
    return `found "${name.slice(0, 60)}", expected the keys of a data sheet, or beside arrays: modules: FILE.csv, a table that has a module of this name`;
  }
  const near = [...known].sort((a, b) => distance(name, a) - distance(name, b)).slice(0, mostNames);
  const more = known.length > near.length ? `, and ${known.length - near.length} more` : '';
  return `no module is called "${name.slice(0, 60)}"${nearestHint(name, known) || ';'} There are ${near.join(', ')}${more}`;
}

/** Where in a table the value stands that a problem is about; `null` when it stands in the site file. */
export function placeInTable(
  keys: readonly PropertyKey[],
  design: Plain,
  lists: PartLists,
  named: ReadonlyMap<string, PartRow>,
): Pick<SiteProblem, 'file' | 'line' | 'column' | 'path'> | null {
  const [section, index, ...inner] = keys;
  const item = Array.isArray(design[section as string])
    ? (design[section as string] as Plain[])[index as number]
    : null;
  const row =
    section === 'arrays' && inner[0] === 'module'
      ? named.get(pathText(keys.slice(0, 3)))
      : section === 'loads'
        ? [...lists.appliances.values()].flat().find(({ values }) => values === item)
        : undefined;
  if (!row) return null;
  const own = section === 'arrays' ? inner.slice(1) : inner;
  const key = Object.keys(row.columns).find((column) => own.includes(column)) ?? 'name';
  const path = `${String(row.values.name)}${own.length > 0 ? `.${pathText(own)}` : ''}`;
  return { file: row.file, line: row.line, column: row.columns[key] ?? 1, path };
}
