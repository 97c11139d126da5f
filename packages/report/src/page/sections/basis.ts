import { hoursPerYear } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import type { YearResult } from '@wintergap/year';
import { figure } from '../../words/figures.js';
import { temperatureText } from '../../words/shown-units.js';
import { html, type Markup } from '../sheet/markup.js';

/** Where the place is and under what weather, in one line. */
export function placeText({ summary }: YearResult, units: UnitSystem): string {
  const { latitude, longitude } = summary.site;
  const { source, ghiKWhPerM2, meanAirTemp, minAirTemp } = summary.weather;
  const north = `${Math.abs(latitude)}° ${latitude < 0 ? 'S' : 'N'}`;
  const east = `${Math.abs(longitude)}° ${longitude < 0 ? 'W' : 'E'}`;
  return `${north}, ${east}; weather ${source.replace(/^.*[\\/]/, '')}: ${figure(ghiKWhPerM2, 0)} kWh/m² of sun, mean ${temperatureText(meanAirTemp, units)}, lowest ${temperatureText(minAirTemp, units)}`;
}

/** What the figures rest on: the year that was simulated, and how well its ledger closes. */
export function basisText({ summary }: YearResult): Markup {
  const { worstHourImbalanceKWh, settledAfterYears } = summary.ledger;
  const settled =
    settledAfterYears === null
      ? 'the bank does not settle: it does not end the year as it began it'
      : 'repeated until the bank ends the year as it began it';
  return html`<p>Simulated hour by hour, ${hoursPerYear} hours in local standard time, ${settled}. The energy ledger closes to ${worstHourImbalanceKWh.toExponential(0)} kWh in its worst hour. One weather year is one year: others will be kinder or harder.</p>`;
}
