export type FuelKind = 'petrol' | 'diesel' | 'propane';

/** What a litre of liquid fuel holds. */
export interface FuelProperties {
  densityKgPerL: number;
  /** Lower heating value: water in the exhaust leaves as vapour. */
  lowerHeatMJPerKg: number;
  lowerHeatWhPerL: number;
  /** Carbon dioxide from burning one litre, without making and hauling it. */
  co2KgPerL: number;
}

const litresPerUsGallon = 3.785411784;

const fuel = (densityKgPerL: number, lowerHeatMJPerKg: number, co2KgPerUsGallon: number): FuelProperties => ({
  densityKgPerL,
  lowerHeatMJPerKg,
  lowerHeatWhPerL: (densityKgPerL * lowerHeatMJPerKg) / 0.0036,
  co2KgPerL: co2KgPerUsGallon / litresPerUsGallon,
});

/**
 * Mean properties of fuels as sold; propane as the liquid in the tank, at 15 degC.
 *
 * Source, from memory: density and lower heat IEA and EIA; carbon dioxide US EPA emission factors, kg per US gallon.
 * Blends differ by a few per cent: petrol with 10 % ethanol holds 3 % less heat.
 */
export const fuelProperties: Readonly<Record<FuelKind, FuelProperties>> = {
  petrol: fuel(0.745, 43.4, 8.78),
  diesel: fuel(0.835, 42.8, 10.21),
  propane: fuel(0.507, 46.3, 5.72),
};
