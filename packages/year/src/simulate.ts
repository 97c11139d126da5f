import { autonomyDays } from '@wintergap/battery';
import { angleApartDeg } from '@wintergap/ground';
import type { Site } from '@wintergap/site';
import { fromSite, SiteError } from '@wintergap/site';
import { summarise, yearSum } from '@wintergap/tally';
import type { WeatherYear } from '@wintergap/weather';
import { yearCautions } from './facts/cautions.js';
import { decemberQuestion } from './facts/december.js';
import type { Plant } from './loop/plant.js';
import { settle } from './loop/settle.js';
import { type ArrayStage, arrayStage } from './prepare/array-stage.js';
import { bankStage } from './prepare/bank-stage.js';
import { compileSiteGenerator } from './prepare/generator-stage.js';
import { siteLimits } from './prepare/limits-stage.js';
import { loadStage } from './prepare/load-stage.js';
import { outdoorsStage } from './prepare/outdoors-stage.js';
import { StageCache } from './prepare/stage-cache.js';
import { siteWeather } from './prepare/weather-stage.js';
import type { YearResult } from './year-result.js';

/**
 * The settled year of a design.
 *
 * @param siteFile the site file it came from: relative paths count from its folder, and messages name it
 * @param stages results shared with other designs of the same place; pass the same one to run them faster
 * @throws SiteError for values that do not fit together, WeatherError for weather that cannot be used
 */
export function simulateSite(site: Site, siteFile: string, stages = new StageCache()): YearResult {
  return simulateWeather(site, siteFile, siteWeather(site, siteFile, stages), stages);
}

/** The settled year of a design under a given weather. */
export function simulateWeather(
  site: Site,
  siteFile: string,
  weather: WeatherYear,
  stages = new StageCache(),
): YearResult {
  checkWeatherPlace(site, siteFile, weather);
  const weatherKey = [weather.source, site.weather, siteFile];
  const outdoors = outdoorsStage(site, weather, weatherKey, stages);
  const { bank, cabinet, heater, chargeRules } = fromSite(siteFile, 'bank', () => bankStage(site));
  const range = [bank.settings.cells * bank.settings.cutoffCellV * 0.9, bank.setVoltage(2, -20) * 1.02] as const;
  const arrays: ArrayStage[] = [];
  site.arrays.forEach((array, i) => {
    if (array.strings === 0) return;
    const inputs = [
      weatherKey,
      site.place,
      site.calendarYear,
      site.ground,
      site.skyline,
      site.horizon,
      site.leaves,
      site.snow,
      site.sky,
      array,
      range,
    ];
    arrays.push(
      stages.get('array', inputs, () =>
        fromSite(siteFile, `arrays[${i}]`, () => arrayStage(array, site, weather, outdoors, range)),
      ),
    );
  });
  const { load, inverter, inverterInputW, converterInputW } = stages.get(
    'load',
    [
      weatherKey,
      site.place,
      site.calendarYear,
      site.loads,
      site.measuredLoad,
      site.events,
      site.inverter,
      site.converter,
      site.rooms,
    ],
    () => fromSite(siteFile, 'loads', () => loadStage(site, siteFile, weather, outdoors.sun.upShare)),
  );
  const generator = fromSite(siteFile, 'generator', () => compileSiteGenerator(site, weather));
  const ownUseW = new Float64Array(8760);
  for (const array of arrays) for (let h = 0; h < 8760; h++) ownUseW[h]! += array.ownUseW[h]!;
  const plant: Plant = {
    sources: arrays.map(({ name, controller, maxCurrentA }) => ({ name, controller, maxCurrentA })),
    acW: load.acW,
    dcW: load.dcW,
    inverterInputW,
    converterInputW,
    ownUseW,
    inverter,
    inverterLimitW: inverter?.powerW ?? 0,
    chargeRules,
    bank,
    cabinet,
    heater,
    airC: weather.airC,
    generator,
  };
  const { ledger, settledAfterYears } = settle(plant);
  const limits = siteLimits(site, weather, arrays);
  const ratedW = arrays.reduce((sum, array) => sum + array.ratedW, 0);
  const summary = summarise(ledger, {
    site: { name: site.name, latitude: site.place.latitude, longitude: site.place.longitude },
    weather: {
      source: weather.source,
      hours: weather.ghiWm2.length,
      ghiKWhPerM2: yearSum(weather.ghiWm2) / 1000,
      meanAirTemp: yearSum(weather.airC) / weather.airC.length,
      minAirTemp: weather.airC.reduce((least, airC) => Math.min(least, airC), Infinity),
    },
    ratedW,
    planeWm2: meanPlane(arrays, ratedW),
    acLoadWh: load.acW,
    dcLoadWh: load.dcW,
    fuelPricePerL: site.generator?.fuel.price ?? null,
    bank: {
      usableWh: bank.usableWh,
      autonomyDays: autonomyDays(bank, decemberQuestion(plant, ledger.bankC)),
      referenceAh: bank.refAh,
      fullCycles: yearSum(ledger.bankDischargeWh) / (bank.storedWh(1) - bank.storedWh(0)),
    },
    settledAfterYears,
    cautions: yearCautions(site, weather, plant, load, ledger, limits, settledAfterYears !== null),
  });
  return { site, weather, arrays, limits, load, plant, ledger, summary };
}

/** Weather from further away than this is that of another climate, or the site's place is mistyped. */
const furthestLatitudeDeg = 10;
const furthestLongitudeDeg = 20;

function checkWeatherPlace({ place }: Site, siteFile: string, weather: WeatherYear): void {
  const { latitudeDeg, longitudeDeg } = weather.place;
  if (latitudeDeg === undefined || longitudeDeg === undefined) return;
  const east = angleApartDeg(longitudeDeg, place.longitude);
  if (Math.abs(latitudeDeg - place.latitude) <= furthestLatitudeDeg && east <= furthestLongitudeDeg) return;
  throw new SiteError(siteFile, [
    {
      line: 0,
      column: 0,
      path: 'place',
      message: `the site is at ${place.latitude}, ${place.longitude}, but ${weather.source} is from ${latitudeDeg}, ${longitudeDeg} (north and east positive); one of the two is wrong`,
    },
  ]);
}

function meanPlane(arrays: readonly ArrayStage[], ratedW: number): Float64Array {
  const mean = new Float64Array(8760);
  for (const { plane, ratedW: own } of arrays) {
    for (let h = 0; h < 8760; h++) mean[h]! += (plane.planeWm2[h]! * own) / ratedW;
  }
  return mean;
}
