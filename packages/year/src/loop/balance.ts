import { cabinetStep, heaterPower } from '@wintergap/battery';
import { fuelLPerH } from '@wintergap/generator';
import { hoursPerYear } from '@wintergap/ground';
import { type Ledger, ledgerColumns } from '@wintergap/tally';
import { type BusFlow, createBusFlow, createMoment, hottestChargeC, type Moment, solveBus } from './bus-flow.js';
import {
  beginBulk,
  beginDay,
  type Charging,
  createCharging,
  holdVoltage,
  hoursToStageEnd,
  stages,
} from './charging.js';
import {
  advanceEngine,
  createEngine,
  decideEngine,
  type Engine,
  hoursToEngineEvent,
  isLoaded,
  phases,
} from './engine.js';
import type { Plant } from './plant.js';
import { createPiece, type Piece, postPiece } from './post-piece.js';

/** All that one piece of an hour hands to the next, and one year to the next. */
export interface PlantState {
  /** State of charge, 0 to 1. */
  stateOfCharge: number;
  bankC: number;
  engine: Engine;
  charge: Charging;
  flow: BusFlow;
  /** What the buses would do without the running engine; its content means nothing between two moments. */
  idle: BusFlow;
  /** The moment the buses are solved for. */
  moment: Moment;
  /** The last piece run, and what is left of the hour, h. */
  piece: Piece;
  leftH: number;
}

export function createPlantState(plant: Plant, stateOfCharge: number): PlantState {
  return {
    stateOfCharge,
    bankC: plant.aroundC[0]!,
    engine: createEngine(),
    charge: createCharging(),
    flow: createBusFlow(plant.bank.restVoltage(stateOfCharge)),
    idle: createBusFlow(plant.bank.restVoltage(stateOfCharge)),
    moment: createMoment(),
    piece: createPiece(),
    leftH: 0,
  };
}

/** Times closer than this are the same moment, h: a hundredth of a second. */
const sameMomentH = 3e-6;
/** Most pieces one hour is divided into; the last one takes the rest. */
const mostPieces = 400;
/** Largest change of the state of charge in one piece, far from full. */
const stepInBulk = 0.02;
/** The same near full, as a share of what is missing, since the acceptance falls with it. */
const stepNearFull = 0.08;

/**
 * Runs one year of 8760 hours in sequence, from `state`, and leaves it as the year ends.
 *
 * Within an hour sun, air and load are constant. The hour is cut at the moments when the bank fills or empties, the
 * engine starts or stops and the chargers change their stage, and often enough besides that the falling acceptance of
 * a nearly full bank is followed; charging is solved at the middle of each piece (second order in its length).
 *
 * @param firstHour hour of the year to begin at; the ledger's earlier hours are then left empty
 */
export function runYear(plant: Plant, state: PlantState, ledger: Ledger, firstHour = 0): void {
  const { bank, cabinet, heater, aroundC } = plant;
  const { charge, moment } = state;
  for (const name of ledgerColumns) ledger[name].fill(0);
  let storedWh = bank.storedWh(state.stateOfCharge);
  ledger.bankStoredAtStartWh = storedWh;
  let heatW = 0;
  for (let h = firstHour; h < hoursPerYear; h++) {
    if (h % 24 === 0) beginDay(charge);
    const outsideC = aroundC[h]!;
    const heaterW = heater === null ? 0 : heaterPower(state.bankC, outsideC, heatW, 1, cabinet, heater);
    ledger.lowestStateOfCharge[h] = state.stateOfCharge;
    moment.h = h;
    moment.bankC = state.bankC;
    moment.heaterW = heaterW;
    state.leftH = 1;
    let heaterServedWh = 0;
    for (let pieces = 1; state.leftH > 0; pieces++) {
      runPiece(plant, state, ledger, pieces < mostPieces);
      heaterServedWh += heaterW * state.flow.servedShare * state.piece.hours;
    }
    const beforeWh = bank.storedWh(state.stateOfCharge);
    // The rule of doubling per 10 K is not trusted beyond where chargers stop.
    const selfShare = bank.selfDischargePerHour(Math.min(state.bankC, hottestChargeC));
    const kept = state.stateOfCharge - selfShare * Math.max(state.stateOfCharge, 0);
    storedWh = bank.storedWh(kept);
    state.stateOfCharge = kept;
    ledger.selfDischargeWh[h] = beforeWh - storedWh;
    ledger.bankStoredWh[h] = storedWh;
    ledger.stateOfCharge[h] = kept;
    if (kept < ledger.lowestStateOfCharge[h]!) ledger.lowestStateOfCharge[h] = kept;
    heatW = ledger.bankLossWh[h]! - bank.gasEnergyWh(ledger.gassingAh[h]!) + beforeWh - storedWh;
    state.bankC = cabinetStep(state.bankC, outsideC, heatW, heaterServedWh, 1, cabinet);
    ledger.bankC[h] = state.bankC;
    ledger.daysSinceFull[h] = charge.daysSinceFull;
  }
}

