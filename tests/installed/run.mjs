// Installs what `npm run release` made in empty folders outside the project, as a stranger does, and uses it there: the
// program from its tarball, the packages from a typed program, the single file by itself. Run after it:
//   node tests/installed/run.mjs
// Packages of others come from the cache that `npm ci` filled, and from the registry only where that lacks them.
import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const root = join(import.meta.dirname, '../..');
const release = join(root, 'release');
const { version } = JSON.parse(readFileSync(join(root, 'packages/cli/package.json'), 'utf8'));
const tarballs = readdirSync(release).filter((file) => file.endsWith('.tgz'));
const places = [];

/** A folder with nothing in it. */
function emptyFolder() {
  const place = mkdtempSync(join(tmpdir(), 'wintergap-installed-'));
  places.push(place);
  return place;
}

function run(place, command, ...args) {
  const { status, stdout, stderr } = spawnSync(command, args, { cwd: place, encoding: 'utf8' });
  assert.equal(status, 0, `${command} ${args.join(' ')} in ${place}: ${stderr || stdout}`);
  return stdout;
}

function install(place, files) {
  const paths = files.map((file) => join(release, file));
  run(place, 'npm', 'install', '--prefer-offline', '--no-audit', '--no-fund', '--silent', ...paths);
}

function programFromTarball() {
  const place = emptyFolder();
  install(place, [`wintergap-${version}.tgz`]);
  assert.deepEqual(
    readdirSync(join(place, 'node_modules')).filter((name) => !name.startsWith('.')),
    ['wintergap'],
    'the program needs no other package',
  );
  const wintergap = (...args) => run(place, 'npx', '--no-install', 'wintergap', ...args);
  assert.equal(wintergap('--version').trim(), version);
  wintergap('start', 'my-place');
  const installed = (file) => readFileSync(join(place, 'node_modules/wintergap/bundle', file), 'utf8');
  assert.equal(readFileSync(join(place, 'my-place/wintergap.schema.json'), 'utf8'), installed('wintergap.schema.json'));
  assert.match(installed('wintergap.1'), /^\.SH COMMANDS/m);
  assert.match(installed('LICENSES.txt'), /^zod /m);
  assert.match(wintergap('complete', '--', 'year', 'my-place/site.yaml', '--variant', ''), /^fixed\t$/m);
  assert.match(wintergap('year', 'my-place/site.yaml', '--quiet'), /^Kettle Pond honey house: the generator runs/);
  // A unit outside the table of common ones, for which a library is loaded late.
  const site = readFileSync(join(place, 'my-place/site.yaml'), 'utf8');
  assert.match(site, /elevation: 430 m/);
  writeFileSync(join(place, 'my-place/fathoms.yaml'), site.replace('elevation: 430 m', 'elevation: 235 fathoms'));
  wintergap('year', 'my-place/fathoms.yaml', '--quiet', '--years', '1');
  wintergap('compare', 'my-place/site.yaml', '--years', '2', '--html', 'compare.html');
  assert.match(readFileSync(join(place, 'compare.html'), 'utf8'), /^<!doctype html>[\s\S]*<svg/i);
  wintergap('live', 'my-place/site.yaml', '--html-live', 'page.html');
  assert.match(readFileSync(join(place, 'page.html'), 'utf8'), /^<!doctype html>[\s\S]*<script type="module">/);
  return place;
}

function packagesFromTarballs(site) {
  const place = emptyFolder();
  const libraries = tarballs.filter((file) => file.startsWith('wintergap-') && file !== `wintergap-${version}.tgz`);
  assert.ok(libraries.length >= 15, `the tarballs of the packages: ${libraries}`);
  writeFileSync(join(place, 'package.json'), '{ "type": "module" }');
  install(place, libraries);
  for (const name of readdirSync(join(place, 'node_modules/@wintergap'))) {
    const entry = `@wintergap/${name}`;
    run(place, process.execPath, '--input-type=module', '-e', `await import('${entry}')`);
  }
  copyFileSync(join(import.meta.dirname, 'library.ts'), join(place, 'library.ts'));
  const types = join(root, 'node_modules/@types');
  run(
    place,
    process.execPath,
    join(root, 'node_modules/typescript/bin/tsc'),
    ...['--strict', '--exactOptionalPropertyTypes', '--module', 'nodenext', '--target', 'es2022', '--lib', 'es2023'],
    ...['--typeRoots', types, '--types', 'node', 'library.ts'],
  );
  const { hours, served, designs, unit, ah } = JSON.parse(run(place, process.execPath, 'library.js', site));
  assert.ok(hours > 0 && served > 0 && designs > 1);
  assert.deepEqual([unit, ah], ['L', 200]);
}

function singleFile(site) {
  const place = emptyFolder();
  run(release, 'sha256sum', '--check', '--quiet', 'SHA256SUMS');
  copyFileSync(join(release, 'wintergap.mjs'), join(place, 'wintergap.mjs'));
  const both = (...ask) => {
    const alone = (workers) => run(place, process.execPath, 'wintergap.mjs', ...ask, '--json', '--workers', workers);
    const inThreads = alone('2');
    assert.equal(inThreads, alone('1'), `${ask[0]}: the same answer from threads`);
    const bundled = join(root, 'packages/cli/bin/wintergap.js');
    assert.equal(inThreads, run(place, process.execPath, bundled, ...ask, '--json'), `${ask[0]}: the program's answer`);
  };
  both('outlook', site, '--years', '6');
  // So many years of so many designs that threads are worth it.
  both('compare', site, '--years', '15');
}

try {
  const place = programFromTarball();
  const site = join(place, 'my-place/site.yaml');
  packagesFromTarballs(site);
  singleFile(site);
  const size = execFileSync('wc', ['-c', join(release, `wintergap-${version}.tgz`)], { encoding: 'utf8' });
  console.log(
    `installed and used in empty folders: the program (${size.split(' ')[0]} bytes), the packages, the single file`,
  );
} finally {
  for (const place of places) rmSync(place, { recursive: true, force: true });
}
