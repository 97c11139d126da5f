import { busPowerW, clippedPower } from '@wintergap/array';
import type { ChargeStage } from '@wintergap/battery';
import { inverterInputW } from '@wintergap/loads';
import type { BusSource, Plant } from './plant.js';

/** Powers on the buses at one moment, W unless named otherwise. One object is made per year and filled again. */
export interface BusFlow {
  /** What the arrays offer after current limits. */
  sunW: number;
  /** What they could give above the limits: the part that load and bank would have taken, and the part they would not. */
  clippedW: number;
  spareW: number;
  /** What of it the bank and the load could not take. */
  thrownW: number;
  /** Engine output straight to AC loads, and to the DC bus after any charger. */
  engineToAcW: number;
  engineToDcW: number;
  /** Terminal power of the bank: into it, and out of it. */
  chargeW: number;
  dischargeW: number;
  /** Bank current, A, positive in charge. */
  amps: number;
  voltageV: number;
  /** Share of the charge current that is stored, 1 in discharge. */
  storedShare: number;
  /** Change of the state of charge, 1/h. */
  ratePerH: number;
  /** Share of the load that is served; below 1 the rest is dark. */
  servedShare: number;
  /** DC power the buses ask for when all load is served. */
  demandW: number;
  /** What the inverter draws from the DC bus. */
  inverterW: number;
  /** AC load that the inverter carries, up to its rating. */
  acByInverterW: number;
  /** Whether the bank's acceptance held the charge back, as in absorption. */
  atVoltageLimit: boolean;
  /** What the DC bus would take from the engine, and the most the engine or its charger can give it. */
  engineWantW: number;
  engineLimitW: number;
  /** What the bank would take at the set voltage of its stage, and that voltage. */
  acceptAmps: number;
  setV: number;
  /** Lowest state of charge the bank can be drawn to at this current. */
  emptyAt: number;
}

/**
 * The moment for which the buses are solved. One object per run, filled again: numbers that are handed over in it need no
 * memory of their own, as arguments between functions do.
 */
export interface Moment {
  /** Hour of the year. */
  h: number;
  stateOfCharge: number;
  bankC: number;
  /** 0 absorption, 1 float, 2 equalise: the voltage that charging is held to. */
  stage: ChargeStage;
  /** Whether the engine runs and has warmed up. */
  engineLoaded: boolean;
  /** Cabinet heater, W on the DC bus. */
  heaterW: number;
}

export const createMoment = (): Moment => ({
  h: 0,
  stateOfCharge: 0,
  bankC: 0,
  stage: 0,
  engineLoaded: false,
  heaterW: 0,
});

export function createBusFlow(voltageV: number): BusFlow {
  return {
    sunW: 0,
    clippedW: 0,
    spareW: 0,
    thrownW: 0,
    engineToAcW: 0,
    engineToDcW: 0,
    chargeW: 0,
    dischargeW: 0,
    amps: 0,
    voltageV,
    storedShare: 1,
    ratePerH: 0,
    servedShare: 1,
    demandW: 0,
    acByInverterW: 0,
    atVoltageLimit: false,
    engineWantW: 0,
    engineLimitW: 0,
    acceptAmps: 0,
    setV: 0,
    inverterW: 0,
    emptyAt: 0,
  };
}

/** Chargers with a sensor at the bank stop here: common practice, no source. */
export const hottestChargeC = 50;

/** Below this distance from the empty mark the bank gives nothing more. */
const emptyBand = 1e-9;

/**
 * Solves both buses for one moment: sun first, then bank or engine, the rest thrown away or dark.
 *
 * The array's current limit and a direct connection depend on the bank's voltage, the voltage on the current: the
 * voltage of the moment before (`flow.voltageV`) starts the solution and, for direct connections, is corrected once.
 */
export function solveBus(flow: BusFlow, plant: Plant, moment: Moment): void {
  const { bank, generator } = plant;
  const { h, stateOfCharge, bankC, stage, engineLoaded, heaterW } = moment;
  const acW = plant.acW[h]!;
  let acByInverterW = Math.min(acW, plant.inverterLimitW);
  let engineToAcW = 0;
  let engineLimitW = 0;
  let inverterW = plant.inverterInputW[h]!;
  if (engineLoaded && generator) {
    const ratedW = generator.ratedW[h]!;
    if (generator.bus === 'ac') {
      engineToAcW = Math.min(acW, ratedW);
      acByInverterW = Math.min(acW - engineToAcW, plant.inverterLimitW);
      inverterW = acByInverterW > 0 && plant.inverter ? inverterInputW(acByInverterW, plant.inverter) : 0;
      engineLimitW = Math.min(generator.chargerW, (ratedW - engineToAcW) * generator.chargerEfficiency);
    } else {
      engineLimitW = ratedW;
    }
  }
  const demandW = inverterW + plant.converterInputW[h]! + plant.ownUseW[h]! + heaterW;
  flow.acceptAmps =
    stateOfCharge >= 1 || bankC >= hottestChargeC ? 0 : bank.acceptanceAmps(stateOfCharge, bankC, stage);
  flow.setV = bank.setVoltage(stage, bankC);
  flow.engineLimitW = engineLimitW;
  flow.demandW = demandW;
  flow.inverterW = inverterW;
  flow.acByInverterW = acByInverterW;
  flow.engineToAcW = engineToAcW;

  offerOfSources(flow, plant.sources, h);
  share(flow, plant, moment);
  if (followsVoltage(plant.sources)) {
    const offeredW = flow.sunW;
    offerOfSources(flow, plant.sources, h);
    if (flow.sunW !== offeredW) share(flow, plant, moment);
  }
  const aboveLimitW = flow.clippedW;
  // What the buses still ask for beside the sun, whoever gives it: a larger controller would have brought that much.
  flow.clippedW = Math.min(aboveLimitW, Math.max(flow.engineWantW, 0));
  flow.spareW = aboveLimitW - flow.clippedW;
}

