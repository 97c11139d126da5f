import { monthSpan } from '@wintergap/ground';
import { clearSkyWm2, type SunYear } from '@wintergap/irradiance';
import { cosWhileUp, type SunPlace } from '../sun-of-place.js';
import type { Notice, WeatherYear } from '../weather-year.js';
import { sundialNotice } from './check-sundial.js';

/** How far the sun in the file runs behind the sun of the place. */
export interface Timing {
  /** Minutes, late positive; the middle of the months that have enough sun. */
  lateMin: number;
  /** Each month, `null` where there is too little sun to tell. */
  monthsLateMin: (number | null)[];
  /** The irradiance of every month centres on 12:00, as on a sundial, where the clock of the zone says otherwise. */
  sundial: boolean;
}

/** Clear hours of a month that make up its outline, for each hour of the day. */
const clearestDays = 3;
/** Below this sum of the outline, W/m2 over the day, a month is too dark to tell the time by. */
const leastOutlineWm2 = 600;
/** Errors of this size come from clouds and horizons; larger ones from clocks. */
const noticeableMin = 15;
const seriousMin = 45;

/**
 * Compares the centre of the day's irradiance with the centre of a clear day's, month by month.
 *
 * The outline of a month is the mean of the three brightest values at each hour of the day, so that a habit of cloudy
 * afternoons moves it little. Its centre is the phase of its first daily harmonic, which also finds errors of many
 * hours. The clear sky (Haurwitz 1945) of the same hours gives the expected phase.
 */
export function measureTiming(weather: WeatherYear, sun: SunYear): Timing | null {
  const centres = Array.from({ length: 12 }, (_, month) => monthCentres(weather.ghiWm2, sun, month));
  const monthsLateMin = centres.map((centre) => (centre ? wrapMinutes(centre.fileMin - centre.clearMin) : null));
  const known = monthsLateMin.filter((late) => late !== null).sort((a, b) => a - b);
  if (known.length === 0) return null;
  const middle = known.length >> 1;
  const lateMin = known.length % 2 === 1 ? known[middle]! : (known[middle - 1]! + known[middle]!) / 2;
  const offNoon = centres.flatMap((centre) => (centre ? [wrapMinutes(centre.fileMin - 720)] : []));
  const sundial = meanSquare(offNoon) < 8 ** 2 && meanSquare(known) > noticeableMin ** 2;
  return { lateMin, monthsLateMin, sundial };
}

const meanSquare = (values: readonly number[]): number => values.reduce((sum, v) => sum + v * v, 0) / values.length;

/** Minutes brought to -720..720. */
const wrapMinutes = (minutes: number): number => minutes - 1440 * Math.round(minutes / 1440);

/** Minutes after midnight of the middle of the irradiance of a month, in the file and under a clear sky. */
function monthCentres(ghiWm2: Float64Array, sun: SunYear, month: number): { fileMin: number; clearMin: number } | null {
  const { fromHour, days } = monthSpan(month);
  let fileSin = 0;
  let fileCos = 0;
  let clearSin = 0;
  let clearCos = 0;
  let outline = 0;
  let clearOutline = 0;
  for (let k = 0; k < 24; k++) {
    const brightest = Array.from({ length: days }, (_, day) => fromHour + day * 24 + k)
      .sort((a, b) => ghiWm2[b]! - ghiWm2[a]!)
      .slice(0, clearestDays);
    const angle = ((k + 0.5) / 24) * 2 * Math.PI;
    for (const h of brightest) {
      const file = ghiWm2[h]! / clearestDays;
      const clear = (clearSkyWm2(cosWhileUp(sun, h)) * sun.upShare[h]!) / clearestDays;
      fileSin += file * Math.sin(angle);
      fileCos += file * Math.cos(angle);
      clearSin += clear * Math.sin(angle);
      clearCos += clear * Math.cos(angle);
      outline += file;
      clearOutline += clear;
    }
  }
  if (outline < leastOutlineWm2 || clearOutline < leastOutlineWm2) return null;
  // Midnight sun spreads the irradiance around the clock and leaves the phase to chance.
  if (Math.hypot(fileSin, fileCos) < 0.3 * outline) return null;
  return { fileMin: phaseMin(fileSin, fileCos), clearMin: phaseMin(clearSin, clearCos) };
}

