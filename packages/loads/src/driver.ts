import { daysPerYear, hoursPerYear, mustHold, mustLie, OutOfRangeError } from '@wintergap/ground';
import { checkSpans, type DaySpan, isWithinSpans } from './schedule.js';

/** What beside its schedule decides how long an appliance runs. */
export type Driver =
  /**
   * Cold weather: not at all at `belowC` outdoors and above, more with every degree, all the scheduled time at
   * `fullAtC` and below. Without `fullAtC` it is switched: all the scheduled time whenever it is colder than `belowC`.
   */
  | { kind: 'outdoor'; belowC: number; fullAtC?: number }
  /** Darkness: the share of the scheduled hour in which the sun is down. */
  | { kind: 'daylight' }
  /** A warm room: running time changes by the share `perK` for every kelvin from `referenceC`, up to all the time. */
  | { kind: 'room'; referenceC: number; perK: number; room?: RoomTemperature }
  /** People: running time is multiplied in the periods; 0 for an empty house, above 1 for guests. */
  | { kind: 'guests'; periods: readonly (DaySpan & { times: number })[] };

/** The temperature around an appliance; that of the load's surroundings (`roomC`) unless given. */
export type RoomTemperature =
  | { kind: 'hourly'; roomC: Float64Array }
  /** Unheated or half heated: outdoors plus `aboveOutdoorK`, kept at `atLeastC` by heating. */
  | { kind: 'outdoor'; aboveOutdoorK: number; atLeastC: number };

/** Hourly surroundings of the loads. */
export interface LoadContext {
  /** Outdoor air temperature, 8760 hours. */
  airC: Float64Array;
  /** Share of each hour in which the sun is up, 0 to 1. */
  upShare: Float64Array;
  /** Weekday of 1 January, 0 for Sunday. */
  firstWeekday: number;
  /** Room temperature, for appliances that follow it. */
  roomC?: Float64Array;
  /** First day of the dullest spell, for events placed there; see `dullestSpell`. */
  dullSpellDay?: number;
}

/**
 * Multiplies an appliance's scheduled share of each hour, in place, by what drives it.
 *
 * @param name for messages
 */
export function drive(name: string, share: Float64Array, driver: Driver, context: LoadContext): void {
  switch (driver.kind) {
    case 'outdoor':
      driveByCold(name, share, driver.belowC, driver.fullAtC, context.airC);
      return;
    case 'daylight':
      for (let h = 0; h < hoursPerYear; h++) share[h]! *= 1 - context.upShare[h]!;
      return;
    case 'room':
      driveByRoom(name, share, driver.referenceC, driver.perK, roomTemperature(name, driver.room, context));
      return;
    case 'guests':
      checkSpans(name, driver.periods);
      for (const { times } of driver.periods) mustLie(`${name}: times`, times, 0, 100);
      for (let day = 0; day < daysPerYear; day++) {
        for (const period of driver.periods) {
          if (!isWithinSpans(day, [period])) continue;
          for (let h = day * 24; h < day * 24 + 24; h++) share[h]! *= period.times;
        }
      }
  }
}

function driveByCold(
  name: string,
  share: Float64Array,
  belowC: number,
  fullAtC: number | undefined,
  airC: Float64Array,
): void {
  mustLie(`${name}: belowC`, belowC, -60, 60);
  if (fullAtC === undefined) {
    for (let h = 0; h < hoursPerYear; h++) if (airC[h]! >= belowC) share[h] = 0;
    return;
  }
  mustLie(`${name}: fullAtC`, fullAtC, -90, 60);
  if (fullAtC >= belowC) throw new OutOfRangeError(`${name}: fullAtC must be below belowC ${belowC}, got ${fullAtC}`);
  for (let h = 0; h < hoursPerYear; h++) {
    share[h]! *= Math.min(Math.max((belowC - airC[h]!) / (belowC - fullAtC), 0), 1);
  }
}

function driveByRoom(name: string, share: Float64Array, referenceC: number, perK: number, roomC: Float64Array): void {
  mustLie(`${name}: referenceC`, referenceC, -60, 60);
  mustLie(`${name}: perK`, perK, 0, 1);
  for (let h = 0; h < hoursPerYear; h++) {
    share[h] = Math.min(share[h]! * Math.max(1 + perK * (roomC[h]! - referenceC), 0), 1);
  }
}

function roomTemperature(name: string, room: RoomTemperature | undefined, context: LoadContext): Float64Array {
  if (!room) {
    if (context.roomC) return context.roomC;
    throw new TypeError(`${name}: driven by the room, but no room temperature is given`);
  }
  if (room.kind === 'hourly') {
    mustHold(`${name}: roomC`, room.roomC, hoursPerYear, -60, 80);
    return room.roomC;
  }
  mustLie(`${name}: aboveOutdoorK`, room.aboveOutdoorK, -40, 60);
  mustLie(`${name}: atLeastC`, room.atLeastC, -90, 40);
  const roomC = new Float64Array(hoursPerYear);
  for (let h = 0; h < hoursPerYear; h++) roomC[h] = Math.max(context.airC[h]! + room.aboveOutdoorK, room.atLeastC);
  return roomC;
}