/** Divides what the sun and the engine offer between load and bank, and finds the bank's current and voltage. */
function share(flow: BusFlow, plant: Plant, { stateOfCharge, bankC }: Moment): void {
  const { bank } = plant;
  const { acceptAmps, setV, engineLimitW } = flow;
  const beforeEngineW = flow.sunW - flow.demandW;
  // A maker's current limit, or lithium too cold to charge, holds a bank below its set voltage: there it takes less. Its
  // voltage is asked for only where the limit may be reached, which no rest voltage overstates.
  const limitedByCurrent = acceptAmps >= bank.chargeLimitAmps(bankC);
  const acceptW =
    limitedByCurrent && beforeEngineW + engineLimitW > acceptAmps * bank.restVoltage(stateOfCharge)
      ? acceptAmps * bank.terminalVoltage(acceptAmps, stateOfCharge, bankC)
      : acceptAmps * setV;
  flow.engineWantW = acceptW - beforeEngineW;
  const engineToDcW = Math.min(Math.max(flow.engineWantW, 0), engineLimitW);
  // An engine that gives all that is asked brings the bank to its limit exactly: no rounding may say that it does not.
  const isSatisfied = flow.engineWantW > 0 && flow.engineWantW <= engineLimitW;
  const netW = isSatisfied ? acceptW : beforeEngineW + engineToDcW;
  flow.engineToDcW = engineToDcW;
  flow.servedShare = 1;
  flow.thrownW = 0;
  flow.chargeW = 0;
  flow.dischargeW = 0;
  flow.atVoltageLimit = false;
  flow.storedShare = 1;
  if (netW >= 0) {
    const limited = netW >= acceptW;
    // Being held by the current is not the end of a charge.
    flow.atVoltageLimit = limited && acceptAmps > 0 && !limitedByCurrent;
    // An engine is held to what is asked of it: only sun can be too much, and what it gives leaves no rounding.
    flow.chargeW = engineToDcW > 0 ? netW : Math.min(netW, acceptW);
    flow.thrownW = netW - flow.chargeW;
    flow.amps = limited ? acceptAmps : bank.chargeAmps(netW, stateOfCharge, bankC);
    if (flow.amps > 0) {
      flow.voltageV = flow.chargeW / flow.amps;
      flow.storedShare = bank.chargeEfficiency(stateOfCharge, flow.amps);
    } else {
      flow.voltageV = bank.restVoltage(stateOfCharge);
    }
    flow.ratePerH = (flow.storedShare * flow.amps) / bank.refAh;
    flow.emptyAt = bank.lowestState;
    return;
  }
  const wantedW = -netW;
  const mostAmps = bank.dischargeLimitAmps(stateOfCharge, bankC);
  let amps = bank.dischargeAmps(wantedW, stateOfCharge, bankC);
  let givenW = wantedW;
  if (amps > mostAmps) {
    amps = mostAmps;
    givenW = Math.min(amps * bank.terminalVoltage(-amps, stateOfCharge, bankC), wantedW);
  }
  flow.emptyAt = bank.floorState(bankC, amps);
  if (stateOfCharge <= flow.emptyAt + emptyBand) {
    givenW = 0;
    amps = 0;
  }
  // What is short is shed by time-sharing: loads and their conversion losses run for that share of the moment.
  flow.servedShare = givenW < wantedW ? (flow.sunW + engineToDcW + givenW) / flow.demandW : 1;
  flow.dischargeW = givenW;
  flow.amps = -amps;
  flow.voltageV = amps > 0 ? givenW / amps : bank.restVoltage(stateOfCharge);
  flow.ratePerH = -amps / bank.refAh;
}

/** Whether a source's offer depends on the bank's voltage beyond its current limit. */
function followsVoltage(sources: readonly BusSource[]): boolean {
  for (let i = 0; i < sources.length; i++) if (sources[i]!.controller.grid !== null) return true;
  return false;
}

function offerOfSources(flow: BusFlow, sources: readonly BusSource[], h: number): void {
  let sunW = 0;
  let clippedW = 0;
  for (let i = 0; i < sources.length; i++) {
    const source = sources[i]!;
    const offerW = busPowerW(source.controller, h, flow.voltageV);
    const limitedW = clippedPower(offerW, flow.voltageV, source.maxCurrentA);
    sunW += limitedW;
    clippedW += offerW - limitedW;
  }
  flow.sunW = sunW;
  flow.clippedW = clippedW;
}
