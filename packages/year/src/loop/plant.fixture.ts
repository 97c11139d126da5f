import { type Controller, controllerYear } from '@wintergap/array';
import { type Bank, type BankSettings, createBank } from '@wintergap/battery';
import { compileGenerator, type GeneratorSettings } from '@wintergap/generator';
import type { Plant } from './plant.js';

const hours = 8760;

/** A plant out of plain arrays, for tests of the balance alone. Powers in W; everything may be left out. */
export interface PlantParts {
  /** Bus power offered by a maximum-power controller without losses. */
  sunW?: (h: number) => number;
  acW?: (h: number) => number;
  dcW?: (h: number) => number;
  airC?: (h: number) => number;
  bank?: Bank | BankSettings;
  generator?: GeneratorSettings;
  maxCurrentA?: number;
  inverterIdleW?: number;
}

const flooded: BankSettings = {
  chemistry: 'flooded-lead-acid',
  voltageV: 24,
  capacityAh: 1000,
  atRateH: 20,
  floor: 0.3,
};

const fill = (of: ((h: number) => number) | undefined, otherwise = 0) =>
  Float64Array.from({ length: hours }, (_, h) => (of ? of(h) : otherwise));

export function plantOf(parts: PlantParts): Plant {
  const acW = fill(parts.acW);
  const dcW = fill(parts.dcW);
  const airC = fill(parts.airC, 20);
  const bank = parts.bank && 'storedWh' in parts.bank ? parts.bank : createBank(parts.bank ?? flooded);
  const idleW = parts.inverterIdleW ?? 0;
  return {
    sources: [
      { name: 'array', controller: losslessController(fill(parts.sunW)), maxCurrentA: parts.maxCurrentA ?? 1e6 },
    ],
    acW,
    dcW,
    inverterInputW: acW.map((w) => w + idleW),
    converterInputW: dcW,
    ownUseW: new Float64Array(hours),
    inverter: { powerW: 1e6, surgeW: 1e6, idleW, proportionalLoss: 0, squareLoss: 0 },
    inverterLimitW: 1e6,
    chargeRules: { absorptionH: bank.absorptionHours, tailAmps: bank.tailA, equaliseEveryDays: 0, equaliseH: 0 },
    bank,
    cabinet: { insulationWPerK: 1, heatCapacityWhPerK: 250 },
    heater: null,
    aroundC: airC,
    generator: parts.generator ? compileGenerator(parts.generator, { elevationM: 0, airC }) : null,
  };
}

/** A controller of efficiency 1 whose array gives exactly `offerW`. */
export function losslessController(offerW: Float64Array) {
  const controller: Controller = {
    kind: 'maximum-power',
    maxVoltageV: 1000,
    maxCurrentA: 1e6,
    efficiency: 1,
    nightDrawW: 0,
  };
  const none = new Float64Array(1);
  const input = {
    parameters: {
      lightA: 10,
      saturationA: 1e-9,
      idealityV: 1.6,
      seriesOhm: 0.2,
      shuntS: 0.001,
      lightAPerK: 0,
      gapEv: 1.12,
      gapFallPerK: 0,
      ratedW: 300,
    },
    inSeries: 1,
    strings: 1,
    cableOhm: 0,
    effectiveWm2: none,
    cellC: none,
  };
  const year = controllerYear(input, controller, 10, 40, {
    litWm2: none,
    powerW: none,
    voltageV: Float64Array.of(1000),
    currentA: none,
    cableLossW: none,
  });
  return {
    ...year,
    grid: null,
    awake: new Uint8Array(hours).fill(1),
    dc: { ...year.dc, powerW: offerW, voltageV: new Float64Array(hours).fill(1000) },
  };
}

/** A bank that loses nothing, takes any current and keeps one voltage. */
export function idealBank(capacityWh: number): Bank {
  const voltageV = 24;
  const real = createBank(flooded);
  return {
    ...real,
    refAh: capacityWh / voltageV,
    floor: 0,
    usableWh: capacityWh,
    chargeLimitA: Infinity,
    dischargeLimitA: Infinity,
    tailA: 0,
    absorptionHours: 1e9,
    storedWh: (s) => s * capacityWh,
    restVoltage: () => voltageV,
    chargeAmps: (powerW) => powerW / voltageV,
    dischargeAmps: (powerW) => powerW / voltageV,
    terminalVoltage: () => voltageV,
    chargeEfficiency: () => 1,
    chargeLimitAmps: () => Infinity,
    acceptanceAmps: () => 1e9,
    dischargeLimitAmps: () => 1e9,
    setVoltage: () => voltageV,
    selfDischargePerHour: () => 0,
    reachableEmpty: () => 0,
    floorState: () => 0,
    gasEnergyWh: () => 0,
  };
}

/** Sun of a northern year: bright days and dull ones, long summers, W of a one-kilowatt array. */
export function northernSun(peakW: number): (h: number) => number {
  return (h) => {
    const day = Math.floor(h / 24);
    const season = 0.55 - 0.45 * Math.cos(((day + 10) / 365) * 2 * Math.PI);
    const dull = (day * 7919) % 11 < 4 ? 0.15 : 1;
    return Math.max(0, Math.sin((((h % 24) - 6) / 12) * Math.PI)) * peakW * season * dull;
  };
}

export const petrolSet: GeneratorSettings = {
  output: { bus: 'dc', powerW: 3000 },
  fuel: { kind: 'petrol', atFullLPerH: 1.6, idleLPerH: 0.5 },
  start: [{ kind: 'charge', below: 0.45 }],
  stop: [{ kind: 'charge', above: 0.8 }],
};
