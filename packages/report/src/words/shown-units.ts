import { formatQuantity, type UnitSystem } from '@wintergap/quantity';
import { figure } from './figures.js';

const litresPerGallon = 3.785411784;

/** `L` or `gal`, for the head of a column. */
export const volumeUnit = (units: UnitSystem): string => (units === 'us' ? 'gal' : 'L');

/** Litres in the unit shown, for columns. */
export const inVolumeUnit = (litres: number, units: UnitSystem): number =>
  units === 'us' ? litres / litresPerGallon : litres;

/** `0.8 L`, `46.5 L`: a first digit of what is less than one, three of what is more. */
export const volumeText = (litres: number, units: UnitSystem): string =>
  formatQuantity(litres, 'volume', units, inVolumeUnit(litres, units) < 1 ? 1 : 3);

/** `degC` or `degF`, as in the site file. */
export const temperatureUnit = (units: UnitSystem): string => (units === 'us' ? 'degF' : 'degC');

export const inTemperatureUnit = (celsius: number, units: UnitSystem): number =>
  units === 'us' ? celsius * 1.8 + 32 : celsius;

/** `-12 degC` or `10 degF`, whole degrees. */
export const temperatureText = (celsius: number, units: UnitSystem): string =>
  `${figure(inTemperatureUnit(celsius, units), 0)} ${temperatureUnit(units)}`;

/** A difference of temperatures: `31 K`, or `56 Fahrenheit degrees`, which nobody takes for a temperature. */
export const temperatureDifferenceText = (kelvins: number, units: UnitSystem): string =>
  units === 'us' ? `${figure(kelvins * 1.8, 0)} Fahrenheit degrees` : `${figure(kelvins, 0)} K`;

const cm2PerSquareInch = 6.4516;
const cubicFeetPerM3 = 35.3147;
const kgPerPound = 0.45359237;

/** A mass in kg in the unit shown, for columns. */
export const inMassUnit = (kg: number, units: UnitSystem): number => (units === 'us' ? kg / kgPerPound : kg);

/** `kg` or `lb`, for the head of a column. */
export const massUnit = (units: UnitSystem): string => (units === 'us' ? 'lb' : 'kg');

/** A sentence that another room wrote in metric units, in the units shown: temperatures and their differences, areas, flows of air, fuel. */
export function inShownUnits(sentence: string, units: UnitSystem): string {
  if (units !== 'us') return sentence;
  return sentence
    .replace(/(-?\d+(?:\.\d+)?) degC\b/g, (_, celsius: string) => temperatureText(Number(celsius), units))
    .replace(/(\d+(?:\.\d+)?) K\b/g, (_, kelvins: string) => temperatureDifferenceText(Number(kelvins), units))
    .replace(/(\d+(?:\.\d+)?) cm2\b/g, (_, cm2: string) => `${figure(Number(cm2) / cm2PerSquareInch)} in2`)
    .replace(/(\d+(?:\.\d+)?) m3\/h\b/g, (_, flow: string) => `${figure(Number(flow) * cubicFeetPerM3)} ft3/h`)
    .replace(/(\d+(?:\.\d+)?) L\b(?!\/)/g, (_, litres: string) => volumeText(Number(litres), units))
    .replace(/(\d+(?:\.\d+)?) mm2\b/g, (_, mm2: string) => formatQuantity(Number(mm2), 'conductorArea', units));
}
