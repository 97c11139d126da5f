import { hoursPerYear } from '@wintergap/ground';
import type { Dimension } from './dimension.js';

// Exact definitions, NIST Special Publication 811 (2008), Appendix B: international foot, avoirdupois pound,
// US liquid gallon (231 cubic inches), imperial gallon, International Table British thermal unit.
const metresPerFoot = 0.3048;
const metresPerInch = 0.0254;
const metresPerMile = 1609.344;
const kilogramsPerPound = 0.45359237;
const litresPerGallon = 3.785411784;
const litresPerImperialGallon = 4.54609;
const joulesPerBtu = 1055.05585262;
const whPerBtu = joulesPerBtu / 3600;
const pascalsPerPsi = (kilogramsPerPound * 9.80665) / metresPerInch ** 2;
// Mechanical horsepower, 550 ft lbf/s.
const wattsPerHorsepower = 550 * metresPerFoot * kilogramsPerPound * 9.80665;
// A thousand circular mils: the area of a circle of 1 mil, pi/4 (0.0254 mm)^2, a thousand times.
const mm2PerKcmil = (1000 * Math.PI * 0.0254 ** 2) / 4;

/** Spellings separated by spaces that all mean one unit, and how many canonical units it is. */
type Row = readonly [spellings: string, factor: number];

const lengthInMetres: readonly Row[] = [
  ['m metre metres meter meters', 1],
  ['cm', 0.01],
  ['mm', 0.001],
  ['km', 1000],
  ["ft foot feet '", metresPerFoot],
  ['in inch inches "', metresPerInch],
  ['yd yard yards', 3 * metresPerFoot],
  ['mi mile miles', metresPerMile],
];

const durationInHours: readonly Row[] = [
  ['h hr hrs hour hours', 1],
  ['min minute minutes mins', 1 / 60],
  ['s sec second seconds', 1 / 3600],
  ['d day days', 24],
  ['week weeks wk', 168],
  // Of the simulated year: twelve equal months, for rates such as `3 %/month`.
  ['month months', hoursPerYear / 12],
  ['year years yr yrs a', hoursPerYear],
];

const scaled = (rows: readonly Row[], by: number): Row[] => rows.map(([names, factor]) => [names, factor * by]);

