import {
  type Document,
  isAlias,
  isCollection,
  isMap,
  isNode,
  isPair,
  isScalar,
  type LineCounter,
  type Node,
} from 'yaml';
import { shortened } from '../schema/fields.js';
import type { SiteProblem } from './site-problem.js';

/** Deeper than any key of a site file stands, by far. */
export const deepest = 30;

/** More than any place has of anything: what has more is data under the wrong name. */
const mostItems = 5000;

/** Problems of the shape that are told at once. */
const mostTold = 20;

/**
 * What YAML allows and a site file has no use for: a value that holds itself, nesting beyond all keys, a key twice, and
 * the one key that no JavaScript object can hold as others.
 */
export function shapeProblems(document: Document, lines: LineCounter): SiteProblem[] {
  const problems: SiteProblem[] = [];
  const around: Node[] = [];
  const report = (node: Node, message: string) => {
    const { line, col } = lines.linePos(node.range?.[0] ?? 0);
    problems.push({ line, column: col, path: '', message });
  };
  const visit = (node: unknown) => {
    if (problems.length >= mostTold || !isNode(node)) return;
    if (isAlias(node)) {
      const named = around.some((outer) => (outer as { anchor?: string }).anchor === node.source);
      if (named && around.includes(node.resolve(document)!)) {
        report(
          node,
          `the alias *${shortened(node.source)} stands within the value it names; write the value out instead`,
        );
      }
      return;
    }
    if (!isCollection(node)) return;
    if (around.length >= deepest) {
      report(node, tooDeep);
      return;
    }
    if (node.items.length > mostItems) {
      report(node, `found ${node.items.length} items in one list or mapping, expected at most ${mostItems}`);
      return;
    }
    around.push(node);
    if (isMap(node)) visitKeys(node.items.map(({ key }) => key));
    for (const item of node.items) {
      if (isPair(item)) {
        visit(item.key);
        visit(item.value);
      } else visit(item);
    }
    around.pop();
  };
  const visitKeys = (keys: unknown[]) => {
    const seen = new Set<string>();
    for (const key of keys) {
      if (!isScalar(key)) continue;
      const text = String(key.value);
      if (text === '__proto__')
        report(key, 'found the key "__proto__", which can be no key and no name; choose another');
      if (seen.has(text) && text !== '<<') report(key, `the key "${shortened(text)}" is there twice; keep one of them`);
      seen.add(text);
    }
  };
  visit(document.contents);
  return problems;
}

/** What is said of nesting beyond all keys. */
export const tooDeep = `found values nested more than ${deepest} deep, expected no more than the keys of a site file need; mend the brackets or the indentation from here on`;
