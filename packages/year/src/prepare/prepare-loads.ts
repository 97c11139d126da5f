import { hoursPerYear } from '@wintergap/ground';
import {
  type Appliance,
  converterYear,
  type Driver,
  dullestSpell,
  type Inverter,
  inverterLosses,
  inverterYear,
  type LoadEvent,
  type LoadYear,
  loadYear,
} from '@wintergap/loads';
import type { Site, SiteEvent, SiteInverter, SiteLoad } from '@wintergap/site';
import { firstWeekday, fromSite } from '@wintergap/site';
import type { YearInputs } from '../year-inputs.js';
import type { Outdoors } from './prepare-outdoors.js';
import { identityOf, type PreparedCache } from './prepared-cache.js';
import { roomsAirC } from './rooms-air.js';

/** The loads of a year on both sides of inverter and converter. */
export interface PreparedLoads {
  load: LoadYear;
  inverter: Inverter | null;
  inverterInputW: Float64Array;
  converterInputW: Float64Array;
}

/** Days over which the dullest spell is sought, for events placed there. */
const dullSpellDays = 3;

/** Runs the site's loads through the year. */
export function prepareLoads(
  site: Site,
  { weather, measured }: YearInputs,
  { sun }: Outdoors,
  prepared: PreparedCache,
): PreparedLoads {
  const { loads, events, inverter, converter, rooms, calendarYear } = site;
  const inputs = [
    identityOf(weather),
    identityOf(sun),
    calendarYear,
    loads,
    measured && identityOf(measured),
    events,
    inverter,
    converter,
    rooms,
  ];
  return prepared.get('loads', inputs, () => makeLoads(site, { weather, measured }, sun.upShare));
}

function makeLoads(site: Site, { weather, measured }: YearInputs, upShare: Float64Array): PreparedLoads {
  const weekday = firstWeekday(site);
  const context = {
    airC: weather.airC,
    upShare,
    firstWeekday: weekday,
    roomC: roomsAirC(site, weather.airC),
    dullSpellDay: dullestSpell(weather.ghiWm2, dullSpellDays).firstDay,
  };
  const load = fromSite(site, 'loads', () =>
    loadYear(site.loads.map(applianceOf), site.events.map(eventOf), context, measured ? [measured] : []),
  );
  const ofInverter = fromSite(site, 'inverter', () => inverterInput(site.inverter, load.acW));
  const converterInputW = fromSite(site, 'converter', () => converterInput(site.converter, load.dcW));
  return { load, ...ofInverter, converterInputW };
}

function inverterInput(written: SiteInverter | undefined, acW: Float64Array) {
  if (!written) return { inverter: null, inverterInputW: new Float64Array(hoursPerYear) };
  const inverter = inverterOf(written);
  return { inverter, inverterInputW: inverterYear(acW, inverter) };
}

const converterInput = (converter: Site['converter'], dcW: Float64Array): Float64Array =>
  converter ? converterYear(dcW, { efficiency: converter.efficiency, idleW: converter.idle }) : dcW;

function applianceOf({ name, power, count, bus, runs, perDay, when, standby, surge, off }: SiteLoad): Appliance {
  const drivenBy = driverOf(when);
  return {
    name,
    powerW: power,
    count,
    bus,
    standbyW: standby,
    ...(perDay !== undefined ? { runs: { minutesPerDay: perDay * 60 } } : runs !== undefined && { runs }),
    ...(when.hours && { hours: when.hours }),
    ...(when.days && { days: when.days }),
    ...(when.season && { season: when.season.map(({ from, to }) => ({ fromDay: from, toDay: to })) }),
    ...(surge !== undefined && { surge: { powerW: Math.max(surge, power) } }),
    ...(off && { off: off.map(({ from, to }) => ({ fromDay: from, toDay: to })) }),
    ...(drivenBy && { drivenBy }),
  };
}

function driverOf({ outdoorBelow, fullAt, dark, roomAt, perK, guests }: SiteLoad['when']): Driver | null {
  if (outdoorBelow !== undefined) {
    return { kind: 'outdoor', belowC: outdoorBelow, ...(fullAt !== undefined && { fullAtC: fullAt }) };
  }
  if (dark) return { kind: 'daylight' };
  if (roomAt !== undefined) return { kind: 'room', referenceC: roomAt, perK };
  if (guests) {
    return { kind: 'guests', periods: guests.map(({ from, to, times }) => ({ fromDay: from, toDay: to, times })) };
  }
  return null;
}

function eventOf({ name, on, at, lasts, energy, power, days, bus, off }: SiteEvent): LoadEvent {
  return {
    name,
    day: on === 'dullest spell' ? 'dullest-spell' : on,
    startHour: at,
    hours: lasts,
    uses: power !== undefined ? { powerW: power } : { energyWh: energy ?? 0 },
    bus,
    daysInRow: days,
    ...(off && { off: off.map(({ from, to }) => ({ fromDay: from, toDay: to })) }),
  };
}

function inverterOf({ power, surge, idle, efficiency, search }: SiteInverter): Inverter {
  const { proportionalLoss, squareLoss } = inverterLosses(power, idle, { kind: 'peak', efficiency });
  return {
    powerW: power,
    surgeW: surge ?? power,
    idleW: idle,
    proportionalLoss,
    squareLoss,
    ...(search && { search: { idleW: search.idle, belowW: search.below } }),
  };
}
