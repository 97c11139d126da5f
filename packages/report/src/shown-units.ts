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