const phaseMin = (sin: number, cos: number): number => ((Math.atan2(sin, cos) / (2 * Math.PI)) * 1440 + 1440) % 1440;

/** What a measured lateness means: a wrong zone, summer time in the file, or values not at the middle of the hour. */
export function timingNotices(timing: Timing, weather: WeatherYear, place: SunPlace): Notice[] {
  const months = timing.monthsLateMin;
  const late = Math.round(timing.lateMin);
  const summer = middleOf(months.slice(4, 9));
  const winter = middleOf([...months.slice(0, 2), ...months.slice(10)]);
  if (summer !== null && winter !== null && Math.abs(Math.abs(summer - winter) - 60) <= 20) {
    return [
      {
        code: 'summer-time',
        level: 'error',
        text: `the sun in the file is ${lateText(summer)} in summer but ${lateText(winter)} in winter: the clock of the file changes with summer time; local standard time is expected. In the site file: weather: { file: ${fileOf(weather)}, clock: { summerTime: { from: ${place.latitudeDeg < 0 ? '10-01, to: 04-03' : '03-28, to: 10-27'} } } }, with the dates of that year`,
      },
    ];
  }
  if (timing.sundial) {
    const level = Math.abs(late) >= seriousMin ? 'error' : 'warning';
    return [sundialNotice(weather, place, lateText(late), level)];
  }
  if (Math.abs(late) < noticeableMin) return [];
  const shiftMin = -shiftOf(timing.lateMin);
  return [
    {
      code: 'sun-off-time',
      level: Math.abs(late) >= seriousMin ? 'error' : 'warning',
      text: `the sun in the file is ${lateText(late)} for longitude ${place.longitudeDeg} and UTC${signed(place.utcOffsetH)}: ${causeOf(late, place)}. To move it, in the site file: weather: { file: ${fileOf(weather)}, clock: { shift: ${shiftMin} min } }`,
    },
  ];
}

/** Minutes by which clocks are wrong: whole half-hours, unless the sun says otherwise. */
function shiftOf(lateMin: number): number {
  const halfHours = Math.round(lateMin / 30) * 30;
  return Math.abs(lateMin - halfHours) <= 10 ? halfHours : Math.round(lateMin / 5) * 5;
}

const nearMin = 12;

/** The likely cause of a lateness. */
function causeOf(late: number, place: SunPlace): string {
  const near = (minutes: number): boolean => Math.abs(late - minutes) <= nearMin;
  const fits = place.utcOffsetH + Math.round(late / 30) / 2;
  if (Math.abs(place.utcOffsetH) >= 1 && near(-place.utcOffsetH * 60)) {
    return 'the file is most likely in UTC';
  }
  if (Math.abs(late) < seriousMin) {
    return 'the values may be readings at the full hour, or labels of the middle of the hour, and not means over it';
  }
  if (near(60)) {
    return `it would fit UTC${signed(fits)}: most likely summer time all year, or rows that name the end of their hour where the start is expected`;
  }
  if (near(-60)) {
    return `it would fit UTC${signed(fits)}: most likely rows that name the start of their hour where the end is expected`;
  }
  return `it would fit UTC${signed(fits)}, or another longitude`;
}

const fileOf = ({ source }: WeatherYear): string => (/[\s:{}[\],#]/.test(source) ? `"${source}"` : source);

const signed = (hours: number): string => `${hours >= 0 ? '+' : ''}${hours}`;
const lateText = (minutes: number): string => `${Math.abs(Math.round(minutes))} min ${minutes >= 0 ? 'late' : 'early'}`;

function middleOf(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null).sort((a, b) => a - b);
  return known.length > 0 ? known[known.length >> 1]! : null;
}
