// The licences of the libraries that a bundle holds, as they ask to be given along: one text, made from what esbuild says
// it has put in.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './bundle-parts.mjs';

/** Folders of the libraries among the inputs of a bundle, such as `node_modules/zod`. */
export function librariesIn(metafile) {
  const folders = Object.keys(metafile.inputs).map(
    (input) => /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input)?.[0],
  );
  return [...new Set(folders.filter((folder) => folder !== undefined))].sort();
}

/** @throws Error when a library says nothing of its licence */
export function licencesOf(metafile) {
  const parts = librariesIn(metafile).map((folder) => {
    const { name, version, license } = JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8'));
    const file = readdirSync(join(root, folder)).find((entry) => /^(licen[cs]e|copying)/i.test(entry));
    if (!license && !file) throw new Error(`${folder}: says nothing of its licence`);
    const text = file ? `\n${readFileSync(join(root, folder, file), 'utf8').trim()}\n` : '';
    return `${name} ${version} (${license ?? 'as follows'})\n${text}`;
  });
  return `Wintergap holds parts of these libraries, each under its own licence.\n\n${parts.join(`\n${'-'.repeat(80)}\n\n`)}`;
}
