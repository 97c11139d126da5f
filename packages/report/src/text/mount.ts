import { monthNames } from '@wintergap/ground';
import type { MountRow, MountStudy } from '@wintergap/study';
import { hoursDifferenceInWords, namesInWords, usualAndBad, yearsInWords } from '../words/common-words.js';
import { figure, wrap } from '../words/figures.js';
import { costAgainstInWords, moneyText, moneyUnit } from '../words/money.js';
import { plainTable } from './parts/plain-table.js';
import { rangeLines } from './parts/range-lines.js';

/** Fixed or pole: the ways to mount an array side by side, 80 columns, answer first. */
export function mountText(study: MountStudy): string {
  return [headline(study), picture(study), table(study), lightTable(study), footnote(study)]
    .filter((part) => part !== '')
    .join('\n\n');
}

function headline(study: MountStudy): string {
  const { siteName, array, rows, answer } = study;
  const who = `${siteName}, ${array}:`;
  const [fixed] = rows;
  const pole = rows.find(({ name }) => name === 'pole');
  if (!fixed || !pole) return '';
  if (answer.merit !== 'generatorHours') {
    const dark = ({ figures }: MountRow) => figure(figures.darkKWh.mean);
    return wrap(`${who} no engine runs; ${dark(fixed)} kWh stay dark ${fixed.name}, ${dark(pole)} on a pole.`);
  }
  const verdict = pole.againstFixed?.verdict;
  const first =
    verdict === 'less'
      ? `${who} a pole that follows the sun runs the engine ${usualAndBad(pole.figures)}, ${hoursDifferenceInWords(pole.againstFixed!)} against the best fixed mount, ${fixed.name.replace('fixed at ', '')} degrees`
      : `${who} fixed at ${fixed.name.replace('fixed at ', '')} degrees does as well as a pole, ${usualAndBad(fixed.figures)}: ${hoursDifferenceInWords(pole.againstFixed!)}`;
  const sentences = [`${first} (${yearsInWords(answer.weather)}).`];
  sentences.push(
    answer.leaders.length === 0
      ? 'The design exceeds a limit on every mount, so none is recommended.'
      : `Best, beyond chance: ${namesInWords(answer.leaders)}.`,
  );
  const more = study.moreFixed;
  if (more) {
    sentences.push(
      `${figure(more.moreKW, 1)} kW more of fixed modules, ${figure((more.scale - 1) * 100, 0)} % more, would do what "${more.than}" does.`,
    );
  }
  const snow = snowSentence(study);
  if (snow !== '') sentences.push(snow);
  sentences.push(...moneySentences(study, pole));
  return sentences.map((sentence) => wrap(sentence)).join('\n');
}

/** What a pole may cost, and where mounts have prices which design is the cheaper. */
function moneySentences({ rows, years, currency }: MountStudy, pole: MountRow): string[] {
  const money = currency ?? undefined;
  if (pole.worth === null || years === null) return [];
  const over = `over ${years} years`;
  const worth =
    pole.worth > 0
      ? `A pole may cost up to ${moneyText(pole.worth, money)} more than the fixed mount ${over}, its upkeep and repair included: that is the fuel, service and engine wear it saves.`
      : `A pole saves no fuel or engine wear that it could be paid from.`;
  const priced = rows.flatMap(({ name, kind, price, costAgainstFixed }) =>
    costAgainstFixed && price !== null && kind !== 'fixed'
      ? [costAgainstInWords(`At its price "${name}"`, `"${rows[0]!.name}"`, costAgainstFixed, years, money)]
      : [],
  );
  return [worth, ...priced];
}

/** Whether snow turns the answer. */
function snowSentence({ snow }: MountStudy): string {
  if (!snow) return '';
  if (snow.steady.length > 0) return `Whatever snow does to the array: ${namesInWords(snow.steady)}.`;
  return `Snow decides: ${namesInWords(snow.none.leaders)} where it never lies on the array, ${namesInWords(snow.full.leaders)} where it covers it whole.`;
}

function picture({ rows, answer }: MountStudy): string {
  if (answer.merit !== 'generatorHours' || answer.weather.count < 2) return '';
  const lines = rows.map(({ name, figures }) => ({ name, values: figures.hoursOfYears }));
  return `Engine hours a year\n${rangeLines(lines, 'h')}`;
}

function table({ rows, answer, currency }: MountStudy): string {
  if (answer.merit !== 'generatorHours') return '';
  const priced = rows.some(({ worth }) => worth !== null);
  const cells = rows.map(({ name, figures, againstFixed, stuckHours, worth }) => [
    name,
    figure(figures.ranked.generatorHours.usual.value),
    figure(figures.ranked.generatorHours.oneInTen.value),
    figure(figures.generatorHours.mean),
    againstFixed ? against(againstFixed) : '',
    stuckHours === null ? '-' : figure(stuckHours),
    ...(priced ? [worth === null ? '' : figure(Math.max(0, worth), 0)] : []),
  ]);
  return plainTable(
    ['Engine', 'usual', '1 in 10', 'mean', 'against fixed', 'stuck', ...(priced ? ['worth'] : [])],
    [['', 'h', 'h', 'h', 'h', 'h', ...(priced ? [moneyUnit(currency ?? undefined)] : [])], ...cells],
  );
}

function against({ mean, low, high, verdict }: NonNullable<MountRow['againstFixed']>): string {
  if (verdict === 'none') return 'no difference';
  const sign = mean < 0 ? '-' : '+';
  const reach = low === null || high === null ? '' : ` +/- ${figure((high - low) / 2)}`;
  return `${sign}${figure(Math.abs(mean))}${reach}`;
}

function lightTable({ rows, darkMonths }: MountStudy): string {
  const months = darkMonths.map((month) => monthNames[month - 1]).join(' ');
  const [fixed] = rows;
  const more = (row: MountRow, of: (row: MountRow) => number) => {
    const share = of(row) / (of(fixed!) || 1) - 1;
    return row === fixed ? '' : `${share < 0 ? '-' : '+'}${figure(Math.abs(share) * 100, 0)} %`;
  };
  return plainTable(
    ['Light on the cells', 'year', 'against', months, 'against'],
    [
      ['', 'kWh/m2', 'fixed', 'kWh/m2', 'fixed'],
      ...rows.map((row) => [
        row.name,
        figure(row.yearKWhM2, 0),
        more(row, ({ yearKWhM2 }) => yearKWhM2),
        figure(row.darkMonthsKWhM2, 0),
        more(row, ({ darkMonthsKWhM2 }) => darkMonthsKWhM2),
      ]),
    ],
  );
}

const footnote = ({ answer, darkMonths, rows, years }: MountStudy): string =>
  wrap(
    `The same modules on each mount over ${yearsInWords(answer.weather)}; +/- is the range it is sure to lie in, 9 in 10. Stuck: mean hours with the mount held still from ${monthNames[darkMonths[0]! - 1]} to ${monthNames[darkMonths.at(-1)! - 1]}, facing the equator. Light: the file's year, after skyline, glass, snow and dirt.${rows.some(({ worth }) => worth !== null) ? ` Worth: what the mount may cost more than the fixed one over ${years} years, upkeep and repair included, at today's value; the engine's fuel, service and wear that it saves.` : ''}`,
  );
