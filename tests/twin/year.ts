import {
  type BankSettings,
  type Charge,
  charge,
  type Discharge,
  discharge,
  type Stage,
  selfDischargePerHour,
} from './bank.js';
import { decide, type EngineSettings, type EngineState, fuelNowLPerH, ratedNowW, restingEngine } from './engine.js';
import { type Inverter, inverterDrawW } from './loads.js';
import {
  type Curve,
  cellByNoctC,
  cellByWindC,
  currentAtVoltage,
  curveAt,
  type FiveParameters,
  maximumPower,
  type Wiring,
} from './module.js';
import { minutesPerYear } from './sun.js';

/** One array behind its controller. */
export interface ArraySettings {
  five: FiveParameters;
  wiring: Wiring;
  ratedW: number;
  /** Of the cells' nominal operating temperature; null for the rule with wind. */
  noctC: number | null;
  /** Share of the light that dirt takes. */
  soiling: number;
  /** Hourly: share of the light on the plane that the skyline takes, and share of the plane under snow. */
  skylineShare: Float64Array;
  snowShare: Float64Array;
  /** Direct: the bank sets the array's voltage. Otherwise an efficiency, and a volt to spare above the bank. */
  controller: { kind: 'direct' } | { kind: 'maximum-power'; efficiency: number };
  maxCurrentA: number;
  nightW: number;
}

/** What is around the bank as one mass. */
export interface CabinetSettings {
  lossWPerK: number;
  heatCapacityWhPerK: number;
  room: { roomC: number; WPerK: number } | null;
  heater: { powerW: number; keepAboveC: number } | null;
  /** Air around it, hourly. */
  aroundC: Float64Array;
}

export interface YearSettings {
  arrays: { settings: ArraySettings; planeWm2: Float64Array; behindGlassWm2: Float64Array }[];
  /** Hourly. */
  airC: Float64Array;
  windMs: Float64Array;
  acW: Float64Array;
  dcW: Float64Array;
  inverter: Inverter | null;
  /** From the bank to the DC loads; efficiency 1 without one. */
  converter: { efficiency: number; idleW: number };
  bank: BankSettings;
  cabinet: CabinetSettings;
  engine: EngineSettings | null;
}

/** What a year comes to. kWh unless named otherwise. */
export interface YearSums {
  availableKWh: number;
  throttledKWh: number;
  engineH: number;
  starts: number;
  fuelL: number;
  engineToBusKWh: number;
  darkKWh: number;
  chargeKWh: number;
  dischargeKWh: number;
  bankLossKWh: number;
  lowestCharge: number;
  coldestBankC: number;
  warmestBankC: number;
}

/** What an array could give in each minute before the bank has a say. */
interface Offer {
  settings: ArraySettings;
  litWm2: Float64Array;
  cellC: Float64Array;
  /** At maximum power, at the controller's end of the cable. */
  powerW: Float64Array;
  voltageV: Float64Array;
}

const noLight = 1e-6;

function offerOf({ settings, planeWm2, behindGlassWm2 }: YearSettings['arrays'][number], year: YearSettings): Offer {
  const offer = {
    settings,
    litWm2: new Float64Array(minutesPerYear),
    cellC: new Float64Array(minutesPerYear),
    powerW: new Float64Array(minutesPerYear),
    voltageV: new Float64Array(minutesPerYear),
  };
  const curve: Curve = { IL: 0, I0: 0, a: 0, Rs: 0, G: 0 };
  const best = { V: 0, I: 0 };
  for (let m = 0; m < minutesPerYear; m++) {
    if (behindGlassWm2[m] === 0) continue;
    const h = Math.floor(m / 60);
    const seen = 1 - settings.skylineShare[h]!;
    const lit = behindGlassWm2[m]! * seen * (1 - settings.soiling) * (1 - settings.snowShare[h]!);
    const onPlane = planeWm2[m]! * seen;
    const airC = year.airC[h]!;
    const cellC =
      settings.noctC === null
        ? cellByWindC(airC, onPlane, year.windMs[h]!)
        : cellByNoctC(airC, onPlane, settings.noctC);
    offer.litWm2[m] = lit;
    offer.cellC[m] = cellC;
    if (lit < noLight) continue;
    if (m > 0 && lit === offer.litWm2[m - 1] && cellC === offer.cellC[m - 1]) {
      offer.powerW[m] = offer.powerW[m - 1]!;
      offer.voltageV[m] = offer.voltageV[m - 1]!;
      continue;
    }
    offer.powerW[m] = maximumPower(curveAt(settings.five, lit, cellC, curve), settings.wiring, best);
    offer.voltageV[m] = best.V;
  }
  return offer;
}

