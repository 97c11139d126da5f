import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = join(import.meta.dirname, '..');
const text = (file: string) => readFileSync(join(root, file), 'utf8');
const manifestOf = (folder: string) => JSON.parse(text(join(folder, 'package.json')));
const { version } = manifestOf('.');
const names = readdirSync(join(root, 'packages'));

test('the version is the one that the change log tells of', () => {
  expect(/^## (\S+)/m.exec(text('CHANGELOG.md'))?.[1]).toBe(version);
});

describe.each(names)('%s', (name) => {
  const folder = join('packages', name);
  const manifest = manifestOf(folder);

  test('says what a package needs to be published, and nothing of where it is kept', () => {
    expect(manifest).toMatchObject({
      name: name === 'cli' ? 'wintergap' : `@wintergap/${name}`,
      version,
      type: 'module',
      license: 'MIT',
      engines: { node: '>=20' },
      publishConfig: { access: 'public', provenance: true },
    });
    expect(manifest.description).toMatch(/\w/);
    expect(manifest).not.toHaveProperty('private');
    expect(manifest).not.toHaveProperty('repository');
    expect(text(join(folder, 'LICENSE'))).toBe(text('LICENSE'));
    expect(text(join(folder, 'README.md'))).toMatch(/^# /);
  });

  test('depends on its siblings in its own version, and on exact versions of others that it imports', () => {
    const declared: Record<string, string> = manifest.dependencies ?? {};
    const sources = readdirSync(join(root, folder, 'src'), { recursive: true, encoding: 'utf8' })
      .filter((file) => /\.tsx?$/.test(file) && !/\.(test|bench|fixture)\.ts$/.test(file))
      .map((file) => text(join(folder, 'src', file)))
      .join('\n');
    for (const [other, wanted] of Object.entries(declared)) {
      expect(wanted, other).toMatch(other.startsWith('@wintergap/') ? version : /^\d+\.\d+\.\d+$/);
      expect(sources, `${name} declares ${other}`).toMatch(new RegExp(`['"]${other}(/[a-z-]+)?['"]`));
    }
  });

  test('has its types, or is a program', () => {
    if (name === 'cli') expect(manifest.dependencies).toBeUndefined();
    else {
      expect(manifest.sideEffects).toBe(false);
      expect(manifest.exports['.']).toEqual({ types: manifest.types, default: './dist/index.js' });
    }
  });
});
