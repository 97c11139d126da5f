// The reference of the library: what every package exports, from its types and doc comments. `npm run docs` writes it beside
// the guide. TypeDoc calls the compiler, which TypeScript 7 does not offer yet; hence this folder is a package of its own,
// with the TypeScript that does.
import { modules } from './modules.mjs';

/** @type {Partial<import('typedoc').TypeDocOptions>} */
export default {
  name: 'Wintergap in a program of your own',
  entryPoints: modules.map(({ source }) => source),
  tsconfig: 'tsconfig.json',
  readme: 'README.md',
  out: '../_site/reference',
  plugin: ['typedoc-plugin-missing-exports', './module-pages.mjs'],
  internalModule: 'not exported',
  // The build has checked the types; what other libraries declare is theirs to explain.
  skipErrorChecking: true,
  excludeExternals: true,
  hideGenerator: true,
  // Where a line stands in a repository of some host is no part of the reference, and a checkout may have no such host.
  disableSources: true,
  // A function, a constant or a class without a doc comment, or a link in one that leads nowhere, fails the build.
  validation: { notDocumented: true },
  requiredToBeDocumented: ['Function', 'Variable', 'Class'],
  packagesRequiringDocumentation: ['wintergap-reference', ...modules.map(({ name }) => name)],
  // As much of an element as the charts need, each as the browsers' documents explain it.
  intentionallyNotDocumented: [
    '@wintergap/report/in-page.not exported.Drawn.setAttribute',
    '@wintergap/report/in-page.not exported.Drawn.removeAttribute',
    '@wintergap/report/in-page.not exported.Drawn.querySelectorAll',
    '@wintergap/report/in-page.not exported.Drawn.querySelectorAll.__type.remove',
  ],
  treatWarningsAsErrors: true,
  logLevel: 'Warn',
};
