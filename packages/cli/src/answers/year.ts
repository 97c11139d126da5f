import { dayOfDate } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import {
  dayText,
  headline,
  ledgerCsv,
  lossesText,
  monthsCsv,
  worstText,
  yearCalendar,
  yearHtml,
  yearText,
} from '@wintergap/report';
import { readCosts } from '@wintergap/seasonal';
import { changedDesign, designOf, inputFiles, type SiteFile, takenAs } from '@wintergap/site';
import { type CommonAnswer, comparedCosts, type LeaveOff, leaveOff } from '@wintergap/study';
import { contractOf } from '@wintergap/tally';
import {
  arrayLosses,
  PreparedCache,
  simulateSite,
  usualSpellDays,
  type WorstSpell,
  worstSpell,
  type YearResult,
} from '@wintergap/year';
import { commonJson, commonYearsOf } from '../common-years.js';
import { InputError } from '../input-error.js';
import type { AcceptWeather } from '../options/accept-weather.js';
import type { CommonYearsOptions } from '../options/common-years-options.js';
import { unitsOption } from '../options/units-option.js';
import { wholeOption } from '../options/whole-option.js';
import { checkOutputs } from '../output/output-place.js';
import { print } from '../output/print.js';
import { withTrust } from '../output/weather-trust.js';
import { writeWhole } from '../output/whole-file.js';
import { writtenFrom } from '../output/written-from.js';

export interface YearOptions extends CommonYearsOptions, AcceptWeather {
  variant?: string;
  json?: boolean;
  csv?: string;
  html?: string;
  monthsCsv?: string;
  calendar?: string;
  quiet?: boolean;
  day?: string;
  losses?: boolean;
  worst?: boolean;
  days?: string;
  age?: string;
  units?: string;
}

export async function answerYear(site: SiteFile, options: YearOptions): Promise<void> {
  const design = designOf(site, options.variant);
  const aged = options.age === undefined ? design : agedDesign(site, options.age, options.variant);
  const units = unitsOption(options.units, design.units);
  const day = options.day === undefined ? null : dayOption(options.day);
  refuseTogether(options);
  const { csv, html, monthsCsv: months, calendar } = options;
  checkOutputs({ '--csv': csv, '--html': html, '--months-csv': months, '--calendar': calendar }, inputFiles(site));
  const spellDays = daysOption(options);
  const prepared = new PreparedCache();
  const result = simulateSite(aged, prepared);
  const spell = options.worst ? worstSpell(result, spellDays) : null;
  const worst = spell && { spell, leaveOff: leaveOff(result, spell) };
  if (options.csv) writeWhole(options.csv, ledgerCsv(result.ledger), inputFiles(site));
  // A day, and where the energy goes, are those of the file's year: nothing more is run for them.
  const common =
    html || months || calendar || (!options.losses && day === null && (worst === null || options.json))
      ? await commonYearsOf([{ name: options.variant ?? 'base', result }], options, prepared)
      : undefined;
  if (options.html) {
    writeWhole(
      options.html,
      await yearHtml(result, units, pageSettings(site, result, common!, options)),
      inputFiles(site),
    );
  }
  if (months) writeWhole(months, monthsCsv(result, units, common), inputFiles(site));
  if (calendar && common) writeWhole(calendar, await yearCalendar(result, common, units), inputFiles(site));
  if (options.losses) printLosses(result, options.json, units);
  else if (day !== null) print(`${withTrust(result.weather.judgement, dayText(result, day, units))}\n`);
  else if (options.json) print(`${yearJson(result, common!, worst)}\n`);
  else if (worst) {
    const text = worstText(result, worst.spell, worst.leaveOff, units);
    print(`${withTrust(result.weather.judgement, text)}\n`);
  } else print(`${(options.quiet ? headline : yearText)(result, units, common)}\n`);
}

function pageSettings(site: SiteFile, result: YearResult, common: CommonAnswer, { variant }: YearOptions) {
  const costs = readCosts(site);
  const designs = [{ name: variant ?? 'base', result }];
  return {
    ...(variant !== undefined && { variant }),
    common,
    costs: costs && {
      designs: comparedCosts(designs, common, costs),
      terms: { years: costs.years, currency: result.site.costs?.currency },
    },
    written: writtenFrom(site),
  };
}

function yearJson(
  result: YearResult,
  common: CommonAnswer,
  worst: { spell: WorstSpell; leaveOff: LeaveOff } | null,
): string {
  const document = {
    ...contractOf(result.summary),
    takenAs: takenAs(result.site),
    common: commonJson(common, common.designs[0]!),
    ...(worst && { worst: { ...worst.spell, leaveOff: worst.leaveOff } }),
  };
  return JSON.stringify(document, null, 2);
}

function printLosses(result: YearResult, asJson: boolean | undefined, units: UnitSystem): void {
  const losses = arrayLosses(result);
  if (!asJson) print(`${withTrust(result.weather.judgement, lossesText(result.site.name, losses, units))}\n`);
  else {
    // Monthly arrays as lists, not as mappings of twelve numbered keys.
    const asList = (_key: string, value: unknown) => (value instanceof Float64Array ? Array.from(value) : value);
    print(`${JSON.stringify(losses, asList, 2)}\n`);
  }
}

function agedDesign(site: SiteFile, years: string, variant: string | undefined) {
  if (!(Number(years) >= 0 && Number(years) <= 60)) {
    throw new InputError(`--age ${years}: expected the bank's age in years, 0 to 60`);
  }
  return changedDesign(site, { 'bank.age': `${Number(years)} years` }, variant);
}

/** Each of these is an answer of its own. */
function refuseTogether({ day, worst, losses, json }: YearOptions): void {
  const asked = [day !== undefined && '--day', worst && '--worst', losses && '--losses'].filter((one) => one);
  if (asked.length > 1) throw new InputError(`${asked.join(' and ')}: expected one of them`);
  if (day !== undefined && json)
    throw new InputError('--day and --json: expected one of them; --csv writes every hour');
}

function daysOption({ worst, days }: YearOptions): number {
  if (days === undefined) return usualSpellDays;
  if (!worst) throw new InputError('--days goes with --worst');
  return wholeOption('--days', days, 1, 60);
}

function dayOption(date: string): number {
  const day = dayOfDate(date);
  if (day === null) throw new InputError(`--day ${date}: expected a date as MM-DD, such as 12-21`);
  return day;
}
