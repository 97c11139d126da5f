import { limitsNotice } from '@wintergap/array';
import { underload, wetRunningCaution } from '@wintergap/generator';
import { angleApartDeg, dateInWords } from '@wintergap/ground';
import { inverterFit, type LoadYear } from '@wintergap/loads';
import type { Site } from '@wintergap/site';
import { type Caution, type Ledger, yearSum } from '@wintergap/tally';
import { placeNotices, type WeatherYear } from '@wintergap/weather';
import { hottestChargeC } from '../loop/bus-flow.js';
import type { Plant } from '../loop/plant.js';
import { type ArrayLimit, exceededLimits, saidOfLimit } from '../prepare/site-limits.js';
import { sitePlace } from '../prepare/site-place.js';
import { freezingOf, longestSinceFull } from './bank-facts.js';
import { heatToCharge, refusedInCold, refusedInHeat } from './refused-charge.js';

/** Days without a full charge after which a lead-acid bank suffers: common practice, no source. */
const longWithoutFullDays = 21;

/** A caution of each limit that is exceeded; nothing is run for them. */
export const limitCautions = (limits: readonly ArrayLimit[]): Caution[] =>
  exceededLimits(limits).map((limit) => ({ code: limit.code, text: `${saidOfLimit(limit)} (${limitsNotice})` }));

/** What the owner of this design must know of its year: limits exceeded, and hours that hurt something. */
export function yearCautions(
  site: Site,
  weather: WeatherYear,
  plant: Plant,
  load: LoadYear,
  ledger: Ledger,
  limits: readonly ArrayLimit[],
  settled: boolean,
): Caution[] {
  const cautions = limitCautions(limits);
  const add = (code: string, text: string | null) => {
    if (text !== null) cautions.push({ code, text });
  };
  add('freezing', freezingText(plant, ledger));
  add('cold-charging', coldBankText(plant, ledger));
  add('hot-bank', hotBankText(ledger));
  add('thermal-runaway', thermalRunawayText(plant, ledger));
  add('seldom-full', seldomFullText(plant, ledger));
  if (plant.inverter) {
    const fit = inverterFit(load, plant.inverter);
    if (fit.hoursAboveRating > 0) {
      add(
        'inverter-rating',
        `the AC load is above the inverter's rating in ${hoursText(fit.hoursAboveRating)}; what is above stays dark`,
      );
    }
    if (fit.surgeExceeded && load.largestSurge) {
      add(
        'inverter-surge',
        `when the ${load.largestSurge.name} starts, the AC load may reach ${Math.round(load.largestSurgeW)} W, more than the inverter's surge rating of ${plant.inverter.surgeW} W`,
      );
    }
  }
  if (plant.generator && site.generator) {
    const use = underload(ledger.generatorWh, ledger.generatorH, plant.generator);
    add('fuel-store', fuelStoreText(site.generator.fuel, ledger));
    add('light-running', wetRunningCaution(use, site.generator.fuel.kind));
  }
  add('dark-beside-engine', darkBesideEngineText(plant, ledger));
  add('faces-away', facesAwayText(site));
  const notices = weather.judgement?.notices ?? [...weather.notices, ...placeNotices(weather.place, sitePlace(site))];
  for (const notice of notices) if (notice.level !== 'note') add(`weather-${notice.code}`, notice.text);
  if (!settled) {
    const wholeKWh = plant.bank.storedWh(1) / 1000;
    const keptKWh = (ledger.bankStoredWh[8759]! - ledger.bankStoredAtStartWh) / 1000;
    add(
      'not-settled',
      `the year does not repeat itself: the bank ends it ${Math.abs(keptKWh).toFixed(1)} kWh, ${(Math.abs(keptKWh / wholeKWh) * 100).toFixed(1)} % of the bank, ${keptKWh < 0 ? 'below' : 'above'} where it began, so single runs of the engine may fall into this year or the next`,
    );
  }
  return cautions;
}

function freezingText({ bank }: Plant, ledger: Ledger): string | null {
  const freezing = freezingOf(bank, ledger);
  if (freezing === null || freezing.hours === 0) return null;
  const { hour, hours } = freezing;
  const charge = Math.round(ledger.lowestStateOfCharge[hour]! * 100);
  return `the electrolyte can freeze in ${hoursText(hours)}, worst on ${dateInWords(Math.floor(hour / 24))}: ${Math.round(ledger.bankC[hour]!)} degC at ${charge} % charge`;
}

/** A bank without a cabinet loses more than this to the air, W/K: there a heater is no remedy by itself. */
const muchHeatWPerK = 5;