const rows: Partial<Record<Dimension, readonly Row[]>> = {
  power: [
    ['W w watt watts Wp', 1],
    ['kW kw kilowatt kilowatts kWp', 1000],
    ['MW', 1e6],
    ['mW', 1e-3],
    ['hp HP horsepower', wattsPerHorsepower],
    ['BTU/h Btu/h btu/h BTU/hr Btu/hr BTUH', whPerBtu],
  ],
  energy: [
    ['Wh wh', 1],
    ['kWh kwh KWh KWH', 1000],
    ['MWh', 1e6],
    ['J', 1 / 3600],
    ['kJ', 1 / 3.6],
    ['MJ', 1e3 / 3.6],
    ['GJ', 1e6 / 3.6],
    ['BTU Btu btu', whPerBtu],
  ],
  voltage: [
    ['V v volt volts Vdc VDC Vac VAC', 1],
    ['mV', 1e-3],
    ['kV', 1000],
  ],
  current: [
    ['A a amp amps ampere amperes Adc Aac', 1],
    ['mA', 1e-3],
    ['kA', 1000],
  ],
  charge: [
    ['Ah ah AH A*h', 1],
    ['mAh mah', 1e-3],
    ['kAh', 1000],
  ],
  resistance: [
    ['ohm ohms Ohm Ohms Ω Ω', 1],
    ['mOhm mohm mOhms mΩ mΩ milliohm milliohms', 1e-3],
    ['kOhm kohm kΩ kΩ', 1000],
  ],
  resistancePerLength: [
    ['ohm/km Ohm/km Ω/km mOhm/m mohm/m mΩ/m', 1],
    ['ohm/m Ohm/m Ω/m', 1000],
    ['ohm/kft Ohm/kft Ω/kft mOhm/ft mohm/ft', 1 / metresPerFoot],
    ['ohm/ft Ohm/ft', 1000 / metresPerFoot],
  ],
  length: lengthInMetres,
  depth: lengthInMetres,
  precipitation: scaled(lengthInMetres, 1000),
  area: [
    ['m2', 1],
    ['cm2', 1e-4],
    ['mm2', 1e-6],
    ['ft2 sqft', metresPerFoot ** 2],
    ['in2 sqin', metresPerInch ** 2],
  ],
  conductorArea: [
    ['mm2 sqmm', 1],
    ['kcmil MCM mcm', mm2PerKcmil],
  ],
  mass: [
    ['kg', 1],
    ['g', 1e-3],
    ['t tonne tonnes', 1000],
    ['lb lbs pound pounds', kilogramsPerPound],
    ['oz', kilogramsPerPound / 16],
  ],
  temperatureDifference: [
    ['K degC C kelvin', 1],
    ['degF F', 1 / 1.8],
  ],
  duration: durationInHours,
  volume: [
    ['L l litre litres liter liters', 1],
    ['mL ml', 1e-3],
    ['m3', 1000],
    ['gal gallon gallons USgal', litresPerGallon],
    ['qt quart quarts', litresPerGallon / 4],
    ['impgal', litresPerImperialGallon],
    ['ft3', (10 * metresPerFoot) ** 3],
  ],
  volumeFlow: [
    ['L/h l/h L/hr l/hr litres/h liters/h', 1],
    ['gal/h gal/hr gph GPH', litresPerGallon],
    ['impgal/h', litresPerImperialGallon],
    ['L/min l/min', 60],
    ['gal/min gpm', 60 * litresPerGallon],
    ['m3/h', 1000],
  ],
  massFlow: [
    ['kg/h kg/hr', 1],
    ['g/h', 1e-3],
    ['lb/h lb/hr lbs/h', kilogramsPerPound],
  ],
  speed: [
    ['m/s', 1],
    ['km/h kmh kph', 1 / 3.6],
    ['mph mi/h', metresPerMile / 3600],
    ['kn kt knot knots', 1852 / 3600],
    ['ft/s', metresPerFoot],
  ],
  heatLoss: [
    ['W/K W/degC W/C', 1],
    ['BTU/(h*degF) Btu/(h*degF) BTU/h/degF BTU/(h*F) BTU/h/F BTU/(hr*degF) BTU/hr/F', whPerBtu * 1.8],
  ],
  heatCapacity: [
    ['Wh/K Wh/degC Wh/C', 1],
    ['kWh/K kWh/degC', 1000],
    ['kJ/K kJ/degC kJ/C', 1 / 3.6],
    ['J/K', 1 / 3600],
    ['MJ/K', 1e3 / 3.6],
    ['BTU/degF Btu/degF BTU/F', whPerBtu * 1.8],
  ],
  irradiance: [
    ['W/m2', 1],
    ['kW/m2', 1000],
  ],
  // A mean over days is written as kWh/m2 or kWh/m2/day; what the period is, the key says.
  irradiation: [
    ['kWh/m2 kWh/m2/day kWh/m2/d', 1],
    ['Wh/m2 Wh/m2/day Wh/m2/d', 1e-3],
    ['MJ/m2 MJ/m2/day MJ/m2/d', 1 / 3.6],
    ['J/cm2', 1 / 360],
  ],
  density: [
    ['kg/m3 g/L', 1],
    ['kg/L kg/l g/cm3 g/mL', 1000],
    ['lb/ft3', kilogramsPerPound / metresPerFoot ** 3],
    ['lb/gal', (1000 * kilogramsPerPound) / litresPerGallon],
  ],
  pressure: [
    ['Pa', 1],
    ['hPa mbar', 100],
    ['kPa', 1000],
    ['MPa', 1e6],
    ['bar', 1e5],
    ['psi PSI', pascalsPerPsi],
  ],
  energyPerVolume: [
    ['Wh/L Wh/l kWh/m3', 1],
    ['kWh/L kWh/l', 1000],
    ['MJ/L MJ/l', 1e3 / 3.6],
    ['kWh/gal', 1000 / litresPerGallon],
    ['BTU/gal Btu/gal', whPerBtu / litresPerGallon],
  ],
  energyPerMass: [
    ['Wh/kg', 1],
    ['kWh/kg', 1000],
    ['MJ/kg', 1e3 / 3.6],
    ['BTU/lb Btu/lb', whPerBtu / kilogramsPerPound],
  ],
  volumePerEnergy: [
    ['L/kWh l/kWh', 1],
    ['gal/kWh', litresPerGallon],
  ],
  voltagePerK: [
    ['V/K V/degC V/C', 1],
    ['mV/K mV/degC mV/C', 1e-3],
  ],
  fraction: [['% percent', 0.01]],
  fractionPerK: [
    ['% %/K %/degC %/C', 0.01],
    ['/K 1/K /degC 1/degC', 1],
    ['%/degF %/F', 0.018],
  ],
  fractionPerTime: durationInHours.flatMap(([names, hours]): Row[] => [
    [`%/${names.replaceAll(' ', ' %/')}`, 0.01 / hours],
    [`/${names.replaceAll(' ', ' /')}`, 1 / hours],
  ]),
  angle: [
    ['deg degree degrees °', 1],
    ['rad', 180 / Math.PI],
  ],
};

const factors = new Map<Dimension, ReadonlyMap<string, number>>();
for (const [dimension, list] of Object.entries(rows)) {
  const bySpelling = new Map<string, number>();
  for (const [names, factor] of list) for (const name of names.split(' ')) bySpelling.set(name, factor);
  factors.set(dimension as Dimension, bySpelling);
}

const none: ReadonlyMap<string, number> = new Map();

/** Unit spellings of a dimension and how many canonical units each is: `ft` 0.3048 for `length`. */
export function unitFactors(dimension: Dimension): ReadonlyMap<string, number> {
  return factors.get(dimension) ?? none;
}

/**
 * One spelling for the signs that have several: `°C` is `degC`, `m²` is `m2`, `h·K` and `h K` are `h*K`.
 * The result has no spaces and is what `unitFactors` lists.
 */
export function plainUnit(unit: string): string {
  return unit
    .trim()
    .replace(/[°º]\s*(?=[CFK])|deg(?:rees?)?\s*(?=[CFK]\b)/g, 'deg')
    .replace(/\bdegK\b/g, 'K')
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/\^/g, '')
    .replace(/^(?:imp|imperial|UK)\.?\s*gal(?:lons?)?/i, 'impgal')
    .replace(/^US\.?\s*gal(?:lons?)?/i, 'gal')
    .replace(/^sq\.?\s+/, 'sq')
    .replace(/\s*\/\s*/g, '/')
    .replace(/\s*[·⋅×*]\s*|\s+/g, '*');
}
