import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';

/** What a file and the files it imports at once, not when a command runs, take from elsewhere; types vanish. */
function packagesBehind(file: string, seen = new Set<string>(), found = new Set<string>()): Set<string> {
  if (seen.has(file)) return found;
  seen.add(file);
  for (const [, names, from] of readFileSync(file, 'utf8').matchAll(/^import ([^;]*?) from '([^']*)';/gm)) {
    const onlyTypes = names!.startsWith('type ') || /^\{(\s*type [^,}]*,?)*\s*\}$/.test(names!);
    if (onlyTypes) continue;
    if (from!.startsWith('.')) packagesBehind(join(dirname(file), from!.replace(/\.js$/, '.ts')), seen, found);
    else found.add(from!);
  }
  return found;
}

// A room behind this would make every help page and every slip on the command line wait for it.
test('help and what is wrong on the command line are told without any room loaded', () => {
  const found = [...packagesBehind(join(import.meta.dirname, 'main.ts'))].filter((name) => !name.startsWith('node:'));
  expect(found).toEqual(['commander']);
});
