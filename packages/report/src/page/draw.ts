import { parseHTML } from 'linkedom';
import type { Chart } from '../chart/chart.js';
import { plotted } from '../chart/plotted.js';

const { document } = parseHTML('<html><body></body></html>');

/** A chart as a piece of SVG. */
export function drawn(chart: Chart): string {
  const { outerHTML } = plotted<ReturnType<typeof document.createElement>>(chart, document);
  return outerHTML.replace(/ (?!data-|aria-label)[\w-]+="[^"]*"/g, shortNumbers);
}

/** Two decimals are a fiftieth of a pixel; what the chart says in `data-` attributes stays whole. */
const shortNumbers = (attribute: string) =>
  attribute.replace(/-?\d+\.\d{3,}(e-\d+)?/g, (digits) => String(Number(Number(digits).toFixed(2))));
