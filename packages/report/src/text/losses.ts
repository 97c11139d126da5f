import { monthNames } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import type { ArrayLosses } from '@wintergap/year';
import { figure, percent, wrap } from '../words/figures.js';
import { temperatureText } from '../words/shown-units.js';
import { plainTable } from './parts/plain-table.js';

type Chain = ArrayLosses['chain'];

/** Where each array's energy goes, from its plane to the bus: the year, then the months in kWh and in percent. */
export function lossesText(siteName: string, losses: readonly ArrayLosses[], units: UnitSystem = 'metric'): string {
  if (losses.length === 0) return `${siteName} has no array.`;
  return losses.map(({ name, chain }) => arrayText(siteName, name, chain, units)).join('\n\n');
}

function arrayText(siteName: string, name: string, chain: Chain, units: UnitSystem): string {
  const startKWh = sum(chain.startKWh);
  const restKWh = sum(chain.restKWh);
  if (startKWh === 0) return `${siteName}, ${name}: no light reaches the plane of the array.`;
  const lines = chain.losses.filter(({ kWh }) => kWh.some((loss) => Math.abs(loss) >= 0.05));
  const throttled = lines.find((line) => line.name === 'throttled')?.kWh;
  const offered = Array.from(chain.restKWh, (rest, m) => rest + (throttled?.[m] ?? 0));
  const darkest = offered.indexOf(Math.min(...offered));
  const ofYear = largest(lines, ({ kWh }) => sum(kWh));
  const ofDarkest = largest(lines, ({ kWh }) => kWh[darkest]!);
  const most =
    ofYear && ofDarkest
      ? ` Largest loss: ${ofYear.name}, ${figure(sum(ofYear.kWh))} kWh; in ${monthNames[darkest]} ${ofDarkest.name}, ${figure(ofDarkest.kWh[darkest]!)} kWh.`
      : '';
  const headline = wrap(
    `${siteName}, ${name}: of ${figure(startKWh)} kWh that ${figure(chain.ratedKW)} kW could give in clear view at ${temperatureText(25, units)}, ${figure(restKWh)} kWh, ${percent(restKWh / startKWh)}, are used.${most}`,
  );
  const year = [
    ['plane', figure(startKWh), '100 %'],
    ...lines.map(({ name: loss, kWh }) => [loss, taken(sum(kWh)), share(sum(kWh), startKWh)]),
    ['used', figure(restKWh), percent(restKWh / startKWh, 1)],
  ];
  const kWh = [
    ['plane', ...Array.from(chain.startKWh, (start) => figure(start, 0))],
    ...lines.map((line) => [line.name, ...Array.from(line.kWh, (loss) => (small(loss) ? '-' : taken(loss, 0)))]),
    ['used', ...Array.from(chain.restKWh, (rest) => figure(rest, 0))],
  ];
  const shares = [
    ...lines.map((line) => [line.name, ...Array.from(line.kWh, (loss, m) => monthShare(loss, chain.startKWh[m]!))]),
    ['used', ...Array.from(chain.restKWh, (rest, m) => monthShare(-rest, chain.startKWh[m]!).replace('+', ''))],
  ];
  return [
    headline,
    plainTable(['Year', 'kWh', 'of plane'], year),
    `By month, kWh\n${monthTable(kWh)}`,
    `By month, percent of the plane's\n${monthTable(shares)}`,
  ].join('\n\n');
}

/** Twelve months beside each other where 80 columns hold them, otherwise half a year above the other. */
function monthTable(rows: readonly (readonly string[])[]): string {
  const part = (from: number, to: number) =>
    plainTable(
      ['', ...monthNames.slice(from, to)],
      rows.map(([name = '', ...cells]) => [name, ...cells.slice(from, to)]),
    );
  const whole = part(0, 12);
  return whole.split('\n').every((line) => line.length <= 80) ? whole : `${part(0, 6)}\n${part(6, 12)}`;
}

function largest(lines: Chain['losses'], by: (line: Chain['losses'][number]) => number) {
  return lines.length === 0 ? null : lines.reduce((most, line) => (by(line) > by(most) ? line : most));
}

const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);
const small = (kWh: number) => Math.abs(kWh) < 0.5;
/** A loss takes away; cold cells and bright light can give. */
const taken = (kWh: number, digits?: number) => `${kWh > 0 ? '-' : '+'}${figure(Math.abs(kWh), digits)}`;
const share = (kWh: number, startKWh: number) => `${kWh > 0 ? '-' : '+'}${percent(Math.abs(kWh) / startKWh, 1)}`;

function monthShare(lossKWh: number, startKWh: number): string {
  const shown = startKWh > 0 ? ((-lossKWh / startKWh) * 100).toFixed(0) : '0';
  return Number(shown) === 0 ? '-' : lossKWh < 0 ? `+${shown}` : shown;
}
