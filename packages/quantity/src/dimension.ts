/** How one kind of quantity is named, stored and shown. */
export interface DimensionFacts {
  /** With its article, for sentences: `a length`. */
  readonly name: string;
  /** The unit every parsed value is in. Empty for a plain fraction. */
  readonly unit: string;
  /** Two or three spellings to offer; a bare number is read as being in the first. */
  readonly likely: readonly string[];
}

/**
 * Every kind of quantity that can be read, with the unit it is turned into.
 * Prices carry no currency: all prices in one site file are in the same money.
 */
export const dimensions = {
  power: { name: 'a power', unit: 'W', likely: ['W', 'kW'] },
  energy: { name: 'an energy', unit: 'Wh', likely: ['Wh', 'kWh'] },
  voltage: { name: 'a voltage', unit: 'V', likely: ['V', 'mV'] },
  current: { name: 'a current', unit: 'A', likely: ['A', 'mA'] },
  charge: { name: 'a charge', unit: 'Ah', likely: ['Ah', 'kAh'] },
  resistance: { name: 'a resistance', unit: 'ohm', likely: ['ohm', 'mOhm'] },
  resistancePerLength: { name: 'a resistance per length', unit: 'ohm/km', likely: ['ohm/km', 'ohm/kft'] },
  length: { name: 'a length', unit: 'm', likely: ['m', 'ft'] },
  depth: { name: 'a depth', unit: 'm', likely: ['cm', 'in'] },
  precipitation: { name: 'a depth of rain or melted snow', unit: 'mm', likely: ['mm', 'in'] },
  area: { name: 'an area', unit: 'm2', likely: ['m2', 'ft2'] },
  conductorArea: { name: 'a conductor size', unit: 'mm2', likely: ['mm2', 'AWG'] },
  mass: { name: 'a mass', unit: 'kg', likely: ['kg', 'lb'] },
  temperature: { name: 'a temperature', unit: 'degC', likely: ['degC', 'degF'] },
  temperatureDifference: { name: 'a temperature difference', unit: 'K', likely: ['K', 'degF'] },
  duration: { name: 'a duration', unit: 'h', likely: ['h', 'min', 'days'] },
  volume: { name: 'a volume', unit: 'L', likely: ['L', 'gal'] },
  volumeFlow: { name: 'a volume per time', unit: 'L/h', likely: ['L/h', 'gal/h'] },
  massFlow: { name: 'a mass per time', unit: 'kg/h', likely: ['kg/h', 'lb/h'] },
  speed: { name: 'a speed', unit: 'm/s', likely: ['m/s', 'mph', 'km/h'] },
  heatLoss: { name: 'a heat loss per degree', unit: 'W/K', likely: ['W/K', 'BTU/(h degF)'] },
  heatCapacity: { name: 'a heat capacity', unit: 'Wh/K', likely: ['Wh/K', 'BTU/degF'] },
  irradiance: { name: 'an irradiance', unit: 'W/m2', likely: ['W/m2', 'kW/m2'] },
  irradiation: { name: 'an irradiation', unit: 'kWh/m2', likely: ['kWh/m2', 'MJ/m2'] },
  density: { name: 'a density', unit: 'kg/m3', likely: ['kg/m3', 'lb/ft3'] },
  pressure: { name: 'a pressure', unit: 'Pa', likely: ['Pa', 'hPa', 'psi'] },
  energyPerVolume: { name: 'an energy per volume', unit: 'Wh/L', likely: ['Wh/L', 'kWh/gal'] },
  energyPerMass: { name: 'an energy per mass', unit: 'Wh/kg', likely: ['Wh/kg', 'kWh/kg'] },
  volumePerEnergy: { name: 'a volume per energy', unit: 'L/kWh', likely: ['L/kWh', 'gal/kWh'] },
  voltagePerK: { name: 'a voltage per degree', unit: 'V/K', likely: ['V/K', 'mV/K'] },
  fraction: { name: 'a fraction', unit: '', likely: ['%'] },
  fractionPerK: { name: 'a fraction per degree', unit: '/K', likely: ['%/K', '/K'] },
  fractionPerTime: { name: 'a fraction per time', unit: '/h', likely: ['%/month', '%/year', '%/day'] },
  angle: { name: 'an angle', unit: 'deg', likely: ['deg'] },
  pricePerVolume: { name: 'a price per volume', unit: '/L', likely: ['/L', '/gal'] },
  pricePerMass: { name: 'a price per mass', unit: '/kg', likely: ['/kg', '/lb'] },
  pricePerEnergy: { name: 'a price per energy', unit: '/kWh', likely: ['/kWh', '/MWh'] },
  pricePerPower: { name: 'a price per power', unit: '/kW', likely: ['/kW', '/W'] },
  pricePerLength: { name: 'a price per length', unit: '/m', likely: ['/m', '/ft'] },
  pricePerArea: { name: 'a price per area', unit: '/m2', likely: ['/m2', '/ft2'] },
  pricePerTime: { name: 'a price per time', unit: '/h', likely: ['/h', '/year'] },
} as const;

/** A kind of quantity, such as `power` or `length`. */
export type Dimension = keyof typeof dimensions;

/** How a kind of quantity is named, stored and shown. */
export function dimensionFacts(dimension: Dimension): DimensionFacts {
  return dimensions[dimension];
}

/** The unit in which `parseQuantity` returns a dimension; empty text for a fraction. */
export function canonicalUnit(dimension: Dimension): string {
  return dimensionFacts(dimension).unit;
}
