// What is given to people, in the folder release/: a tarball of every package, the whole program as one file, and check
// sums of all (`sha256sum -c SHA256SUMS`). Run after the build: npm run release
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './bundle-parts.mjs';
import { buildSingleFile } from './single-file.mjs';
import { licencesOf } from './third-party.mjs';

const folder = join(root, 'release');
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder);
const packages = readdirSync(join(root, 'packages')).map((name) => `--workspace=packages/${name}`);
execFileSync('npm', ['pack', ...packages, '--silent', '--pack-destination', folder], {
  cwd: root,
  stdio: 'inherit',
});
const metafile = await buildSingleFile(join(folder, 'wintergap.mjs'));
writeFileSync(join(folder, 'wintergap.mjs.LICENSES.txt'), licencesOf(metafile));
const sums = readdirSync(folder)
  .sort()
  .map(
    (file) =>
      `${createHash('sha256')
        .update(readFileSync(join(folder, file)))
        .digest('hex')}  ${file}\n`,
  );
writeFileSync(join(folder, 'SHA256SUMS'), sums.join(''));
console.log(`${sums.length} files with their check sums in ${folder}`);