/** Runs one piece of an hour and takes it off what is left of the hour. */
function runPiece(plant: Plant, state: PlantState, ledger: Ledger, mayCut: boolean): void {
  const { bank, generator, chargeRules } = plant;
  const { engine, charge, flow, moment, piece, bankC, leftH } = state;
  const { h } = moment;
  const s = state.stateOfCharge;
  moment.stateOfCharge = s;
  const wasOff = engine.phase === phases.off;
  // A start is decided by what the bank lacks now, the end of a bulk charge by what it takes now.
  const watchesBulk = isLoaded(engine) && generator!.stopAtBulkEnd;
  if (wasOff || watchesBulk) solveNow(plant, state, flow, watchesBulk);
  if (generator !== null) {
    const isFull = charge.stage === stages.float;
    const carries = bankCarries(plant, state);
    if (decideEngine(engine, generator, h, s, flow, carries, charge.daysSinceFull, isFull) === 1) {
      ledger.starts[h]!++;
      beginBulk(charge);
    }
  }
  const loaded = isLoaded(engine);
  if (!wasOff || engine.phase !== phases.off) solveNow(plant, state, flow, loaded);
  let hours = leftH;
  if (mayCut) hours = cutAtEvents(plant, state, h, leftH);
  if (flow.ratePerH > 0 || bank.traits.bendsAtEnds) {
    const wantAtStartW = flow.engineWantW;
    moment.stateOfCharge = Math.min(Math.max(s + (flow.ratePerH * hours) / 2, bank.lowestState), 1);
    solveNow(plant, state, flow, loaded);
    if (mayCut) {
      if (loaded && generator!.stopAtBulkEnd) hours = cutAtBulkEnd(flow, wantAtStartW, hours);
      hours = cutAtEvents(plant, state, h, hours);
    }
  }
  // No crumb of the hour is left over: it would be load that nobody accounts for.
  if (leftH - hours < sameMomentH) hours = leftH;
  const next = Math.min(Math.max(s + flow.ratePerH * hours, bank.lowestState), 1);
  let engineDcInW = 0;
  if (generator !== null && engine.phase !== phases.off) {
    engineDcInW = flow.engineToDcW / generator.chargerEfficiency;
    ledger.generatorH[h]! += hours;
    ledger.fuelL[h]! += fuelLPerH(flow.engineToAcW + engineDcInW, generator) * hours;
  }
  piece.hours = hours;
  piece.storedWh = bank.storedWh(next) - bank.storedWh(s);
  piece.engineDcInW = engineDcInW;
  postPiece(ledger, plant, flow, moment, piece);
  if (next < ledger.lowestStateOfCharge[h]!) ledger.lowestStateOfCharge[h] = next;
  if (flow.atVoltageLimit) holdVoltage(charge, chargeRules, hours, flow.amps, bankC);
  if (generator !== null) advanceEngine(engine, generator, hours, flow.voltageV);
  state.stateOfCharge = next;
  state.leftH = leftH - hours;
}

/** Solves the buses at the state of charge of the moment. */
function solveNow(plant: Plant, { moment, charge }: PlantState, flow: BusFlow, engineLoaded: boolean): void {
  moment.stage = charge.stage;
  moment.engineLoaded = engineLoaded;
  solveBus(flow, plant, moment);
}

/** Dark load below this share is rounding. */
const sameShare = 1e-9;

/** Whether sun and bank serve the whole DC bus without the engine; `state.flow` is solved already while it is off. */
function bankCarries(plant: Plant, state: PlantState): boolean {
  const { engine, flow, idle } = state;
  if (engine.phase === phases.off) return flow.servedShare > 1 - sameShare;
  if (engine.phase !== phases.loaded) return true;
  idle.voltageV = flow.voltageV;
  solveNow(plant, state, idle, false);
  return idle.servedShare > 1 - sameShare;
}

/** How long the flow just solved may go on before something happens, h. */
function cutAtEvents(plant: Plant, state: PlantState, h: number, mostH: number): number {
  const { generator, chargeRules } = plant;
  const { flow, engine, charge, stateOfCharge: s } = state;
  const rate = flow.ratePerH;
  let hours = mostH;
  if (rate > 0) {
    hours = Math.min(hours, (1 - s) / rate, Math.max(Math.min(stepInBulk, stepNearFull * (1 - s)), 1e-5) / rate);
  } else if (rate < 0) {
    hours = Math.min(hours, (s - flow.emptyAt) / -rate, stepInBulk / -rate);
  }
  hours = Math.min(hours, hoursToStageEnd(charge, chargeRules, flow.atVoltageLimit));
  if (generator !== null) {
    const isFull = charge.stage === stages.float;
    hours = Math.min(hours, hoursToEngineEvent(engine, generator, h, s, rate, flow.voltageV, isFull));
  }
  return Math.min(Math.max(hours, sameMomentH), mostH);
}

/** Shortens a piece in which the bank's wish falls below what the engine can give: there the bulk charge ends. */
function cutAtBulkEnd(flow: BusFlow, wantAtStartW: number, hours: number): number {
  const atStart = wantAtStartW - flow.engineLimitW;
  const atMiddle = flow.engineWantW - flow.engineLimitW;
  // The wish falls almost straight within one piece: where it crosses the limit, seen from its start and middle.
  if (atStart < 0 || atStart - 2 * (atStart - atMiddle) >= 0) return hours;
  return Math.max((hours / 2) * (atStart / (atStart - atMiddle)), sameMomentH);
}