function coldBankText(plant: Plant, ledger: Ledger): string | null {
  const { hours, sunWh, engineH, darkWh } = refusedInCold(plant, ledger);
  if (hours === 0 && engineH === 0 && darkWh === 0) return null;
  const effects = [
    ...(hours > 0
      ? [`cannot be charged in ${hoursText(hours)} of sun (${Math.round(sunWh / 1000)} kWh thrown away)`]
      : []),
    ...(engineH > 0.5 ? [`cannot be charged in ${Math.round(engineH)} engine hours`] : []),
    ...(darkWh >= darkWorthSayingWh ? [`gives nothing while ${(darkWh / 1000).toFixed(1)} kWh of load stay dark`] : []),
  ];
  if (effects.length === 0) return null;
  const heatW = Math.ceil(heatToCharge(plant) / 10) * 10;
  const insulate = plant.cabinet.insulationWPerK > muchHeatWPerK ? 'insulate it first; as it stands ' : '';
  return `too cold, the bank ${effects.join(', ')}: stand it in heated rooms (stands: rooms), or heat it: ${insulate}a heater of ${heatW} W holds it above 5 degC on the coldest day (heatedBy: { kind: heater, power: ${heatW} W, keepAbove: 5 degC } in its cabinet)`;
}

/** Less dark load than this is not worth a caution, Wh. */
const darkWorthSayingWh = 50;

/** Load that stays dark although there is an engine, because nobody lets it run then. */
function darkBesideEngineText({ generator }: Plant, ledger: Ledger): string | null {
  if (!generator) return null;
  let darkWh = 0;
  for (let h = 0; h < ledger.darkWh.length; h++) if (generator.startAllowed[h] === 0) darkWh += ledger.darkWh[h]!;
  if (darkWh < darkWorthSayingWh) return null;
  return `${(darkWh / 1000).toFixed(1)} kWh of load stay dark in hours in which the engine may not start: let it start earlier, at a higher charge, or at more hours`;
}

/** A store that is filled once a year and burnt empty before the year is over. */
function fuelStoreText({ stored, kind }: NonNullable<Site['generator']>['fuel'], ledger: Ledger): string | null {
  const burnt = yearSum(ledger.fuelL);
  if (stored === undefined || burnt <= stored) return null;
  return `the fuel store of ${stored.toFixed(0)} L, filled once a year, runs out: this year burns ${burnt.toFixed(0)} L of ${kind}`;
}

/** Beyond this from the equator's direction a tilted plane loses more than it gains. */
const awayDeg = 100;

function facesAwayText({ arrays, place }: Site): string | null {
  const equatorward = place.latitude < 0 ? 0 : 180;
  const away = arrays.filter(({ mount }) => {
    if (mount.kind !== 'fixed' && mount.kind !== 'seasonal') return false;
    const tilt = mount.kind === 'fixed' ? mount.tilt : Math.max(...mount.tilts.map((period) => period.tilt));
    return angleApartDeg(mount.azimuth, equatorward) > awayDeg && tilt > 20;
  });
  if (away.length === 0) return null;
  return `${away.map(({ name }) => name).join(', ')} faces away from the sun: azimuth runs clockwise from north, south is 180`;
}

function hotBankText(ledger: Ledger): string | null {
  let hottest = 0;
  let hoursHot = 0;
  for (let h = 0; h < ledger.bankC.length; h++) {
    if (ledger.bankC[h]! > ledger.bankC[hottest]!) hottest = h;
    if (ledger.bankC[h]! >= hottestChargeC) hoursHot++;
  }
  if (hoursHot === 0) return null;
  const { hours, sunWh, engineH } = refusedInHeat(ledger);
  const sun = hours > 0 ? `; ${Math.round(sunWh / 1000)} kWh of sun are thrown away for it` : '';
  const engine = engineH > 0.5 ? `; the engine runs ${Math.round(engineH)} h without charging it` : '';
  const when = `${Math.round(ledger.bankC[hottest]!)} degC on ${dateInWords(Math.floor(hottest / 24))}`;
  return `the bank is at ${hottestChargeC} degC or hotter in ${hoursText(hoursHot)}, at most ${when}, and chargers stop there${sun}${engine}: less foam, ventilation in summer or a lower float voltage keep it cooler`;
}

/** Up to about here the standards' typical currents of sealed cells hold (IEC 62485-2): beyond, heat feeds on itself. */
const hottestSealedC = 40;

function thermalRunawayText({ bank }: Plant, ledger: Ledger): string | null {
  if (bank.traits.gas !== 'recombined') return null;
  let hours = 0;
  for (let h = 0; h < ledger.bankC.length; h++) {
    if (ledger.bankC[h]! >= hottestSealedC && ledger.bankChargeWh[h]! > 0) hours++;
  }
  if (hours === 0) return null;
  return `the sealed bank is charged at ${hottestSealedC} degC or hotter in ${hoursText(hours)}: its gas recombines to heat, the heat raises the current, and cells can run away; lower the absorption voltage, compensate it by the bank's temperature, or let air through the cabinet`;
}

function seldomFullText({ bank, generator }: Plant, ledger: Ledger): string | null {
  if (!bank.traits.sulphates) return null;
  const { days, endDay } = longestSinceFull(ledger.daysSinceFull);
  if (days <= longWithoutFullDays) return null;
  const remedy = generator
    ? 'let the engine or the sun finish a charge every week or two'
    : 'more array or less load in the dark months lets the sun finish a charge, or bring a charger every few weeks';
  return `the bank is not charged full for ${days} days, until ${dateInWords(endDay)}: lead-acid cells sulphate; ${remedy}`;
}

const hoursText = (hours: number) => (hours === 1 ? '1 hour' : `${hours} hours`);
