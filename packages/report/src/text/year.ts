import { dateOfDay, monthInWords, monthNames } from '@wintergap/ground';
import { formatQuantity, type UnitSystem } from '@wintergap/quantity';
import { takenAs } from '@wintergap/site';
import type { CommonAnswer, CommonFigures } from '@wintergap/study';
import { yearSum } from '@wintergap/tally';
import { bankFacts, exceededLimits, saidOfLimit, type YearResult } from '@wintergap/year';
import { usualAndBad, usualBadAndWorstDark, yearsInWords } from '../words/common-words.js';
import { darkText } from '../words/dark-text.js';
import { energyText, monthEnergyScale } from '../words/energy-scale.js';
import { count, dateText, figure, percent, wrap } from '../words/figures.js';
import { amountText } from '../words/money.js';
import { largestEnergy, type MonthFigures, monthFigures } from '../words/month-figures.js';
import {
  inShownUnits,
  inVolumeUnit,
  temperatureDifferenceText,
  temperatureText,
  volumeText,
  volumeUnit,
} from '../words/shown-units.js';
import { stopText } from '../words/stop-text.js';
import { takenHeading } from '../words/taken-heading.js';
import { throttlingWhen } from '../words/throttling-when.js';
import { engineText } from './parts/engine.js';
import { plainTable } from './parts/plain-table.js';
import { refusedText } from './parts/refused.js';
import { weatherLine } from './parts/weather-line.js';

/**
 * The year as a page of text, 80 columns, answer first; `headline` gives its first sentences only.
 *
 * @param common what the common years say of this design; without it the page is about the file's year alone
 */
