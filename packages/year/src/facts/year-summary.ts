import { autonomyDays } from '@wintergap/battery';
import { hoursPerYear } from '@wintergap/ground';
import { fromSite } from '@wintergap/site';
import { type Summary, summarise, yearSum } from '@wintergap/tally';
import type { PreparedArray } from '../prepare/prepare-array.js';
import { snowFrom } from '../prepare/prepare-outdoors.js';
import type { YearResult } from '../year-result.js';
import { yearCautions } from './cautions.js';
import { autonomyQuestion, darkSeason } from './dark-season.js';

/**
 * The summary of a year's ledger.
 *
 * @param settledAfterYears years it took the year to repeat itself, `null` when it does not
 */
export function yearSummary(year: Omit<YearResult, 'summary'>, settledAfterYears: number | null): Summary {
  const { site, weather, arrays, limits, load, plant, ledger } = year;
  const { bank } = plant;
  const ratedW = arrays.reduce((sum, array) => sum + array.ratedW, 0);
  const dark = darkSeason(weather.ghiWm2, load.acW, load.dcW);
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
      autonomyDays: fromSite(site, 'bank', () => autonomyDays(bank, autonomyQuestion(plant, ledger.bankC, dark.month))),
      referenceAh: bank.refAh,
      fullCycles: yearSum(ledger.bankDischargeWh) / (bank.storedWh(1) - bank.storedWh(0)),
    },
    settledAfterYears,
    cautions: yearCautions(site, weather, plant, load, ledger, limits, settledAfterYears !== null),
  });
}

function meanPlane(arrays: readonly PreparedArray[], ratedW: number): Float64Array {
  const mean = new Float64Array(hoursPerYear);
  for (const { plane, ratedW: own } of arrays) {
    for (let h = 0; h < hoursPerYear; h++) mean[h]! += (plane.planeWm2[h]! * own) / ratedW;
  }
  return mean;
}
