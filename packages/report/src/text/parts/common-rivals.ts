import type { CommonRivals } from '@wintergap/study';
import { hoursDifferenceInWords, namesInWords, yearsInWords } from '../../words/common-words.js';
import { figure, wrap } from '../../words/figures.js';

/** What the rivals of a seasonal store save over common years: each with its range, ties named as ties. */
export function commonRivalsText({ common, snow }: CommonRivals): string {
  const { merit } = common;
  const [what, unit] = merit === 'generatorHours' ? ['engine hours', 'h'] : ['dark load', 'kWh'];
  const [base, ...rivals] = common.designs;
  if (!base) return '';
  const lead =
    common.leaders.length === 1
      ? `${namesInWords(common.leaders)} saves most`
      : `${namesInWords(common.leaders)} are best and equal as far as these years can show`;
  const lines = rivals.map(({ name, againstBase }) =>
    wrap(`${name}: ${hoursDifferenceInWords(againstBase![merit], unit)}`, 80, '  '),
  );
  const turns =
    snow && snow.steady.length === 0
      ? wrap(
          `Snow decides between them: ${namesInWords(snow.none.leaders)} where it never lies on an array, ${namesInWords(snow.full.leaders)} where it covers them whole.`,
        )
      : '';
  const title = wrap(
    `The rivals over ${yearsInWords(common.weather)}, ${what} against ${figure(base[merit].mean)} ${unit} on the mean: ${lead}.`,
  );
  return [title, turns, ...lines].filter((part) => part !== '').join('\n');
}
