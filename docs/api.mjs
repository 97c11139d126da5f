// Writes docs/api/ROOM.md: what each room exports, as its types say it, so that a change of what others may rely on shows
// in review. Run after the build:  node docs/api.mjs
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const root = join(import.meta.dirname, '..');

/** The declarations of a file, each with its name and without comments. */
function declarationsOf(file) {
  const text = readFileSync(file, 'utf8')
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/\/\/#.*$/gm, '')
    .replace(/^\s*\n/gm, '');
  const found = new Map();
  for (const part of text.split(/^(?=(?:export )?(?:declare |interface |type |import |export ))/m)) {
    const name = /^(?:export )?(?:declare )?(?:abstract )?(?:const|let|function|class|interface|type|enum) (\w+)/.exec(
      part,
    )?.[1];
    if (name) found.set(name, [...(found.get(name) ?? []), part.replace(/^export /, '').trim()]);
  }
  return found;
}

/** Names and where they are declared, of `import` and `export ... from` lines that stay in the package. */
function namesFrom(text, keyword) {
  return [...text.matchAll(new RegExp(`^${keyword} (?:type )?\\{([^}]*)\\} from '(\\.[^']*)';`, 'gm'))].flatMap(
    ([, list, from]) =>
      list
        .split(',')
        .map((part) => part.trim().replace(/^type /, ''))
        .filter((name) => name !== '')
        .map((name) => ({ name: name.split(' as ')[0], shown: name.split(' as ').at(-1), from })),
  );
}

const typesOf = (from, at) => join(dirname(at), from.replace(/\.js$/, '.d.ts'));

/** The page of a room: its exports by name, then what they need of types that it does not export. */
export function apiPage(room) {
  const entry = join(root, 'packages', room, 'dist/index.d.ts');
  const text = readFileSync(entry, 'utf8');
  const exported = namesFrom(text, 'export');
  const public_ = new Set(exported.map(({ shown }) => shown));
  const needed = new Map();
  /** Types of the room that a declaration names, and theirs. */
  const need = (declaration, file) => {
    const around = readFileSync(file, 'utf8');
    const here = declarationsOf(file);
    const places = new Map(namesFrom(around, 'import').map(({ name, from }) => [name, typesOf(from, file)]));
    for (const [, ofValue, ofType] of declaration.matchAll(/typeof (\w+)|\b([A-Z]\w+)\b/g)) {
      const name = ofValue ?? ofType;
      if (public_.has(name) || needed.has(name)) continue;
      const place = here.has(name) ? file : places.get(name);
      if (!place) continue;
      const found = declarationsOf(place).get(name);
      // The schema of the site file, hundreds of lines that its own reference says better.
      if (!found || found[0].includes('z.Zod')) continue;
      needed.set(name, found.join('\n'));
      need(found.join('\n'), place);
    }
  };
  const lines = exported
    .sort((a, b) => (a.shown < b.shown ? -1 : 1))
    .map(({ name, shown, from }) => {
      const file = typesOf(from, entry);
      const declaration = (declarationsOf(file).get(name) ?? [`const ${name}: unknown;`]).join('\n');
      need(declaration, file);
      return shown === name ? declaration : `${declaration} // as ${shown}`;
    });
  const others = [...text.matchAll(/^export .* from '@wintergap[^;]*;/gm)].map(([line]) => line);
  const hidden = [...needed].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, declaration]) => declaration);
  const behind =
    hidden.length === 0 ? '' : `\nNamed by these, not exported:\n\n\`\`\`ts\n${hidden.join('\n\n')}\n\`\`\`\n`;
  return `# @wintergap/${room}\n\n\`\`\`ts\n${[...others, ...lines].join('\n\n')}\n\`\`\`\n${behind}`;
}

export const rooms = readdirSync(join(root, 'packages')).filter((room) =>
  existsSync(join(root, 'packages', room, 'dist/index.d.ts')),
);
export const pagePath = (room) => join(root, 'docs/api', `${room}.md`);

if (process.argv[1] === import.meta.filename) {
  mkdirSync(join(root, 'docs/api'), { recursive: true });
  for (const room of rooms) writeFileSync(pagePath(room), apiPage(room));
}
