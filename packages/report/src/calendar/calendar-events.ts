import { daysPerYear } from '@wintergap/ground';
import { formatQuantity, type UnitSystem } from '@wintergap/quantity';
import type { CommonAnswer, CommonFigures } from '@wintergap/study';
import type { YearResult } from '@wintergap/year';
import { yearsInWords } from '../words/common-words.js';
import { dateText, figure, percent } from '../words/figures.js';
import { volumeText } from '../words/shown-units.js';
import { longestGap } from './longest-gap.js';

/** A thing to do on a day of the year, or over some days, every year. */
export interface CalendarEvent {
  /** The same for the same thing, whatever its figures. */
  key: string;
  title: string;
  description: string;
  /** Day of the year from 0 for 1 January. */
  day: number;
  days: number;
  /** Days between repetitions, where it is not once a year. */
  every?: number;
}

/** What a design asks its people to do through a year: tilts, fuel, engine, snow, the bank. */
export function calendarEvents(result: YearResult, common: CommonAnswer, units: UnitSystem): CalendarEvent[] {
  return [
    ...tiltEvents(result),
    ...engineEvents(result, common, units),
    ...snowEvents(result),
    ...bankEvents(result, units),
  ];
}

/** A number of the site file as it is written there. */
const short = (value: number): string => String(Number(value.toPrecision(4)));

function tiltEvents({ site }: YearResult): CalendarEvent[] {
  return site.arrays.flatMap(({ name, mount }) => {
    const tilts = 'tilts' in mount ? (mount.tilts ?? []) : [];
    if (tilts.length < 2) return [];
    return tilts.map(({ from, tilt }) => ({
      key: `tilt-${name}-${from}`,
      title: `Set ${name} to ${short(tilt)} degrees`,
      description: `Tilt of ${name} from the horizontal until the next date.`,
      day: from,
      days: 1,
    }));
  });
}

/** Hours of engine in a week below which nobody plans for it. */
const fewestHours = 0.5;

function engineEvents({ site }: YearResult, common: CommonAnswer, units: UnitSystem): CalendarEvent[] {
  const { generator } = site;
  const figures = common.designs[0];
  if (!generator || !figures) return [];
  const { kind } = generator.fuel;
  const perHour = figures.fuelLitres.mean / (figures.generatorHours.mean || 1);
  const years = yearsInWords(common.weather);
  const ofOne = common.weather.count === 1;
  const weeks = figures.weekHours.flatMap((hours, week): CalendarEvent[] => {
    if (hours < fewestHours) return [];
    const day = 7 * week;
    return [
      {
        key: `engine-${week}`,
        title: `Engine about ${figure(hours)} h, ${formatQuantity(hours * perHour, 'volume', units, 2)} of ${kind}`,
        description: ofOne
          ? `What this week has in ${years}.`
          : `Mean of this week over ${years}; the engine runs in it in ${percent(figures.weekRuns[week]!)} of them.`,
        day,
        days: week === figures.weekHours.length - 1 ? daysPerYear - day : 7,
      },
    ];
  });
  const { exercise } = generator;
  return [
    ...fuelEvent(figures, weeks, kind, common.weather, units),
    ...weeks,
    ...(exercise
      ? [
          {
            key: 'exercise',
            title: `Run the engine for ${figure(exercise.lasts * 60, 0)} min`,
            description: 'An exercise run; left out where it has run anyway.',
            day: exercise.every - 1,
            days: 1,
            every: exercise.every,
          },
        ]
      : []),
  ];
}

/** Days before the engine's season on which its fuel is to be there. */
const fuelBefore = 14;

function fuelEvent(
  { ranked, fuelLitres }: CommonFigures,
  weeks: readonly CalendarEvent[],
  kind: string,
  weather: CommonAnswer['weather'],
  units: UnitSystem,
): CalendarEvent[] {
  if (weeks.length === 0) return [];
  const busy = new Set(weeks.map(({ day }) => day / 7));
  const { from } = longestGap(Array.from({ length: 52 }, (_, week) => busy.has(week)));
  const day = (7 * from - fuelBefore + daysPerYear) % daysPerYear;
  const years = yearsInWords(weather);
  const burns =
    weather.count === 1
      ? `this is what ${years} burns, and a worse one burns more`
      : `one year in ten burns ${volumeText(ranked.fuelLitres.oneInTen.value, units)} or more (${years})`;
  return [
    {
      key: 'fuel',
      title: `Have ${volumeText(fuelLitres.mean, units)} of ${kind} in store`,
      description: `For the year that begins; ${burns}.`,
      day,
      days: 1,
    },
  ];
}

function snowEvents({ site, arrays }: YearResult): CalendarEvent[] {
  const { clearing } = site.snow;
  if (!clearing) return [];
  const snowy = Array.from({ length: daysPerYear }, (_, day) =>
    arrays.some(({ snowShare }) => snowShare?.subarray(24 * day, 24 * day + 24).some((share) => share > 0) ?? false),
  );
  if (!snowy.includes(true)) return [];
  const { from, to } = longestGap(snowy);
  const days = ((to - from + daysPerYear) % daysPerYear) + 1;
  return [
    {
      key: 'snow',
      title: `Sweep snow off the arrays within ${short(clearing.within)} h`,
      description: 'From the first to the last snow on them in the year of the weather file.',
      day: from,
      days,
    },
  ];
}

function bankEvents({ site: { bank } }: YearResult, units: UnitSystem): CalendarEvent[] {
  if (!('equalise' in bank) || !bank.equalise) return [];
  const { every, time, voltage } = bank.equalise;
  const at = voltage === undefined ? '' : ` at ${formatQuantity(voltage, 'voltage', units)}`;
  return [
    {
      key: 'equalise',
      title: `Equalise the bank for ${short(time)} h${at}`,
      description: `Every ${every} days, the first on ${dateText('01-01')}; look at the water.`,
      day: 0,
      days: 1,
      every,
    },
  ];
}
