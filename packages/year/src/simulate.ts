import { autonomyDays } from '@wintergap/battery';
import { angleApartDeg } from '@wintergap/ground';
import type { Site } from '@wintergap/site';
import { fromSite, siteError } from '@wintergap/site';
import { summarise, yearSum } from '@wintergap/tally';
import type { WeatherYear } from '@wintergap/weather';
import { yearCautions } from './facts/cautions.js';
import { autonomyQuestion, darkSeason } from './facts/dark-season.js';
import type { Plant } from './loop/plant.js';
import { settle } from './loop/settle.js';
import { type ArrayStage, arrayStage } from './prepare/array-stage.js';
import { bankStage } from './prepare/bank-stage.js';
import { compileSiteGenerator } from './prepare/generator-stage.js';
import { siteLimits } from './prepare/limits-stage.js';
import { loadStage } from './prepare/load-stage.js';
import { outdoorsStage } from './prepare/outdoors-stage.js';
import { identityOf, PreparedCache } from './prepare/prepared-cache.js';
import { siteWeather } from './prepare/weather-stage.js';
import type { YearResult } from './year-result.js';

/**
 * The settled year of a design.
 *
 * @param prepared what designs of the same place have in common; pass the same one to run them faster
 * @throws SiteError for values that do not fit together, WeatherError for weather that cannot be used
 */
export function simulateSite(site: Site, prepared = new PreparedCache()): YearResult {
  return simulateWeather(site, siteWeather(site, prepared), prepared);
}

/** The settled year of a design under a given weather. */
export function simulateWeather(site: Site, weather: WeatherYear, prepared = new PreparedCache()): YearResult {
  checkWeatherPlace(site, weather);
  const weatherKey = identityOf(weather);
  const outdoors = outdoorsStage(site, weather, prepared);
  const { bank, cabinet, heater, chargeRules } = fromSite(site, 'bank', () => bankStage(site));
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
      prepared.get('array', inputs, () =>
        fromSite(site, `arrays[${i}]`, () => arrayStage(array, site, weather, outdoors, range)),
      ),
    );
  });
  const { load, inverter, inverterInputW, converterInputW } = prepared.get(
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
    () => loadStage(site, weather, outdoors.sun.upShare),
  );
  const generator = fromSite(site, 'generator', () => compileSiteGenerator(site, weather));
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
  const dark = darkSeason(weather.ghiWm2, load.acW, load.dcW);
  const summary = summarise(ledger, {
    site: { name: site.name, latitude: site.place.latitude, longitude: site.place.longitude },
    weather: {
      source: weather.source,
      hours: weather.ghiWm2.length,
      ghiKWhPerM2: yearSum(weather.ghiWm2) / 1000,
      meanAirTemp: yearSum(weather.airC) / weather.airC.length,
      minAirTemp: weather.airC.reduce((least, airC) => Math.min(least, airC), Infinity),
    },
    darkSeason: dark,
    ratedW,
    planeWm2: meanPlane(arrays, ratedW),
    acLoadWh: load.acW,
    dcLoadWh: load.dcW,
    fuelPricePerL: site.generator?.fuel.price ?? null,
    bank: {
      usableWh: bank.usableWh,
      autonomyDays: autonomyDays(bank, autonomyQuestion(plant, ledger.bankC, dark.month)),
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

function checkWeatherPlace(site: Site, weather: WeatherYear): void {
  const { place } = site;
  const { latitudeDeg, longitudeDeg } = weather.place;
  if (latitudeDeg === undefined || longitudeDeg === undefined) return;
  const east = angleApartDeg(longitudeDeg, place.longitude);
  if (Math.abs(latitudeDeg - place.latitude) <= furthestLatitudeDeg && east <= furthestLongitudeDeg) return;
  throw siteError(
    site,
    'place',
    `the site is at ${place.latitude}, ${place.longitude}, but ${weather.source} is from ${latitudeDeg}, ${longitudeDeg} (north and east positive); one of the two is wrong`,
  );
}

function meanPlane(arrays: readonly ArrayStage[], ratedW: number): Float64Array {
  const mean = new Float64Array(8760);
  for (const { plane, ratedW: own } of arrays) {
    for (let h = 0; h < 8760; h++) mean[h]! += (plane.planeWm2[h]! * own) / ratedW;
  }
  return mean;
}