export function yearText(result: YearResult, units: UnitSystem, common?: CommonAnswer): string {
  return [
    headline(result, units, common),
    cautionsText(result, units),
    monthsTable(result, units),
    engineText(result),
    bankText(result, units),
    energyLines(result),
    weatherText(result),
    takenText(result, units),
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

/** The sentences that answer: engine, throttling, darkness; before them what must not be built so, and what is to be said of the weather. */
export function headline(result: YearResult, units: UnitSystem, common?: CommonAnswer): string {
  const { throttle, array, load } = result.summary;
  const engine = engineSentence(result, units, common);
  const refused = refusedText(result);
  const thrown = `${figure(throttle.kWh)} kWh thrown away, ${percent(throttle.kWh / (array.availableKWh || 1))} of what the array offered${refused.sentence}`;
  const throttling =
    throttle.firstDate === null || throttle.lastDate === null
      ? throttle.kWh < 0.5
        ? 'The charger never throttles for a full bank.'
        : `The charger throttles for a full bank on single days only: ${thrown}.`
      : `The bank is ${refused.bank} and the charger throttles ${throttlingWhen(throttle)}: ${thrown}.`;
  // Without an engine the first sentence has it.
  const dark = !result.site.generator ? '' : load.darkKWh === 0 ? 'No load stays dark.' : `${darkText(load)}.`;
  const trust = weatherLine(result.weather.judgement ?? null);
  const sentences = [stopText(result, units), engine, throttling, dark].filter((sentence) => sentence !== '');
  return [...(trust === '' ? [] : [trust]), ...sentences.map((sentence) => wrap(sentence))].join('\n');
}

function engineSentence(result: YearResult, units: UnitSystem, common: CommonAnswer | undefined): string {
  const { summary, site } = result;
  if (!site.generator) return darkSentence(result, common);
  const { generator } = summary;
  const fuel = volumeText(generator.fuelLitres, units);
  const cost =
    generator.fuelCost === null ? '' : `, which costs ${amountText(generator.fuelCost, site.costs?.currency)}`;
  const run = `${figure(generator.hours)} h in ${count(generator.starts, 'start')} and burns ${fuel} of ${site.generator.fuel.kind}${cost}`;
  const own = common?.designs[0];
  if (!common || !own || common.weather.count < 2) {
    if (generator.starts === 0) return `${site.name}: the generator never runs.`;
    return `${site.name}: the generator runs ${run}.`;
  }
  if (own.ranked.generatorHours.worst === 0 && generator.starts === 0) {
    return `${site.name}: the generator never runs, in none of ${yearsInWords(common.weather)} nor in the file's.`;
  }
  const thisYear = generator.starts === 0 ? 'it never runs' : `it runs ${run}`;
  return `${site.name}: the generator runs ${usualAndBad(own)} (${yearsInWords(common.weather)}); in the year of the file ${thisYear}.${outsideInWords(generator.hours, own)}`;
}

/** Of a place without an engine: how much load stays dark, in the common years and in the file's. */
function darkSentence(result: YearResult, common: CommonAnswer | undefined): string {
  const { name } = result.site;
  const { load } = result.summary;
  const share = load.darkKWh / (monthFigures(result).year.loadKWh || 1);
  const ofFile =
    load.darkKWh === 0 ? 'no load stays dark' : `${inSentence(darkText(load))}, ${percent(share)} of the load`;
  const own = common?.designs[0];
  if (!common || !own || common.weather.count < 2) return `${name}: ${ofFile}; there is no generator.`;
  const years = yearsInWords(common.weather);
  if (own.ranked.darkKWh.worst === 0 && load.darkKWh === 0) {
    return `${name}: no load stays dark, in none of ${years} nor in the file's; there is no generator.`;
  }
  return `${name}: ${usualBadAndWorstDark(own)} (${years}); in the year of the file ${ofFile}. There is no generator.`;
}

const inSentence = (text: string) => `${text[0]!.toLowerCase()}${text.slice(1)}`;

/** A sentence on a file's year that none of the common years is like. */
function outsideInWords(fileHours: number, { hoursOfYears }: CommonFigures): string {
  const least = Math.min(...hoursOfYears);
  const most = Math.max(...hoursOfYears);
  if (fileHours > most + 0.05) return ` That is more than in any of the others, ${figure(most)} h at most.`;
  if (fileHours < least - 0.05) return ` That is less than in any of the others, ${figure(least)} h at least.`;
  return '';
}

function monthsTable(result: YearResult, units: UnitSystem): string {
  const { months, year } = monthFigures(result);
  const scale = monthEnergyScale(largestEnergy(months));
  const orDash = (value: number, text: (value: number) => string = figure) => (value === 0 ? '-' : text(value));
  const energy = (kWh: number) => scale.textOf(kWh * 1000);
  const dark = year.darkKWh > 0;
  const engine = result.site.generator !== null && result.site.generator !== undefined;
  const row = (name: string, month: MonthFigures) => [
    name,
    figure(month.planeKWhPerM2, 0),
    energy(month.availableKWh),
    energy(month.usedKWh),
    Number(energy(month.thrownKWh)) === 0 ? '-' : energy(month.thrownKWh),
    energy(month.loadKWh),
    ...(dark ? [Number(energy(month.darkKWh)) === 0 ? '-' : energy(month.darkKWh)] : []),
    ...(engine
      ? [
          orDash(month.engineHours),
          orDash(month.starts, (starts) => figure(starts, 0)),
          orDash(inVolumeUnit(month.fuelLitres, units)),
        ]
      : []),
    percent(month.lowestCharge),
  ];
  const { unit } = scale;
  const columns = (one: string[], ofDark: string, ofEngine: string[], last: string) => [
    ...one,
    ...(dark ? [ofDark] : []),
    ...(engine ? ofEngine : []),
    last,
  ];
  const head = columns(
    ['', 'plane', 'array', 'used', 'thrown', 'load'],
    'dark',
    ['engine', 'starts', 'fuel'],
    'lowest',
  );
  const unitRow = columns(['', 'kWh/m2', unit, unit, unit, unit], unit, ['h', '', volumeUnit(units)], 'charge');
  const rows = [unitRow, ...months.map((month, m) => row(monthNames[m]!, month)), row('Year', year)];
  // All eleven columns fit the page closer together.
  return plainTable(head, rows, dark && engine ? 1 : 2);
}

function bankText(result: YearResult, units: UnitSystem): string {
  const { summary, ledger, plant } = result;
  const { bank } = summary;
  const facts = bankFacts(result);
  const wholeKWh = plant.bank.storedWh(1) / 1000;
  // One decimal in both where one of them has it: 9.5 of 10.5, not of 10.
  const digits = bank.usableKWh < 99.5 ? 1 : 0;
  const darkMonth = monthInWords(summary.darkSeason.month);
  const lowestHour = ledger.lowestStateOfCharge.indexOf(Math.min(...ledger.lowestStateOfCharge));
  const temperature = (celsius: number) => temperatureText(celsius, units);
  const dateOfHour = (hour: number) => dateText(dateOfDay(Math.floor(hour / 24)));
  const { coldest, autonomy, dullRun, wear, longestSinceFull } = facts;
  const lost =
    coldest.unreachableWh > 50
      ? `; ${energyText(coldest.unreachableWh / 1000)} cannot be drawn while it is so cold`
      : '';
  const { freezing } = facts;
  const margin =
    freezing && freezing.marginK > 0
      ? `; at the nearest ${temperatureDifferenceText(freezing.marginK, units)} above freezing, on ${dateOfHour(freezing.hour)}`
      : '';
  const water = facts.waterL > 0.05 ? `, ${formatQuantity(facts.waterL, 'volume', units, 2)} of water` : '';
  return labelled('Bank', [
    wholeKWh < 2
      ? `${energyText(bank.usableKWh)} usable of ${energyText(wholeKWh)}`
      : `${figure(bank.usableKWh, digits)} kWh usable of ${figure(wholeKWh, digits)}`,
    `carries the ${darkMonth} load ${figure(autonomy.fromFull)} days without sun from full, ${figure(autonomy.fromTypical)} from ${darkMonth}'s mean of ${percent(autonomy.typicalState)}`,
    `lowest ${percent(bank.minStateOfCharge)} on ${dateOfHour(lowestHour)}, mean ${percent(bank.meanStateOfCharge)}; at most ${figure(bank.longestDaysBelowHalf)} days below half`,
    `longest without a full charge ${count(longestSinceFull.days, 'day')}, to ${dateText(dateOfDay(longestSinceFull.endDay))}; ${count(dullRun.days, 'dull day')} in a row`,
    `coldest ${temperature(coldest.bankC)} on ${dateOfHour(coldest.hour)}, ${temperature(coldest.outdoorLowestC)} outdoors that day${lost}${margin}; warmest ${temperature(bank.maxTemp)}`,
    `${figure(bank.chargeKWh)} kWh in, ${figure(bank.dischargeKWh)} kWh out, ${figure(bank.fullCycles)} full cycles${water}; about ${figure(wear.yearsTo80)} years to 80 %`,
  ]);
}

/** Lines under a label in the margin, each wrapped and hung. */
function labelled(label: string, lines: readonly string[]): string {
  const margin = ' '.repeat(8);
  return lines
    .map((line) => wrap(line, 72, '  ').split('\n').join(`\n${margin}`))
    .map((line, i) => (i === 0 ? label.padEnd(8) : margin) + line)
    .join('\n');
}

const snowSources = {
  depth: 'snow as the depths of the weather say',
  precipitation: 'snow built from precipitation and air',
  'snow.days': 'snow by snow.days of the site file',
};

/** What the weather of the year is worth, and what was not in it. */
function weatherText({ summary: { weather } }: YearResult): string {
  const snow = weather.snowFrom === null ? 'nothing tells of snow, so none lies' : snowSources[weather.snowFrom];
  const mended = weather.mendedHours === 0 ? '' : `; ${figure(weather.mendedHours, 0)} hours not measured but mended`;
  return labelled('Weather', [`${weather.verdictLine ?? weather.source}; ${snow}${mended}`]);
}

function energyLines({ summary, ledger }: YearResult): string {
  const kWh = (column: Float64Array) => figure(yearSum(column) / 1000);
  const { array, load, generator } = summary;
  const clipped = array.clippedKWh > 0.5 ? `, ${figure(array.clippedKWh)} more with a larger controller` : '';
  return labelled('Energy', [
    `sun ${figure(array.usedKWh)} kWh used of ${figure(array.availableKWh)} offered by ${figure(array.ratedKW)} kW${clipped}`,
    `engine ${figure(generator.toBusKWh)} kWh; load ${figure(load.acKWh)} kWh AC and ${figure(load.dcKWh)} kWh DC`,
    `lost: bank ${kWh(ledger.bankLossWh)}, self-discharge ${kWh(ledger.selfDischargeWh)}, inverter ${kWh(ledger.inverterLossWh)}, charger ${kWh(ledger.chargerLossWh)}, drives, controllers and heater ${kWh(ledger.ownUseWh)} kWh`,
    `in every hour energy in = out + lost + kept${summary.ledger.worstHourImbalanceKWh < 1e-6 ? ', to less than 0.001 Wh' : ` to ${energyText(summary.ledger.worstHourImbalanceKWh)}`}`,
  ]);
}

function takenText({ site }: YearResult, units: UnitSystem): string {
  const taken = takenAs(site, units);
  if (taken.length === 0) return '';
  return wrap(`${takenHeading}: ${taken.map(({ text }) => text).join(', ')}.`, 80, '  ');
}

/** What the first lines have not said already: the weather's cautions, and the limit that stands in the STOP, are there. */
function cautionsText({ summary, limits }: YearResult, units: UnitSystem): string {
  const [stop] = exceededLimits(limits);
  const others = summary.cautions.filter(
    ({ code, text }) => code !== stop?.code || !text.startsWith(saidOfLimit(stop)),
  );
  if (others.length === 0) return '';
  return ['Cautions', ...others.map(({ text }) => wrap(`  ${inShownUnits(text, units)}`, 80, '    '))].join('\n');
}
