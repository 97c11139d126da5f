import { parseHTML } from 'linkedom';
import type { Chart } from '../../chart/chart.js';
import { plotted } from '../../chart/plotted.js';
import { escapeText } from './markup.js';

const { document } = parseHTML('<html><body></body></html>');

/** A chart as a piece of SVG. */
export function drawn(chart: Chart): string {
  const element = plotted<ReturnType<typeof document.createElement>>(chart, document);
  // Names from the site file stand in it, and a document's own writer leaves < and > in attributes as they are.
  element.removeAttribute('aria-label');
  const svg = element.outerHTML.replace(/ (?!data-)[\w-]+="[^"]*"/g, shortNumbers);
  return svg.replace('<svg ', `<svg aria-label="${escapeText(chart.label)}" `);
}

/** Two decimals are a fiftieth of a pixel; what the chart says in `data-` attributes stays whole. */
const shortNumbers = (attribute: string) =>
  attribute.replace(/-?\d+\.\d{3,}(e-\d+)?/g, (digits) => String(Number(Number(digits).toFixed(2))));