const curve: Curve = { IL: 0, I0: 0, a: 0, Rs: 0, G: 0 };

/** Power that a controller puts on the bus at a bank voltage, W. */
function onBusW(offer: Offer, m: number, bankV: number): number {
  const { settings } = offer;
  const lit = offer.litWm2[m]!;
  if (lit < noLight) return 0;
  const { controller } = settings;
  const most = bankV * settings.maxCurrentA;
  if (controller.kind === 'direct') {
    const amps = currentAtVoltage(curveAt(settings.five, lit, offer.cellC[m]!, curve), settings.wiring, bankV);
    return Math.min(amps * bankV, most);
  }
  // Common practice: a step-down converter needs a volt to spare; below that it is a closed switch.
  const heldV = bankV + 1;
  let inW = offer.powerW[m]!;
  if (offer.voltageV[m]! < heldV) {
    inW = heldV * currentAtVoltage(curveAt(settings.five, lit, offer.cellC[m]!, curve), settings.wiring, heldV);
  }
  return Math.min(inW * controller.efficiency, most);
}

/** All that one minute hands to the next. */
interface State {
  s: number;
  bankC: number;
  bankV: number;
  stage: Stage;
  heldH: number;
  equalisedH: number;
  daysSinceFull: number;
  daysSinceEqualised: number;
  engine: EngineState;
}

const startMinute = 243 * 1440; // 1 September

/**
 * The year by minutes: from a full bank on 1 September to New Year, then whole years until the bank ends one as it began
 * it. Sums are those of the last year.
 */
export function twinYear(year: YearSettings): YearSums {
  const offers = year.arrays.map((array) => offerOf(array, year));
  const state: State = {
    s: 1,
    bankC: year.cabinet.aroundC[0]!,
    bankV: year.bank.inSeries * year.bank.cells.restV(1),
    stage: 'absorption',
    heldH: 0,
    equalisedH: 0,
    daysSinceFull: 0,
    daysSinceEqualised: 0,
    engine: restingEngine(),
  };
  let sums = runMinutes(year, offers, state, startMinute);
  for (let round = 0; round < 6; round++) {
    const before = state.s;
    sums = runMinutes(year, offers, state, 0);
    if (Math.abs(state.s - before) < 1e-3) break;
  }
  return sums;
}

const dt = 1 / 60;

function noSums({ s, bankC }: State): YearSums {
  return {
    availableKWh: 0,
    throttledKWh: 0,
    engineH: 0,
    starts: 0,
    fuelL: 0,
    engineToBusKWh: 0,
    darkKWh: 0,
    chargeKWh: 0,
    dischargeKWh: 0,
    bankLossKWh: 0,
    lowestCharge: s,
    coldestBankC: bankC,
    warmestBankC: bankC,
  };
}

/** One minute's powers, W. One object, filled again and again. */
interface Minute {
  h: number;
  sunW: number;
  acW: number;
  dcW: number;
  /** AC load on the inverter, and all that the DC bus is asked for. */
  byInverterW: number;
  demandW: number;
  heaterW: number;
  engineAcW: number;
  engineMostDcW: number;
  engineDcW: number;
  servedShare: number;
  /** Change of the state of charge, 1/h, and the bank's own heat. */
  rate: number;
  heatW: number;
  /** Whether the bank took less than the engine could give, in the minute before. */
  bulkEnded: boolean;
  taken: Charge;
  given: Discharge;
}

