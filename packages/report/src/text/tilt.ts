import { dateOfDay, monthNames } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import type { BestTilts, EngineTilts, TiltAim, TiltChoice, TiltSpan } from '@wintergap/study';
import { yearsInWords } from '../words/common-words.js';
import { figure, wrap } from '../words/figures.js';
import { inVolumeUnit, volumeUnit } from '../words/shown-units.js';
import { plainTable } from './parts/plain-table.js';

const aims: readonly TiltAim[] = ['year', 'dark months'];

/** The best tilts of an array, 80 columns, answer first. */
export function tiltText(tilts: BestTilts, units: UnitSystem): string {
  return [headline(tilts), engineTable(tilts), table(tilts, 'one', units), table(tilts, 'two', units), footnote(tilts)]
    .filter((part) => part !== '')
    .join('\n\n');
}

function headline(tilts: BestTilts): string {
  const { siteName, array, asDesigned, best, engine, weather } = tilts;
  const who = `${siteName}, ${array}:`;
  if (!runsEngine(tilts)) {
    const [dark, bright] = best['dark months'].two.tilts;
    return wrap(
      `${who} the engine never runs. Most light of the dark months at a tilt of ${best['dark months'].one.tilts[0]!.tiltDeg}; with two tilts, ${dark!.tiltDeg} from ${shortDay(dark!.fromDay)} and ${bright!.tiltDeg} from ${shortDay(bright!.fromDay)}.`,
    );
  }
  const { one, dark } = engine;
  const { bright } = dark;
  const designed = `${figure(asDesigned.engine.ranked.generatorHours.usual.value)} h in a usual year as designed`;
  return [
    `${who} with one tilt all year, ${spanSentence(one)}.`,
    `With ${bright.tiltDeg} from ${shortDay(bright.fromDay)}, the steep tilt from ${shortDay(dark.from)}: ${spanSentence(dark)}; ${designed} (${yearsInWords(weather)}).`,
    ...[snowSentence('One tilt', one), snowSentence('The steep of two tilts', dark)].filter((text) => text !== ''),
  ]
    .map((sentence) => wrap(sentence))
    .join('\n');
}

/** `60 to 75 are equal, 45 to 46 h in a usual year; choose 68, as designed`. */
function spanSentence({ tried, equal, choose, snow }: EngineTilts): string {
  const within = tried.filter(({ tiltDeg }) => tiltDeg >= equal.fromDeg && tiltDeg <= equal.toDeg);
  const hours = within.map(({ usualHours }) => usualHours);
  const usual = `${rangeText(figure(Math.min(...hours)), figure(Math.max(...hours)))} h in a usual year`;
  const bottom =
    equal.fromDeg === equal.toDeg
      ? `${equal.fromDeg} has the fewest engine hours, ${usual}`
      : `${equal.fromDeg} to ${equal.toDeg} are equal for the engine, ${usual}`;
  if (snow && !snow.steady) return bottom;
  const why = choose.reason === 'as designed' ? 'as designed' : 'the most light of the dark months among them';
  return equal.fromDeg === equal.toDeg ? bottom : `${bottom}; choose ${choose.tiltDeg}, ${why}`;
}

/** What snow does to the choice: nothing, or it decides, and then no tilt is named. */
function snowSentence(what: string, { snow }: EngineTilts): string {
  if (!snow) return '';
  const none = spanText(snow.none);
  const full = spanText(snow.full);
  if (snow.steady) return `${what}: ${spanText(snow.steady)} stand whatever snow does to the array.`;
  const from = Math.min(snow.none.fromDeg, snow.full.fromDeg);
  const to = Math.max(snow.none.toDeg, snow.full.toDeg);
  return `${what}: snow decides, anywhere from ${from} to ${to}; ${none} where it never lies on the array, ${full} where it covers it whole.`;
}

const spanText = ({ fromDeg, toDeg }: TiltSpan) => rangeText(`${fromDeg}`, `${toDeg}`);
const rangeText = (from: string, to: string) => (from === to ? from : `${from} to ${to}`);

