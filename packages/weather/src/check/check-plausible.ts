import { hoursPerYear } from '@wintergap/ground';
import type { SunYear } from '@wintergap/irradiance';
import type { Notice, WeatherYear } from '../weather-year.js';

/**
 * Share of the sun above the air that reaches the ground in a year. The dullest inhabited coasts have about 0.3, the
 * highest deserts 0.8; beyond these limits the unit is wrong. From memory; the limits are set wide.
 */
const dullest = 0.2;
const impossiblyDull = 0.1;
const impossiblyBright = 0.87;
/** Without a place: the darkest and brightest years on earth are about 600 and 2700 kWh/m2. From memory. */
const leastKWhM2 = 300;
const mostKWhM2 = 3000;
/** Between its coldest and its warmest hour every place on earth differs by more than this in a year. */
const leastAirRangeK = 1.5;
/** Warmer than any place on earth in the mean of a year (about 35 degC, from memory). */
const hottestMeanC = 37;

/**
 * Compares the year with what the sky allows at its latitude, with the air of any place, and its pressure with its
 * elevation: finds units mistaken for one another and places mixed up.
 */
export function plausibleNotices(weather: WeatherYear, sun: SunYear | null): Notice[] {
  return [...sunNotices(weather, sun), ...airNotices(weather), ...pressureNotices(weather)];
}

function sunNotices({ ghiWm2 }: WeatherYear, sun: SunYear | null): Notice[] {
  const sumKWhM2 = sumOf(ghiWm2) / 1000;
  if (!(sumKWhM2 > 0))
    return [error('no-sun', 'there is no sun in the whole year: global irradiance is 0 in every hour')];
  if (!sun) {
    if (sumKWhM2 >= leastKWhM2 && sumKWhM2 <= mostKWhM2) return [];
    return [
      error(
        'unlikely-sun',
        `the year has ${shown(sumKWhM2)} kWh/m2 of sun; every place has ${leastKWhM2} to ${mostKWhM2}`,
      ),
    ];
  }
  let aboveWh = 0;
  for (let h = 0; h < hoursPerYear; h++) aboveWh += sun.extraterrestrialNormalWm2[h]! * sun.meanCosZenith[h]!;
  const aboveKWhM2 = aboveWh / 1000;
  const share = sumKWhM2 / aboveKWhM2;
  if (share >= dullest && share <= impossiblyBright) return [];
  const text = `the year has ${shown(sumKWhM2)} kWh/m2 of sun, and above the air ${Math.round(aboveKWhM2)} fall on latitude ${sun.place.latitudeDeg}; between ${Math.round(aboveKWhM2 * dullest)} and ${Math.round(aboveKWhM2 * impossiblyBright)} are expected${likelyUnit(share)}`;
  const level = share < impossiblyDull || share > impossiblyBright ? 'error' : 'warning';
  return [{ code: 'unlikely-sun', level, text, rows: hoursPerYear }];
}

/** Units that are mistaken for W/m2, by what their values must be multiplied with. */
const mistaken: readonly (readonly [factor: number, what: string])[] = [
  [1000, 'kW/m2 or kWh/m2 taken for W/m2'],
  [1000 / 3.6, 'MJ/m2 taken for W/m2'],
  [1 / 3.6, 'kJ/m2 taken for W/m2'],
  [1 / 24, 'sums of a day taken for an hour'],
];

function likelyUnit(share: number): string {
  const found = mistaken.find(([factor]) => share * factor >= dullest && share * factor <= impossiblyBright);
  return found ? `: most likely ${found[1]}` : '';
}

function airNotices({ airC }: WeatherYear): Notice[] {
  let min = Infinity;
  let max = -Infinity;
  for (let h = 0; h < hoursPerYear; h++) {
    min = Math.min(min, airC[h]!);
    max = Math.max(max, airC[h]!);
  }
  const mean = sumOf(airC) / hoursPerYear;
  if (max - min < leastAirRangeK) {
    return [
      error(
        'unlikely-air',
        `the air stays between ${shown(min)} and ${shown(max)} degC all year: most likely it is divided by 10, 100 or 1000, or not measured`,
      ),
    ];
  }
  if (mean > hottestMeanC) {
    return [
      error('unlikely-air', `the air is ${shown(mean)} degC in the mean of the year: most likely degF taken for degC`),
    ];
  }
  return [];
}

// Pressure in the mean of a year differs from the standard atmosphere (ISO 2533) by up to about 2 % (from memory); 3 %
// is what 250 m of elevation do, and 6 % are 500 m.
const doubtfulPressure = 0.03;
const impossiblePressure = 0.06;
const seaLevelPa = 101_325;

function pressureNotices({ pressurePa, place }: WeatherYear): Notice[] {
  if (!pressurePa || place.elevationM === undefined) return [];
  // A column of one value is a placeholder, and told as such.
  if (pressurePa.every((value) => value === pressurePa[0])) return [];
  const mean = sumOf(pressurePa) / hoursPerYear;
  const expected = standardPressurePa(place.elevationM);
  const off = Math.abs(mean / expected - 1);
  if (off < doubtfulPressure) return [];
  const text = `pressure is ${(mean / 1000).toFixed(1)} kPa in the mean, at ${place.elevationM} m ${(expected / 1000).toFixed(1)} are expected`;
  if (Math.abs(mean / seaLevelPa - 1) < 0.02) {
    return [{ code: 'pressure-elevation', level: 'note', text: `${text}: it is most likely reduced to sea level` }];
  }
  const fits = Math.round(elevationOfPressureM(mean) / 10) * 10;
  return [
    {
      code: 'pressure-elevation',
      level: off > impossiblePressure ? 'error' : 'warning',
      text: `${text}: it would fit ${fits} m, so elevation or place may be wrong`,
      rows: hoursPerYear,
    },
  ];
}

/** Standard atmosphere, ISO 2533: pressure at an elevation, Pa. */
const standardPressurePa = (elevationM: number): number => seaLevelPa * (1 - 2.25577e-5 * elevationM) ** 5.25588;
const elevationOfPressureM = (pa: number): number => (1 - (pa / seaLevelPa) ** (1 / 5.25588)) / 2.25577e-5;

const error = (code: string, text: string): Notice => ({ code, level: 'error', text, rows: hoursPerYear });
const shown = (value: number): number => Number(value.toPrecision(3));

function sumOf(values: Float64Array): number {
  let sum = 0;
  for (let h = 0; h < hoursPerYear; h++) sum += values[h]!;
  return sum;
}
