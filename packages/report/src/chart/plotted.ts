import * as Plot from '@observablehq/plot';
import type { Chart } from './chart.js';

/** As much of an element as is needed here: that of a browser, or of a library that stands for one. */
interface Drawn {
  setAttribute(name: string, value: string): void;
  removeAttribute(name: string): void;
  querySelectorAll(selector: string): Iterable<Drawn & { remove(): void }>;
}

/**
 * A chart as an SVG element that keeps its proportions in whatever width it gets.
 *
 * @param document where it is made; that of the page when left out
 */
export function plotted<Element extends Drawn>({ label, options }: Chart, document?: unknown): Element {
  const svg = Plot.plot({ ...(document !== undefined && { document: document as never }), ...options });
  const element = svg as unknown as Element;
  for (const style of element.querySelectorAll('style')) style.remove();
  // One sentence says what a chart shows; names of its parts would be read out between, and groups may bear none.
  for (const part of element.querySelectorAll('[aria-label]')) part.removeAttribute('aria-label');
  for (const name of ['width', 'height', 'font-family']) element.removeAttribute(name);
  element.setAttribute('class', 'chart');
  element.setAttribute('font-size', '12');
  element.setAttribute('role', 'img');
  element.setAttribute('aria-label', label);
  return element;
}
