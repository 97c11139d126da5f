import { dateOfDay, monthNames } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import type { BestTilts, TiltAim, TiltChoice } from '@wintergap/study';
import { figure, wrap } from '../figures.js';
import { inVolumeUnit, volumeUnit } from '../shown-units.js';
import { plainTable } from './plain-table.js';

const aims: readonly TiltAim[] = ['year', 'dark months', 'engine'];

/** The best tilts of an array, 80 columns, answer first. */
export function tiltText(tilts: BestTilts, units: UnitSystem): string {
  return [headline(tilts), table(tilts, 'one', units), table(tilts, 'two', units), footnote(tilts)].join('\n\n');
}

function headline({ siteName, array, asDesigned, best, alike }: BestTilts): string {
  const { one, two } = best.engine;
  const hours = ({ outcome }: TiltChoice) => `${figure(outcome.generatorHours)} h`;
  const who = `${siteName}, ${array}:`;
  if (one.outcome.starts === 0 && asDesigned.outcome.starts === 0) {
    const [dark, bright] = best['dark months'].two.tilts;
    return wrap(
      `${who} the engine never runs. Most light of the dark months at a tilt of ${best['dark months'].one.tilts[0]!.tiltDeg}; with two tilts, ${dark!.tiltDeg} from ${shortDay(dark!.fromDay)} and ${bright!.tiltDeg} from ${shortDay(bright!.fromDay)}.`,
    );
  }
  const [dark, bright] = two.tilts;
  const sentences = [
    wrap(
      `${who} fewest engine hours at a tilt of ${one.tilts[0]!.tiltDeg}, ${hours(one)}; with two tilts, ${dark!.tiltDeg} from ${shortDay(dark!.fromDay)} and ${bright!.tiltDeg} from ${shortDay(bright!.fromDay)}, ${hours(two)}; as designed ${hours(asDesigned)}.`,
    ),
  ];
  if (alike && alike.toDeg > alike.fromDeg) {
    sentences.push(
      wrap(
        `Any tilt from ${alike.fromDeg} to ${alike.toDeg} is within two runs of the engine, ${figure(alike.withinHours)} h, of that single one: chance picks among them.`,
      ),
    );
  }
  return sentences.join('\n');
}

function table({ asDesigned, best, darkMonths }: BestTilts, how: 'one' | 'two', units: UnitSystem): string {
  const months = darkMonths.length <= 4 ? darkMonths.map((month) => monthNames[month - 1]).join(' ') : 'those months';
  const labels: Record<TiltAim, string> = {
    year: 'for the year',
    'dark months': `for ${months}`,
    engine: 'for the engine',
  };
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
    figure(choice.outcome.generatorHours),
    figure(inVolumeUnit(choice.outcome.fuelLitres, units)),
  ];
  return plainTable(
    [
      how === 'one' ? 'One tilt' : 'Two tilts',
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

const footnote = ({ darkMonths, runs }: BestTilts) =>
  wrap(
    `Light is what reaches the cells after skyline, glass, snow and dirt; dark is its part in ${darkMonths.map((month) => monthNames[month - 1]).join(', ')}. Engine hours are those of the year run with the tilt (${runs} years were run).`,
  );

const monthOf = (date: string) => monthNames[Number(date.slice(0, 2)) - 1]!;

/** `1 Oct`. */
function shortDay(dayOfYear: number): string {
  const date = dateOfDay(dayOfYear);
  return `${Number(date.slice(3))} ${monthOf(date)}`;
}
