import type { UnitSystem } from '@wintergap/quantity';
import type { CommonAnswer, CommonFigures, SnowRange } from '@wintergap/study';
import type { NamedYear } from '../../text/compare.js';
import { costRows, costsKnown } from '../../text/parts/cost.js';
import { hoursDifferenceInWords, namesInWords, yearsInWords } from '../../words/common-words.js';
import { designParts, partsApart } from '../../words/design-parts.js';
import { figure } from '../../words/figures.js';
import { moneyUnit } from '../../words/money.js';
import { section } from '../sheet/frame.js';
import { html, type Markup } from '../sheet/markup.js';
import { wordsTable } from '../sheet/table.js';
import type { PricedDesigns } from './costs.js';

/** The designs against each other: what each changes, what it brings, and how it stands to the others. */
export function choiceSection(
  designs: readonly NamedYear[],
  answer: CommonAnswer,
  units: UnitSystem,
  costs: PricedDesigns | null,
  snow: SnowRange | null,
): Markup {
  const base = designParts(designs[0]!.result, units);
  const many = answer.weather.count > 1;
  const against = costs !== null && costsKnown(costs.designs) ? costRows(costs.designs).map((row) => row[5]!) : [];
  // Nothing can be told of two designs that differ in things without a price.
  const priced = against.some((cell) => cell !== '') ? against : null;
  const heads = [
    'Design',
    'What it changes',
    ...(many ? ['Engine, usual and bad year', 'Against the base'] : []),
    ...(priced ? [`Cost against the base, ${moneyUnit(costs!.terms.currency)}`] : []),
    ...(many ? ['How it stands'] : []),
  ];
  const rows = designs.map(({ name, result }, d) => {
    const apart = d === 0 ? [] : partsApart(base, designParts(result, units));
    const changes = apart.map(({ name: part, text }) => html`<li>${part}: ${text}</li>`);
    const figures = answer.designs[d]!;
    const hours = figures.againstBase?.generatorHours;
    return [
      answer.leaders.includes(name) && many ? html`<strong>${name}</strong>` : name,
      changes.length > 0 ? html`<ul class="changes">${changes}</ul>` : d === 0 ? 'the base' : 'loads or habits only',
      ...(many ? [usualAndBad(figures), hours ? hoursDifferenceInWords(hours) : ''] : []),
      ...(priced ? [d > 0 && priced[d] === '' ? 'prices missing' : priced[d]!] : []),
      ...(many ? [standing(name, answer, snow)] : []),
    ];
  });
  return section(
    'choice',
    'Which design, and why?',
    wordsTable(
      many ? `The designs over ${yearsInWords(answer.weather)}, the same for each` : 'What each design changes',
      heads,
      rows,
    ),
  );
}

const usualAndBad = ({ ranked: { generatorHours } }: CommonFigures) =>
  `${figure(generatorHours.usual.value)} h; one year in ten ${figure(generatorHours.oneInTen.value)} h or more`;

/** A tie is named as one, and a design over a limit never leads. */
function standing(name: string, { leaders, leftOut, beatenBy }: CommonAnswer, snow: SnowRange | null): string {
  if (leftOut.includes(name)) return 'not to be built so: it exceeds a limit';
  if (leaders.includes(name)) {
    const best = leaders.length === 1 ? 'best' : 'among the best, which chance does not tell apart';
    return snow && !snow.steady.includes(name) ? `${best}, with the snow of the site file only` : best;
  }
  const better = beatenBy[name] ?? [];
  return better.length === 0 ? 'not told apart from the best' : `beyond chance worse than ${namesInWords(better)}`;
}
