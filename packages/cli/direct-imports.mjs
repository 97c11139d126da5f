// Lets each module import what it uses from the file that states it, past the index of its room: over an index, whoever
// wants one thing of a room would load all that any command wants of it.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './bundle-parts.mjs';

const indexOf = (room) => join(root, 'packages', room, 'dist/index.js');

function exportedBy(room) {
  const text = readFileSync(indexOf(room), 'utf8');
  if (/^export \*/m.test(text)) throw new Error(`${indexOf(room)}: expected exports by name`);
  const exported = new Map();
  for (const [, list, from] of text.matchAll(/^export \{([^}]*)\} from '(.*)';$/gm)) {
    const path = from.startsWith('.') ? join(root, 'packages', room, 'dist', from) : from;
    for (const item of itemsOf(list)) exported.set(item.here, { name: item.name, path });
  }
  return exported;
}

/** Names of a list in braces, there and here; types are left out. */
const itemsOf = (list) =>
  list
    .split(',')
    .map((item) => item.trim())
    .filter((item) => item !== '' && !item.startsWith('type '))
    .map((item) => item.split(' as '))
    .map(([name, here = name]) => ({ name, here }));

/** Of each room, what it exports: the file and its name there, or the other room that it comes from. */
const exportsOf = new Map(
  readdirSync(join(root, 'packages'))
    .filter((room) => existsSync(indexOf(room)))
    .map((room) => [`@wintergap/${room}`, exportedBy(room)]),
);

/** @throws Error when the room exports no such name */
function stated(room, name) {
  const at = exportsOf.get(room).get(name);
  if (!at) throw new Error(`${room} exports no ${name}: build the packages first`);
  return exportsOf.has(at.path) ? stated(at.path, at.name) : at;
}

const directly = (text) =>
  text.replace(/^import \{([^}]*)\} from '(@wintergap\/[a-z]+)';$/gm, (_, list, room) =>
    itemsOf(list)
      .map(({ name, here }) => ({ here, at: stated(room, name) }))
      .map(({ here, at }) => `import { ${at.name} as ${here} } from '${at.path}';`)
      .join(' '),
  );

export const withDirectImports = {
  name: 'direct imports',
  setup(build) {
    build.onLoad({ filter: /packages\/[a-z]+\/(src|dist)\/.*\.[jt]s$/ }, ({ path }) => ({
      contents: directly(readFileSync(path, 'utf8')),
      loader: path.endsWith('.ts') ? 'ts' : 'js',
    }));
  },
};
