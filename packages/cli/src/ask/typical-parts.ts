/** A class of modules as many makers have it. */
export interface ModuleClass {
  name: string;
  powerW: number;
  vmp: number;
  voc: number;
  isc: number;
  sheet: string;
}

/** Values of no one maker, from memory: replace them by those of the data sheet. */
const moduleClasses = {
  small: {
    name: 'a module of 36 cells and 100 W',
    powerW: 100,
    vmp: 18,
    voc: 21.8,
    isc: 5.95,
    sheet:
      '{ power: 100 W, vmp: 18 V, imp: 5.56 A, voc: 21.8 V, isc: 5.95 A, cells: 36,\n              powerPerK: -0.38 %, vocPerK: -0.29 %, iscPerK: 0.05 %, noct: 45 degC }',
  },
  large: {
    name: 'a module of 108 half cells and 400 W',
    powerW: 400,
    vmp: 31,
    voc: 37.2,
    isc: 13.7,
    sheet:
      '{ power: 400 W, vmp: 31 V, imp: 12.9 A, voc: 37.2 V, isc: 13.7 A, cells: 54,\n              powerPerK: -0.34 %, vocPerK: -0.26 %, iscPerK: 0.05 %, noct: 45 degC }',
  },
} as const satisfies Record<string, ModuleClass>;

/** The smallest of the sizes that is large enough, or the largest there is. */
const sizeFrom = (sizes: readonly number[], least: number): number =>
  sizes.find((size) => size >= least) ?? sizes.at(-1)!;

/** Cold raises the voltage of an open circuit by a fifth at -50 degC, heat takes a seventh of that at full power. */
const coldFactor = 1.2;
const hotFactor = 0.85;
/** Charging lifts a bank above its nominal voltage by so much. */
const chargingFactor = 1.22;
const controllerVolts = [100, 150, 250];
const controllerAmps = [10, 15, 20, 30, 40, 50, 60, 80, 100];

export interface ArrayParts {
  module: ModuleClass;
  inSeries: number;
  /** Strings of each array, which has a controller of its own. */
  strings: number[];
  maxVoltageV: number;
  maxCurrentA: number;
  /** Copper of the cable of one array. */
  cableMm2: number;
}

/** Modules, wiring and controllers that come nearest to a rated power at a bank of some voltage. */
export function arrayParts(watts: number, bankV: number): ArrayParts {
  const module = watts < 350 ? moduleClasses.small : moduleClasses.large;
  const least = Math.ceil((chargingFactor * bankV) / (hotFactor * module.vmp));
  const longest = Math.max(least, Math.floor(controllerVolts.at(-1)! / (coldFactor * module.voc)));
  const arrangements = Array.from({ length: longest - least + 1 }, (_, i) => {
    const inSeries = least + i;
    const strings = Math.max(1, Math.round(watts / module.powerW / inSeries));
    return { inSeries, strings, miss: Math.abs(inSeries * strings * module.powerW - watts) };
  });
  const best = arrangements.reduce((one, other) => (other.miss < one.miss - 1 ? other : one));
  const stringW = best.inSeries * module.powerW;
  let arrays = 1;
  while (!controllerFor(Math.ceil(best.strings / arrays) * stringW, bankV) && arrays < best.strings) arrays++;
  const strings = Array.from({ length: arrays }, (_, i) => Math.floor((best.strings + i) / arrays));
  const most = Math.max(...strings);
  return {
    module,
    inSeries: best.inSeries,
    strings: strings.toReversed(),
    maxVoltageV: sizeFrom(controllerVolts, coldFactor * module.voc * best.inSeries),
    maxCurrentA: controllerFor(most * stringW, bankV) ?? controllerAmps.at(-1)!,
    cableMm2: sizeFrom(copperMm2, (1.56 * module.isc * most) / ampsPerMm2),
  };
}

/** Current of the smallest controller for an array, A; `null` where none is large enough. */
export const controllerFor = (watts: number, bankV: number): number | null =>
  controllerAmps.find((amps) => amps >= (1.05 * watts) / bankV) ?? null;

/** Sizes on sale in metric countries, and current that copper in warm air carries with room to spare. */
const copperMm2 = [6, 10, 16, 25, 35, 50, 70, 95, 120];
const ampsPerMm2 = 3;

/** Voltage of the bank that an array of some size is wired for: common practice, no source. */
export const bankVoltageFor = (arrayW: number): 12 | 24 | 48 => (arrayW <= 600 ? 12 : arrayW <= 3200 ? 24 : 48);

const inverterWatts = [300, 600, 1000, 1500, 2000, 3000, 4000, 6000, 8000, 12_000, 16_000];

/** Lasting power of an inverter for loads that may run together: all of the largest, half of the rest. */
export function inverterWattsFor(powersW: readonly number[]): number {
  const largest = Math.max(0, ...powersW);
  const rest = powersW.reduce((sum, power) => sum + power, 0) - largest;
  return sizeFrom(inverterWatts, 1.25 * (largest + rest / 2));
}

export interface EngineParts {
  fuel: 'petrol' | 'diesel' | 'propane';
  /** L/h */
  atFull: number;
  idle: number;
}

/** What a set of some size burns at full load and idle, L/h: about 0.5 L/kWh of petrol, 0.33 of diesel; from memory. */
export function engineParts(kW: number, fuel: EngineParts['fuel']): EngineParts {
  const perKWh = { petrol: 0.5, diesel: 0.33, propane: 0.65 }[fuel];
  const atFull = perKWh * kW + 0.1;
  return { fuel, atFull: Number(atFull.toPrecision(2)), idle: Number((0.3 * atFull).toPrecision(2)) };
}
