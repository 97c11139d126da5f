import type { UnitSystem } from '@wintergap/quantity';
import type { WeatherReport } from '@wintergap/weather';
import { exceededLimits, saidOfLimit, type YearResult } from '@wintergap/year';
import { count, wrap } from '../words/figures.js';
import { inShownUnits } from '../words/shown-units.js';
import { bankAirText } from './parts/bank-air.js';

/** One design and its year, to be checked. */
export interface CheckedDesign {
  name: string;
  result: YearResult;
}

/** What every check ends with. */
export const safetyNotice =
  'Batteries store lethal short-circuit current, vent hydrogen and can freeze; engines make carbon monoxide; arrays are live whenever it is light, and DC arcs do not put themselves out. These figures are estimates for planning: installation follows the local electrical, fire and gas codes and is done or checked by licensed people.';

/** Number of things that must be changed, over all designs and the weather. */
export function problemsFound(weather: WeatherReport, designs: readonly CheckedDesign[]): number {
  const limits = designs.flatMap(({ result }) => exceededLimits(result.limits));
  return limits.length + (weather.verdict === 'rejected' ? 1 : 0);
}

/** The checks of a site file as a page of text, 80 columns, answer first. */
export function checkText(
  file: string,
  weather: WeatherReport,
  designs: readonly CheckedDesign[],
  units: UnitSystem,
): string {
  const problems = problemsFound(weather, designs);
  const parts = [
    wrap(
      problems === 0
        ? `${file}: readable, and no calculated limit is exceeded in ${count(designs.length, 'design')}.`
        : `${file}: ${count(problems, 'problem')} to be changed before anything is bought or wired.`,
    ),
    weatherPart(weather, units),
    ...designs.map((design, i) => designPart(design, i === 0 ? [] : textsOf(designs[0]!.result), units)),
    wrap(safetyNotice),
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

function weatherPart(report: WeatherReport, units: UnitSystem): string {
  const lines = report.notices
    .filter(({ level }) => level !== 'note')
    .map(({ level, text }) => wrap(`  ${level}: ${inShownUnits(text, units)}`, 80, '    '));
  return [wrap(`Weather  ${report.line}`, 80, '         '), ...lines].join('\n');
}

const marks = { ok: 'ok  ', note: 'note', exceeded: 'STOP' };

const textsOf = (result: YearResult) => [...result.limits.map(saidOfLimit), bankAirText(result) ?? ''];

/** One design; lines that the base has word for word are not said again, unless something must be changed. */
function designPart({ name, result }: CheckedDesign, said: readonly string[], units: UnitSystem): string {
  const limits = result.limits
    .filter((limit) => limit.level === 'exceeded' || !said.includes(saidOfLimit(limit)))
    .map((limit) => {
      const repeated = said.includes(saidOfLimit(limit)) ? 'as base: ' : '';
      return wrap(`  ${repeated}${marks[limit.level]} ${inShownUnits(saidOfLimit(limit), units)}`, 80, '       ');
    });
  const air = [bankAirText(result)]
    .filter((text): text is string => text !== null && !said.includes(text))
    .map((text) => wrap(`  note bank: ${inShownUnits(text, units)}`, 80, '       '));
  const cautions = result.summary.cautions
    .filter(({ code }) => !code.startsWith('weather-') && !result.limits.some((limit) => limit.code === code))
    .map(({ text }) => wrap(`  note ${inShownUnits(text, units)}`, 80, '       '));
  const lines = [...limits, ...air, ...cautions];
  return lines.length === 0 ? '' : [`Design   ${name}`, ...lines].join('\n');
}
