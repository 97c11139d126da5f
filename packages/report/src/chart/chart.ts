import type * as Plot from '@observablehq/plot';

/**
 * What a chart shows, to be drawn wherever there is a document: marks on axes. Colours are custom properties of the page,
 * so that one drawing serves light, dark and paper.
 */
export interface Chart {
  /** What it shows, in one sentence, for those who do not see it. */
  label: string;
  options: Plot.PlotOptions;
}

/** @param label what the chart shows, in one sentence */
export const chartOf = (label: string, options: Plot.PlotOptions): Chart => ({ label, options });

/** Units of a drawing across for a phone in the hand. */
export const narrowWidth = 340;
/** Units of a drawing across for a column of text on a screen or on paper. */
export const wideWidth = 760;

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
