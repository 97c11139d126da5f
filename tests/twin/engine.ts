/** An engine and the habits of the people who run it. */
export interface EngineSettings {
  bus: 'ac' | 'dc';
  /** Of an AC set at its terminals; of a DC set before `toBus`. */
  powerW: number;
  /** Share of a DC set's output that reaches the bank's bus; of an AC set's, what its charger passes on. */
  toBus: number;
  /** Most DC power of the charger; without limit for a DC set. */
  chargerW: number;
  elevationM: number;
  derate: boolean;
  idleLPerH: number;
  fullLPerH: number;
  /** State of charge at which a controller starts it, 0 for never, and at which a person does in the hours he looks. */
  startBelow: number;
  byHandBelow: number;
  byHandAt: readonly number[];
  stopAbove: number;
  stopAtBulkEnd: boolean;
  /** Hours of day `[from, to)` in which it is accepted, and whether they end a run. */
  acceptedFrom: number;
  acceptedTo: number;
  acceptedEndsRun: boolean;
  /** Days without a full bank after which a run to full is made, 0 for never. */
  fullEveryDays: number;
  minimumRunH: number;
  warmUpH: number;
  coolDownH: number;
}

/** An engine at a moment; times in minutes. */
export interface EngineState {
  doing: 'rests' | 'warms up' | 'gives power' | 'cools down';
  ranMin: number;
  inThisMin: number;
  toFull: boolean;
}

export const restingEngine = (): EngineState => ({ doing: 'rests', ranMin: 0, inThisMin: 0, toFull: false });

/** Most output at its terminals: 3.5 % less per 300 m above 150 m, 1 % less per 5.5 K above 25 degC (common practice). */
export function ratedNowW(engine: EngineSettings, airC: number): number {
  if (!engine.derate) return engine.powerW;
  const byHeight = 1 - (0.035 / 300) * Math.max(0, engine.elevationM - 150);
  const byHeat = 1 - (0.01 / 5.5) * Math.max(0, airC - 25);
  return engine.powerW * Math.max(0, byHeight) * Math.max(0, byHeat);
}

/** Straight from idle to full (Willans line), L/h, for an output at the set's terminals. */
export const fuelNowLPerH = (engine: EngineSettings, outputW: number): number =>
  engine.idleLPerH + ((engine.fullLPerH - engine.idleLPerH) * outputW) / engine.powerW;

const isAccepted = ({ acceptedFrom: from, acceptedTo: to }: EngineSettings, hourOfDay: number): boolean =>
  from < to ? hourOfDay >= from && hourOfDay < to : hourOfDay >= from || hourOfDay < to;

/** State of charge that starts the engine in an hour of day, 0 where nothing does. */
function startsBelow(engine: EngineSettings, hourOfDay: number): number {
  const byHand = engine.byHandAt.includes(hourOfDay) ? engine.byHandBelow : 0;
  return Math.max(engine.startBelow, byHand);
}

/** What the rules look at. */
export interface Seen {
  hourOfDay: number;
  s: number;
  /** Whether sun and bank would serve the whole load without it. */
  bankCarries: boolean;
  /** Whether its charger has gone to float. */
  floats: boolean;
  daysSinceFull: number;
  /** Whether the bank takes less than it could give. */
  bulkEnded: boolean;
}

/**
 * The rules at the beginning of a minute. Returns whether the engine was started in it.
 *
 * Off: starts, in hours in which it is accepted and somebody or something looks, when the bank is low, when sun and bank
 * do not carry the load, or when it has gone too long without a full charge. Loaded: ends with the accepted hours; never
 * while sun and bank do not carry the load; not before its minimum run; then when the charger floats above the starting
 * charge, at the state of charge, or at the end of bulk.
 */
export function decide(engine: EngineSettings, now: EngineState, seen: Seen): boolean {
  const accepted = isAccepted(engine, seen.hourOfDay);
  const threshold = startsBelow(engine, seen.hourOfDay);
  switch (now.doing) {
    case 'rests': {
      const looks = engine.startBelow > 0 || engine.byHandAt.includes(seen.hourOfDay);
      if (!accepted || !looks) return false;
      const toFull = engine.fullEveryDays > 0 && seen.daysSinceFull >= engine.fullEveryDays;
      if (seen.s > threshold && seen.bankCarries && !toFull) return false;
      now.toFull = toFull;
      now.ranMin = 0;
      enter(now, engine.warmUpH > 0 ? 'warms up' : 'gives power');
      return true;
    }
    case 'warms up':
      if (now.inThisMin >= Math.round(engine.warmUpH * 60)) enter(now, 'gives power');
      return false;
    case 'gives power':
      if (isOver(engine, now, seen, accepted, accepted ? threshold : 0))
        enter(now, engine.coolDownH > 0 ? 'cools down' : 'rests');
      return false;
    case 'cools down':
      if (now.inThisMin >= Math.round(engine.coolDownH * 60)) enter(now, 'rests');
      return false;
  }
}

function enter(now: EngineState, doing: EngineState['doing']): void {
  now.doing = doing;
  now.inThisMin = 0;
}

function isOver(engine: EngineSettings, now: EngineState, seen: Seen, accepted: boolean, threshold: number): boolean {
  if (!accepted && engine.acceptedEndsRun) return true;
  if (!seen.bankCarries) return false;
  if (now.ranMin < engine.minimumRunH * 60 - 0.5) return false;
  if (seen.floats && seen.s > threshold) return true;
  if (now.toFull) return seen.s >= 0.995;
  if (seen.s >= engine.stopAbove) return true;
  return engine.stopAtBulkEnd && now.inThisMin > 0 && seen.bulkEnded;
}
