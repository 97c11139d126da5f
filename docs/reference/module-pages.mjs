// What TypeDoc does not do by itself: a module is called as it is imported and begins with the README of its package, the
// schemas of the site file, hundreds of lines each, are left to the reference of its keys, and each page leads to the guide.
import { readFileSync } from 'node:fs';
import { Converter, JSX, ReflectionKind } from 'typedoc';
import { modules } from './modules.mjs';

/** After the others: what is named but not exported is found at the same event. */
const last = -Infinity;

/** @param {import('typedoc').Application} app */
export function load(app) {
  app.converter.on(Converter.EVENT_RESOLVE_BEGIN, ({ project }) => asImported(project), last);
  app.converter.on(Converter.EVENT_RESOLVE_BEGIN, ({ project }) => withoutSchemas(project), last);
  app.renderer.hooks.on('sidebar.begin', (page) =>
    JSX.createElement('p', null, JSX.createElement('a', { href: page.relativeURL('../index.html') }, 'Guide')),
  );
}

function asImported(project) {
  for (const page of project.getChildrenByKind(ReflectionKind.Module)) {
    const { name, readme } = modules.find(({ source }) => source === project.files.getReflectionPath(page));
    page.name = name;
    if (readme) page.readme = [{ kind: 'text', text: withoutTitle(readFileSync(readme, 'utf8')) }];
  }
}

/** The page has its title already. */
const withoutTitle = (text) => text.replace(/^# .*\n+/, '');

function withoutSchemas(project) {
  for (const constant of project.getReflectionsByKind(ReflectionKind.Variable)) {
    const isSchema = /^Zod/.test(constant.type?.toString() ?? '');
    if (isSchema && constant.parent.name === 'not exported') project.removeReflection(constant);
  }
}