function runMinutes(year: YearSettings, offers: readonly Offer[], state: State, from: number): YearSums {
  const sums = noSums(state);
  const now: Minute = {
    h: 0,
    sunW: 0,
    acW: 0,
    dcW: 0,
    byInverterW: 0,
    demandW: 0,
    heaterW: 0,
    engineAcW: 0,
    engineMostDcW: 0,
    engineDcW: 0,
    servedShare: 1,
    rate: 0,
    heatW: 0,
    bulkEnded: false,
    taken: { amps: 0, volts: 0, takesW: 0, atSetVoltage: false },
    given: { amps: 0, volts: 0, givesW: 0 },
  };
  for (let m = from; m < minutesPerYear; m++) {
    if (m % 1440 === 0) {
      beginBulk(state);
      state.daysSinceFull++;
      state.daysSinceEqualised++;
    }
    offerAndDemand(year, offers, state, m, now);
    if (year.engine) runEngine(year, year.engine, state, now, sums);
    // Sun first; then the engine up to what load and bank take; then the bank.
    const leftW = now.sunW + now.engineMostDcW - now.demandW;
    if (leftW >= 0) chargeBank(year.bank, state, leftW, now, sums);
    else dischargeBank(year.bank, state, -leftW, now, sums);
    if (year.engine) countEngine(year.engine, state, now, sums);
    sums.availableKWh += (now.sunW * dt) / 1000;
    const servedW = now.engineAcW + (now.byInverterW + now.dcW) * now.servedShare;
    sums.darkKWh += ((now.acW + now.dcW - servedW) * dt) / 1000;
    passTime(year, state, now, sums);
  }
  return sums;
}

/** Chargers begin each day, and each run of the engine, in bulk. */
function beginBulk(state: State): void {
  state.stage = 'absorption';
  state.heldH = 0;
}

/** What the sun offers and what the buses ask for while the engine rests. */
function offerAndDemand(year: YearSettings, offers: readonly Offer[], state: State, m: number, now: Minute): void {
  const { inverter, converter } = year;
  const h = Math.floor(m / 60);
  now.h = h;
  now.sunW = 0;
  let ownW = 0;
  for (const offer of offers) {
    now.sunW += onBusW(offer, m, state.bankV);
    if (offer.powerW[m] === 0) ownW += offer.settings.nightW;
  }
  const { heater } = year.cabinet;
  now.heaterW = heater && state.bankC < heater.keepAboveC ? heater.powerW : 0;
  now.acW = year.acW[h]!;
  now.dcW = year.dcW[h]!;
  now.byInverterW = inverter ? Math.min(now.acW, inverter.ratedW) : 0;
  const inverterW = inverter ? inverterDrawW(inverter, now.byInverterW) : 0;
  now.demandW = inverterW + now.dcW / converter.efficiency + converter.idleW + ownW + now.heaterW;
  now.engineAcW = 0;
  now.engineMostDcW = 0;
  now.engineDcW = 0;
  now.servedShare = 1;
}

/** Starts or stops the engine, and what it could give if it is loaded. */
function runEngine(year: YearSettings, engine: EngineSettings, state: State, now: Minute, sums: YearSums): void {
  const { bank, inverter } = year;
  // Would sun and bank serve everything without the engine? No need to ask while it warms up or cools down.
  let bankCarries = true;
  const lackW = now.demandW - now.sunW;
  if (lackW > 0 && (state.engine.doing === 'rests' || state.engine.doing === 'gives power')) {
    bankCarries = discharge(bank, lackW, state.s, state.bankC, now.given).givesW >= lackW * (1 - 1e-6);
  }
  const isStarted = decide(engine, state.engine, {
    hourOfDay: now.h % 24,
    s: state.s,
    bankCarries,
    floats: state.stage === 'float',
    daysSinceFull: state.daysSinceFull,
    bulkEnded: now.bulkEnded,
  });
  if (isStarted) {
    sums.starts++;
    beginBulk(state);
  }
  if (state.engine.doing !== 'gives power') return;
  const ratedW = ratedNowW(engine, year.airC[now.h]!);
  if (engine.bus === 'dc') {
    now.engineMostDcW = ratedW * engine.toBus;
    return;
  }
  // An AC set carries the AC loads itself and charges with the rest; the inverter helps above its rating.
  now.engineAcW = Math.min(now.acW, ratedW);
  now.engineMostDcW = Math.min(engine.chargerW, (ratedW - now.engineAcW) * engine.toBus);
  if (!inverter) return;
  now.demandW -= inverterDrawW(inverter, now.byInverterW);
  now.byInverterW = Math.min(now.acW - now.engineAcW, inverter.ratedW);
  if (now.byInverterW > 0) now.demandW += inverterDrawW(inverter, now.byInverterW);
}

