import * as Plot from '@observablehq/plot';
import { parseHTML } from 'linkedom';
import { escapeText } from '../page/markup.js';

/** A chart as a piece of SVG, with the text that says what it shows to those who do not see it. */
export interface Drawing {
  svg: string;
}

/** Units of a drawing across: a phone in the hand, or a column of text on a screen or on paper. */
export const narrowWidth = 340;
export const wideWidth = 760;

const { document } = parseHTML('<html><body></body></html>');

/**
 * Draws marks on axes as SVG that keeps its proportions in whatever width it gets. Colours are custom properties of the
 * page, so that one drawing serves light, dark and paper.
 *
 * @param label says what the chart shows, in one sentence
 */
export function draw(label: string, options: Plot.PlotOptions): Drawing {
  const svg = Plot.plot({ document: document as never, ...options });
  const element = svg as unknown as ReturnType<typeof document.createElement>;
  for (const style of element.querySelectorAll('style')) style.remove();
  element.setAttribute('class', 'chart');
  element.removeAttribute('width');
  element.removeAttribute('height');
  element.removeAttribute('font-family');
  element.setAttribute('font-size', '12');
  const drawn = element.outerHTML.replace(/ (?!data-)[\w-]+="[^"]*"/g, shortNumbers);
  return { svg: drawn.replace('<svg ', `<svg role="img" aria-label="${escapeText(label)}" `) };
}

/** Two decimals are a fiftieth of a pixel; what the chart says in `data-` attributes stays whole. */
const shortNumbers = (attribute: string) =>
  attribute.replace(/-?\d+\.\d{3,}(e-\d+)?/g, (digits) => String(Number(Number(digits).toFixed(2))));

/**
 * Writes figures onto the elements of a mark as `data-` attributes, so that a chart can be read by a program and held
 * against the ledger. Given as a mark's `render` option.
 *
 * @param of attributes of the datum with this index
 */
export function withData(of: (index: number) => Record<string, number | readonly number[]>): Plot.RenderFunction {
  return (index, scales, values, dimensions, context, next) => {
    const group = next!(index, scales, values, dimensions, context) as unknown as {
      childNodes: Iterable<{ setAttribute: (name: string, value: string) => void }>;
    };
    let i = 0;
    for (const element of group.childNodes) {
      for (const [name, value] of Object.entries(of(index[i]!))) {
        element.setAttribute(
          `data-${name}`,
          typeof value === 'number' ? nineDigits(value) : value.map(nineDigits).join(' '),
        );
      }
      i++;
    }
    return group as never;
  };
}

/** More than a reader of the page can want, fewer than the machine holds. */
const nineDigits = (value: number): string => String(Number(value.toPrecision(9)));
