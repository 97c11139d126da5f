import { assertCloses } from './closing.js';
import {
  arrayFigures,
  bankFigures,
  energyByMonth,
  engineFigures,
  kWh,
  loadFigures,
  shortfallFigures,
} from './figures.js';
import type { Ledger } from './ledger.js';
import { yearSum } from './months.js';
import { longestDaysBelow } from './spells.js';
import { throttleSeason } from './throttle.js';

/** A calculated limit that is exceeded, or something the owner must know. */
export interface Caution {
  code: string;
  text: string;
}

/** What the simulation knows besides the ledger. */
export interface YearFacts {
  site: { name: string; latitude: number; longitude: number };
  weather: {
    source: string;
    hours: number;
    ghiKWhPerM2: number;
    meanAirTemp: number;
    minAirTemp: number;
    /** Whether the weather can be trusted, and that in one line; `null` for weather that was not judged. */
    verdict: 'good' | 'usable' | 'rejected' | null;
    verdictLine: string | null;
    /** Hours that were not measured but bridged or filled. */
    mendedHours: number;
    /** What the snow on ground and arrays comes from; `null` where nothing tells of snow. */
    snowFrom: 'depth' | 'precipitation' | 'snow.days' | null;
  };
  /** The month with the least sun over load, and the three with the least; 1 for January. */
  darkSeason: { month: number; months: number[] };
  ratedW: number;
  /** Plane-of-array irradiance, W/m2, weighted by rated power when there are several arrays. */
  planeWm2: Float64Array;
  acLoadWh: Float64Array;
  dcLoadWh: Float64Array;
  fuelPricePerL: number | null;
  bank: { usableWh: number; autonomyDays: number; referenceAh: number; fullCycles: number };
  settledAfterYears: number | null;
  cautions: Caution[];
}

/** The year in the form printed by `year --json`: kWh, kW, degC, fractions 0 to 1, twelve months. */
export interface Summary {
  site: { name: string; latitude: number; longitude: number };
  weather: YearFacts['weather'];
  darkSeason: YearFacts['darkSeason'];
  array: {
    ratedKW: number;
    planeKWhPerM2: number;
    availableKWh: number;
    usedKWh: number;
    throttledKWh: number;
    /** Above the controllers' current limits, and wanted by load or bank; not part of `available`. */
    clippedKWh: number;
    months: {
      planeKWhPerM2: number;
      availableKWh: number;
      usedKWh: number;
      throttledKWh: number;
      clippedKWh: number;
    }[];
  };
  load: { acKWh: number; dcKWh: number; servedKWh: number; darkKWh: number; darkHours: number };
  generator: {
    hours: number;
    starts: number;
    fuelLitres: number;
    /** `null` when the site file gives no fuel price. */
    fuelCost: number | null;
    toBusKWh: number;
    months: { hours: number; starts: number; fuelLitres: number }[];
  };
  shortfall: { kWh: number; hours: number; months: { kWh: number; hours: number }[] };
  throttle: { kWh: number; hours: number; firstDate: string | null; lastDate: string | null; calendar: number[][] };
  bank: {
    usableKWh: number;
    minStateOfCharge: number;
    meanStateOfCharge: number;
    minTemp: number;
    maxTemp: number;
    chargeKWh: number;
    dischargeKWh: number;
    fullCycles: number;
    autonomyDays: number;
    longestDaysBelowHalf: number;
  };
  ledger: { worstHourImbalanceKWh: number; yearImbalanceKWh: number; settledAfterYears: number | null };
  cautions: Caution[];
}

/**
 * Sums the ledger up. Refuses, by throwing, a ledger that does not close.
 *
 * @throws Error when the ledger does not close
 */
export function summarise(ledger: Ledger, facts: YearFacts): Summary {
  const closing = assertCloses(ledger);
  const engine = engineFigures(ledger);
  const season = throttleSeason(ledger.throttledWh, ledger.arrayAvailableWh);
  return {
    site: facts.site,
    weather: facts.weather,
    darkSeason: facts.darkSeason,
    array: { ratedKW: facts.ratedW / 1000, ...arrayFigures(ledger, facts.planeWm2) },
    load: loadFigures(ledger, facts.acLoadWh, facts.dcLoadWh),
    generator: {
      hours: engine.hours,
      starts: engine.starts,
      fuelLitres: engine.fuelLitres,
      fuelCost: facts.fuelPricePerL === null ? null : engine.fuelLitres * facts.fuelPricePerL,
      toBusKWh: kWh(yearSum(ledger.generatorToBusWh)),
      months: engine.months,
    },
    shortfall: shortfallFigures(ledger),
    throttle: {
      kWh: energyByMonth(ledger.throttledWh).kWh,
      hours: season.hours,
      firstDate: season.firstDate,
      lastDate: season.lastDate,
      calendar: season.calendar,
    },
    bank: {
      usableKWh: kWh(facts.bank.usableWh),
      ...bankFigures(ledger),
      fullCycles: facts.bank.fullCycles,
      autonomyDays: facts.bank.autonomyDays,
      longestDaysBelowHalf: longestDaysBelow(ledger.stateOfCharge, 0.5),
    },
    ledger: {
      worstHourImbalanceKWh: kWh(closing.worstHourWh),
      yearImbalanceKWh: kWh(closing.yearWh),
      settledAfterYears: facts.settledAfterYears,
    },
    cautions: facts.cautions,
  };
}
