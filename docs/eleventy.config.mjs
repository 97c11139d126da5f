// The site of the docs: `npm run docs` writes it to docs/_site, plain files that open from disk.
import { readFileSync } from 'node:fs';
import { siteKeyRows } from './site-file-keys.mjs';

const style = `
:root { color-scheme: light dark; --ink: #1d2a33; --paper: #fbfaf7; --line: #c9cdc8; --link: #0b5c70; --code: #f0eee8; }
@media (prefers-color-scheme: dark) { :root { --ink: #e6e3da; --paper: #14191d; --line: #3c464d; --link: #7cc4d6; --code: #1e262b; } }
body { font: 1rem/1.55 Georgia, serif; color: var(--ink); background: var(--paper); max-width: 52rem; margin: 0 auto; padding: 1rem; }
nav { border-bottom: 1px solid var(--line); padding-bottom: .5rem; }
a { color: var(--link); } h1, h2 { line-height: 1.2; } img { max-width: 100%; }
pre, code { font-family: ui-monospace, monospace; font-size: .85rem; background: var(--code); }
pre { padding: .75rem; overflow-x: auto; } table { border-collapse: collapse; display: block; overflow-x: auto; }
th, td { border-bottom: 1px solid var(--line); padding: .25rem .6rem; text-align: left; vertical-align: top; }
`;

/** From a page to another: steps up to the top, so that links work from disk. */
const upFrom = (url) => '../'.repeat(url.split('/').length - 2);

export default function configure(config) {
  config.addPassthroughCopy({ 'docs/rooms.svg': 'rooms.svg', 'docs/guide/report.png': 'guide/report.png' });
  config.addPassthroughCopy({ 'examples/places/*.yaml': '.' });
  config.addGlobalData('permalink', () => (data) => `${data.page.filePathStem}.html`);
  config.addGlobalData('layout', 'page.11ty.cjs');
  // Links name the Markdown beside them; on the site they are pages, and pages of other folders stand on top.
  config.addTransform('links', (content) =>
    content
      .replace(/href="(\.\.\/)+VALIDATION\.md"/g, 'href="validation.html"')
      .replace(/href="((?:\.\.\/)*)\.\.\/examples\/places\/README\.md"/g, 'href="$1places.html"')
      .replace(/href="tests\/(twin|bound)\/README\.md"/g, 'href="$1.html"')
      .replace(/href="reference\/README\.md"/g, 'href="reference/index.html"')
      .replace(/href="(?!https?:|#)([^"#]*?)\.md(#[^"]*)?"/g, (_, path, anchor = '') => `href="${path}.html${anchor}"`),
  );
  config.addJavaScriptFunction('style', () => style);
  config.addJavaScriptFunction('upFrom', upFrom);
  // Written by TypeDoc, beside.
  config.ignores.add('docs/reference');
  config.addTemplate('validation.md', readFileSync(new URL('../VALIDATION.md', import.meta.url), 'utf8'));
  config.addTemplate('twin.md', readFileSync(new URL('../tests/twin/README.md', import.meta.url), 'utf8'));
  config.addTemplate('bound.md', readFileSync(new URL('../tests/bound/README.md', import.meta.url), 'utf8'));
  config.addTemplate('places.md', readFileSync(new URL('../examples/places/README.md', import.meta.url), 'utf8'));
  config.addTemplate('site-file-keys.md', `# All keys of the site file\n\n${siteKeyRows()}\n`);
  config.addPreprocessor('plain', 'md', (_, content) => `{% raw %}${content}{% endraw %}`);
  return { dir: { input: 'docs', output: 'docs/_site', includes: '_includes' }, templateFormats: ['md'] };
}