const runsEngine = ({ asDesigned, engine }: BestTilts): boolean =>
  asDesigned.engine.generatorHours.mean > 0 || engine.one.tried.some(({ hours }) => hours.mean > 0);

/** Engine hours by tilt; `=` marks what chance does not tell apart from the least. */
function engineTable(tilts: BestTilts): string {
  if (!runsEngine(tilts)) return '';
  const { one, dark } = tilts.engine;
  const rows = (of: EngineTilts, label: string) =>
    of.tried.map(({ tiltDeg, usualHours, oneInTenHours, hours, againstLeast }, i) => [
      i === 0 ? label : '',
      `${tiltDeg}`,
      figure(usualHours),
      figure(oneInTenHours),
      figure(hours.mean),
      againstLeast.verdict === 'none'
        ? '='
        : `+${figure(againstLeast.mean)}${againstLeast.low === null || againstLeast.high === null ? '' : ` +/- ${figure((againstLeast.high - againstLeast.low) / 2)}`}`,
    ]);
  return plainTable(
    ['Engine hours', 'tilt', 'usual', '1 in 10', 'mean', 'above the least'],
    [['', '', 'h', 'h', 'h', 'h'], ...rows(one, 'one tilt all year'), ...rows(dark, 'steep of two tilts')],
  );
}

function table({ asDesigned, best, darkMonths }: BestTilts, how: 'one' | 'two', units: UnitSystem): string {
  const months = darkMonths.length <= 4 ? darkMonths.map((month) => monthNames[month - 1]).join(' ') : 'those months';
  const labels: Record<TiltAim, string> = { year: 'for the year', 'dark months': `for ${months}` };
  const columns = how === 'one' ? 1 : 4;
  const settings = (choice: TiltChoice) => {
    const { tilts } = choice;
    if (columns === 1) return [tilts.length === 1 ? `${tilts[0]!.tiltDeg}` : '-'];
    const [steep, flat] = steeperFirst(tilts);
    if (tilts.length !== 2 || !steep || !flat) return ['-', '-', '-', '-'];
    return [`${steep.tiltDeg}`, shortDay(steep.fromDay), `${flat.tiltDeg}`, shortDay(flat.fromDay)];
  };
  const row = (label: string, choice: TiltChoice) => [
    label,
    ...settings(choice),
    figure(choice.yearKWhM2),
    figure(choice.darkMonthsKWhM2),
    figure(choice.engine.generatorHours.mean),
    figure(inVolumeUnit(choice.engine.fuelLitres.mean, units)),
  ];
  return plainTable(
    [
      how === 'one' ? 'Most light, one tilt' : 'Most light, two tilts',
      ...(how === 'one' ? ['tilt'] : ['steep', 'set on', 'flat', 'set on']),
      'light',
      'dark',
      'engine',
      'fuel',
    ],
    [
      ['', ...Array.from({ length: columns }, () => ''), 'kWh/m2', 'kWh/m2', 'h', volumeUnit(units)],
      row('as designed', asDesigned),
      ...aims.map((aim) => row(labels[aim], best[aim][how])),
    ],
  );
}

/** As designed the flatter tilt may be written first. */
const steeperFirst = (tilts: TiltChoice['tilts']) => [...tilts].sort((one, other) => other.tiltDeg - one.tiltDeg);

const footnote = ({ darkMonths, weather }: BestTilts) =>
  wrap(
    `Light is what reaches the cells after skyline, glass, snow and dirt in the file's year; dark is its part in ${darkMonths.map((month) => monthNames[month - 1]).join(', ')}. Engine hours and fuel are means over ${yearsInWords(weather)}, the same for each tilt; = is no difference that these years can show.`,
  );

const monthOf = (date: string) => monthNames[Number(date.slice(0, 2)) - 1]!;

/** `1 Oct`. */
function shortDay(dayOfYear: number): string {
  const date = dateOfDay(dayOfYear);
  return `${Number(date.slice(3))} ${monthOf(date)}`;
}
