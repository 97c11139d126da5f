import { formatQuantity, type UnitSystem } from '@wintergap/quantity';
import { figure } from './figures.js';

const litresPerGallon = 3.785411784;

/** `L` or `gal`, for the head of a column. */
export const volumeUnit = (units: UnitSystem): string => (units === 'us' ? 'gal' : 'L');

export const inVolumeUnit = (litres: number, units: UnitSystem): number =>
  units === 'us' ? litres / litresPerGallon : litres;

export const volumeText = (litres: number, units: UnitSystem): string => formatQuantity(litres, 'volume', units);

/** `degC` or `degF`, as in the site file. */
export const temperatureUnit = (units: UnitSystem): string => (units === 'us' ? 'degF' : 'degC');

export const inTemperatureUnit = (celsius: number, units: UnitSystem): number =>
  units === 'us' ? celsius * 1.8 + 32 : celsius;

export const temperatureText = (celsius: number, units: UnitSystem): string =>
  `${figure(inTemperatureUnit(celsius, units), 0)} ${temperatureUnit(units)}`;

const mm2PerKcmil = 0.506707;

/** A sentence that another room wrote in metric units, with its temperatures and conductor sizes in the units shown. */
export function inShownUnits(sentence: string, units: UnitSystem): string {
  if (units !== 'us') return sentence;
  return sentence
    .replace(/(-?\d+(?:\.\d+)?) degC\b/g, (_, celsius: string) => temperatureText(Number(celsius), units))
    .replace(/(\d+(?:\.\d+)?) mm2\b/g, (_, mm2: string) => `${figure(Number(mm2) / mm2PerKcmil)} kcmil`);
}
