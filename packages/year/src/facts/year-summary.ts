import { autonomyDays } from '@wintergap/battery';
import { hoursPerYear } from '@wintergap/ground';
import { fromSite } from '@wintergap/site';
import { type Summary, summarise, yearSum } from '@wintergap/tally';
import type { PreparedArray } from '../prepare/prepare-array.js';
import { snowFrom } from '../prepare/prepare-outdoors.js';
import type { ArrayLimit } from '../prepare/site-limits.js';
import type { BareYear } from '../year-result.js';
import { yearCautions } from './cautions.js';
import { autonomyQuestion, type DarkSeason, darkSeason } from './dark-season.js';

/** The summary of a year's ledger. */
export function yearSummary(year: BareYear, limits: readonly ArrayLimit[]): Summary {
  const { site, weather, arrays, load, plant, ledger, settledAfterYears } = year;
  const { bank } = plant;
  const ratedW = arrays.reduce((sum, array) => sum + array.ratedW, 0);
  const dark = darkSeasonOfYear(year);
  return summarise(ledger, {
    site: { name: site.name, latitude: site.place.latitude, longitude: site.place.longitude },
    weather: {
      source: weather.source,
      hours: weather.ghiWm2.length,
      ghiKWhPerM2: yearSum(weather.ghiWm2) / 1000,
      meanAirTemp: yearSum(weather.airC) / weather.airC.length,
      minAirTemp: weather.airC.reduce((least, airC) => Math.min(least, airC), Infinity),
      verdict: weather.judgement?.verdict ?? null,
      verdictLine: weather.judgement?.line ?? null,
      mendedHours: weather.mended?.reduce((count, flag) => count + (flag > 0 ? 1 : 0), 0) ?? 0,
      snowFrom: snowFrom(site, weather),
    },
    darkSeason: dark,
    ratedW,
    planeWm2: meanPlane(arrays, ratedW),
    acLoadWh: load.acW,
    dcLoadWh: load.dcW,
    fuelPricePerL: site.generator?.fuel.price ?? null,
    bank: {
      usableWh: bank.usableWh,
      autonomyDays: autonomyOfYear(year, dark),
      referenceAh: bank.refAh,
      fullCycles: yearSum(ledger.bankDischargeWh) / (bank.storedWh(1) - bank.storedWh(0)),
    },
    settledAfterYears,
    cautions: yearCautions(site, weather, plant, load, ledger, limits, settledAfterYears !== null),
  });
}

const darkSeasonOfYear = ({ weather, load }: BareYear): DarkSeason => darkSeason(weather.ghiWm2, load.acW, load.dcW);

/** Days a full bank carries the load of the darkest month without sun or engine. */
export function autonomyOfYear(year: BareYear, dark: DarkSeason = darkSeasonOfYear(year)): number {
  const { site, plant, ledger } = year;
  return fromSite(site, 'bank', () => autonomyDays(plant.bank, autonomyQuestion(plant, ledger.bankC, dark.month)));
}

function meanPlane(arrays: readonly PreparedArray[], ratedW: number): Float64Array {
  const mean = new Float64Array(hoursPerYear);
  for (const { plane, ratedW: own } of arrays) {
    for (let h = 0; h < hoursPerYear; h++) mean[h]! += (plane.planeWm2[h]! * own) / ratedW;
  }
  return mean;
}
