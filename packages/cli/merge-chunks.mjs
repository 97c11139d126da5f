// Puts the many chunks that the commonest command loads into one file: each file costs a look-up, a reading and a link.
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { build } from 'esbuild';
import { common } from './bundle-parts.mjs';

/**
 * @param folder that esbuild has written to
 * @param metafile what esbuild said of it
 * @param from entries whose chunks are put together
 * @param apart entries that are loaded before them, whose chunks stay
 * @param name of the file that they become
 * @throws Error when a file still asks for a chunk that is gone
 */
export async function mergeChunks(folder, metafile, { from, apart, name }) {
  const outputs = new Map(Object.entries(metafile.outputs).map(([path, output]) => [basename(path), output]));
  const before = new Set(apart.flatMap((entry) => [...needed(outputs, entry)]));
  const merged = from
    .flatMap((entry) => [...needed(outputs, entry)])
    .filter((file, i, all) => file.startsWith('chunk-') && !before.has(file) && all.indexOf(file) === i);
  const rest = [...outputs.keys()].filter((file) => !merged.includes(file));
  const lines = merged.map((file) => {
    const names = outputs.get(file).exports.map((exported) => `${exported} as ${newName(file, exported)}`);
    return names.length > 0 ? `export { ${names.join(', ')} } from './${file}';` : `import './${file}';`;
  });
  await build({
    ...common,
    stdin: { contents: lines.join('\n'), resolveDir: folder, loader: 'js' },
    outfile: join(folder, name),
    external: [...common.external, ...rest.map((file) => `./${file}`)],
    // What was of no use is gone already.
    treeShaking: false,
  });
  for (const file of rest) {
    const text = readFileSync(join(folder, file), 'utf8');
    const changed = fromMerged(text, merged, name);
    if (changed !== text) writeFileSync(join(folder, file), changed);
  }
  for (const file of merged) rmSync(join(folder, file));
  for (const file of [...rest, name]) {
    const text = readFileSync(join(folder, file), 'utf8');
    const lost = merged.find((chunk) => text.includes(`./${chunk}`));
    if (lost) throw new Error(`${file} asks for ${lost}, which is part of ${name}`);
  }
}

/** The files that an entry loads at once: itself and all that they import. */
function needed(outputs, entry) {
  const found = new Set([...outputs.keys()].filter((file) => file === `${entry}.js` || file.startsWith(`${entry}-`)));
  if (found.size !== 1) throw new Error(`expected one file of the entry ${entry}, found ${[...found].join(', ')}`);
  for (const file of found) {
    for (const { path, kind, external } of outputs.get(file).imports) {
      if (kind === 'import-statement' && !external) found.add(basename(path));
    }
  }
  return found;
}

/** A name may stand in several chunks, for different things. */
const newName = (file, exported) => `${file.replace(/\W/g, '_')}_${exported}`;

const fromMerged = (text, merged, name) =>
  text.replace(
    /import\{([^}]*)\}from"\.\/(chunk-\w+\.js)";|import"\.\/(chunk-\w+\.js)";/g,
    (whole, list, from, bare) => {
      if (merged.includes(bare)) return `import"./${name}";`;
      if (!merged.includes(from)) return whole;
      const names = list.split(',').map((item) => {
        const [exported, here = exported] = item.split(' as ');
        return `${newName(from, exported)} as ${here}`;
      });
      return `import{${names.join(',')}}from"./${name}";`;
    },
  );
