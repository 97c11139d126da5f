import { OutOfRangeError } from '@wintergap/ground';
/** The enclosure of a bank as one thermal mass. */
export interface Cabinet {
  /** Conductance of walls, lid and floor to the air around, W/K. */
  insulationWPerK: number;
  /** Heat capacity of the bank and what warms with it, Wh/K. */
  heatCapacityWhPerK: number;
  /** Heat carried out by ventilation, W/K: about 0.34 per m3/h of air. */
  ventilationWPerK?: number | undefined;
  /** A wall shared with a room of known temperature. */
  sharedRoom?: { roomC: number; WPerK: number } | undefined;
}

/** A thermostat heater in the cabinet; whoever runs the hours draws its power from the bank or a bus. */
export interface CabinetHeater {
  powerW: number;
  keepAboveC: number;
}

/**
 * Temperature of the cabinet after a step of constant conditions, degC: the exact solution of
 *   heatCapacity dT/dt = loss + heater - conductances (T - surroundings).
 * Any step length is stable. Does not allocate.
 *
 * @param outdoorC air around the cabinet: outdoors, or the room it stands in
 * @param lossW heat the bank itself gives off
 */
export function cabinetStep(
  tempC: number,
  outdoorC: number,
  lossW: number,
  heaterW: number,
  hours: number,
  cabinet: Cabinet,
): number {
  const toOutdoors = cabinet.insulationWPerK + (cabinet.ventilationWPerK ?? 0);
  const room = cabinet.sharedRoom;
  const toRoom = room === undefined ? 0 : room.WPerK;
  const conductance = toOutdoors + toRoom;
  const heatW = lossW + heaterW + toOutdoors * outdoorC + (room === undefined ? 0 : toRoom * room.roomC);
  if (!(conductance > 0)) return tempC + (heatW * hours) / cabinet.heatCapacityWhPerK;
  const settledC = heatW / conductance;
  return settledC + (tempC - settledC) * Math.exp((-conductance * hours) / cabinet.heatCapacityWhPerK);
}

/**
 * Mean power of a thermostat heater over a coming step, W: what brings the cabinet to `keepAboveC` at the end of the
 * step, no less than 0 and no more than the heater has.
 */
export function heaterPower(
  tempC: number,
  outdoorC: number,
  lossW: number,
  hours: number,
  cabinet: Cabinet,
  heater: CabinetHeater,
): number {
  const missingK = heater.keepAboveC - cabinetStep(tempC, outdoorC, lossW, 0, hours, cabinet);
  if (!(missingK > 0)) return 0;
  const perWattK = cabinetStep(0, 0, 0, 1, hours, cabinet) - cabinetStep(0, 0, 0, 0, hours, cabinet);
  const powerW = missingK / perWattK;
  return Math.min(powerW, heater.powerW);
}

/** @throws OutOfRangeError for a cabinet that could not exist */
export function checkCabinet(cabinet: Cabinet): void {
  atLeast('insulationWPerK', cabinet.insulationWPerK, 0);
  atLeast('ventilationWPerK', cabinet.ventilationWPerK ?? 0, 0);
  atLeast('heatCapacityWhPerK', cabinet.heatCapacityWhPerK, 0.01);
  if (cabinet.sharedRoom !== undefined) {
    atLeast('sharedRoom.WPerK', cabinet.sharedRoom.WPerK, 0);
    atLeast('sharedRoom.roomC', cabinet.sharedRoom.roomC, -60);
  }
}

function atLeast(name: string, value: number, least: number): void {
  if (!(value >= least && value < 1e6)) throw new OutOfRangeError(`${name} must be ${least} or more, got ${value}`);
}