/** Sun and engine are more than the load: the bank takes what it takes, the engine gives no more than that asks for. */
function chargeBank(bank: BankSettings, state: State, leftW: number, now: Minute, sums: YearSums): void {
  const { s } = state;
  const taken = charge(bank, state.stage, leftW, s, state.bankC, now.taken);
  const usedW = now.demandW + taken.takesW;
  now.engineDcW = Math.min(Math.max(0, usedW - now.sunW), now.engineMostDcW);
  now.bulkEnded = usedW - now.sunW < now.engineMostDcW * (1 - 1e-9);
  const stored = taken.amps > 0 ? bank.cells.storedShare(taken.amps, s) : 1;
  now.rate = (taken.amps * stored) / bank.labelAh;
  const lossW = taken.takesW - taken.amps * stored * bank.inSeries * bank.cells.restV(s);
  now.heatW = lossW - taken.amps * (1 - stored) * bank.inSeries * bank.cells.gasV;
  state.bankV = taken.volts;
  if (taken.atSetVoltage) hold(state, bank, taken.amps);
  sums.throttledKWh += (Math.max(0, now.sunW - usedW) * dt) / 1000;
  sums.chargeKWh += (taken.takesW * dt) / 1000;
  sums.bankLossKWh += (lossW * dt) / 1000;
}

/** The load is more than sun and engine: the bank gives the rest, or some of the load is shed by turns. */
function dischargeBank(bank: BankSettings, state: State, missingW: number, now: Minute, sums: YearSums): void {
  now.engineDcW = now.engineMostDcW;
  now.bulkEnded = false;
  const given = discharge(bank, missingW, state.s, state.bankC, now.given);
  if (given.givesW < missingW) now.servedShare = (now.sunW + now.engineDcW + given.givesW) / now.demandW;
  now.rate = -given.amps / bank.labelAh;
  now.heatW = given.amps * bank.inSeries * bank.cells.restV(state.s) - given.givesW;
  state.bankV = given.volts;
  sums.dischargeKWh += (given.givesW * dt) / 1000;
  sums.bankLossKWh += (now.heatW * dt) / 1000;
}

function countEngine(engine: EngineSettings, state: State, now: Minute, sums: YearSums): void {
  if (state.engine.doing === 'rests') return;
  sums.engineH += dt;
  sums.fuelL += fuelNowLPerH(engine, now.engineAcW + now.engineDcW / engine.toBus) * dt;
  sums.engineToBusKWh += ((now.engineAcW + now.engineDcW) * dt) / 1000;
  state.engine.ranMin++;
  state.engine.inThisMin++;
}

/** Charge and warmth at the end of the minute: the bank with its cabinet is one mass. */
function passTime({ bank, cabinet }: YearSettings, state: State, now: Minute, sums: YearSums): void {
  const { s, bankC } = state;
  const selfRate = selfDischargePerHour(bank, bankC) * Math.max(0, s);
  state.s = Math.min(1, s + (now.rate - selfRate) * dt);
  const { room } = cabinet;
  const gainW =
    now.heatW +
    selfRate * bank.labelAh * bank.inSeries * bank.cells.restV(s) +
    now.heaterW * now.servedShare -
    cabinet.lossWPerK * (bankC - cabinet.aroundC[now.h]!) -
    (room ? room.WPerK * (bankC - room.roomC) : 0);
  state.bankC = bankC + (gainW * dt) / cabinet.heatCapacityWhPerK;
  sums.lowestCharge = Math.min(sums.lowestCharge, state.s);
  sums.coldestBankC = Math.min(sums.coldestBankC, state.bankC);
  sums.warmestBankC = Math.max(sums.warmestBankC, state.bankC);
}

/** A minute at the set voltage: absorption ends after its time or at the tail current, equalising after its time. */
function hold(state: State, bank: BankSettings, amps: number): void {
  if (state.stage === 'absorption') {
    state.heldH += dt;
    if (state.heldH < bank.absorptionH - dt / 2 && amps > bank.tailA) return;
    state.daysSinceFull = 0;
    const isDue = bank.equaliseEveryDays > 0 && state.daysSinceEqualised >= bank.equaliseEveryDays;
    state.stage = isDue && state.bankC < 35 ? 'equalise' : 'float';
    state.heldH = 0;
  } else if (state.stage === 'equalise') {
    state.equalisedH += dt;
    if (state.equalisedH >= bank.equaliseH - dt / 2) {
      state.stage = 'float';
      state.daysSinceEqualised = 0;
      state.equalisedH = 0;
    } else if (state.bankC >= 35) state.stage = 'float';
  }
}
