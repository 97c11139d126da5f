import { expect, test } from 'vitest';
import { closingBeamWm2 } from '../read/mend/beam-of-hour.js';
import { sunOf } from '../sun-of-place.js';
import type { WeatherYear } from '../weather-year.js';
import { clearYear, pond } from './clear-year.fixture.js';
import { examineWeather } from './examine-weather.js';

const good = clearYear();
const codes = (weather: WeatherYear, site = {}) => examineWeather(weather, site).notices.map(({ code }) => code);
const notice = (weather: WeatherYear, code: string) => examineWeather(weather).notices.find((n) => n.code === code);

test('a clear year with its sun on time is trusted and closes', () => {
  const report = examineWeather(good, pond);
  expect(report.notices.map(({ code }) => code)).toEqual(['no-snow-data']);
  expect(report.verdict).toBe('good');
  expect(report.closure!.offHours).toBe(0);
  expect(report.closure!.hours).toBeGreaterThan(4380);
  expect(report.timing!.lateMin).toBeCloseTo(0, 0);
});

test('months add up to the year', () => {
  const { months, year } = examineWeather(good);
  expect(months).toHaveLength(12);
  expect(months.reduce((sum, month) => sum + month.ghiKWhM2, 0)).toBeCloseTo(year.ghiKWhM2, 9);
  expect(year.ghiKWhM2).toBeCloseTo(good.ghiWm2.reduce((sum, ghi) => sum + ghi, 0) / 1000, 9);
  expect(Math.min(...months.map((month) => month.minAirC))).toBe(year.minAirC);
  expect(year.precipitationMm).toBeNull();
});

// The clock of the file is set wrong on purpose; the sun is suncalc's.
test.each([-300, -60, -30, 20, 58, 60, 480])('a clock %d minutes fast is measured to three minutes', (fast) => {
  const report = examineWeather(clearYear(pond, () => fast));
  expect(Math.abs(report.timing!.lateMin - fast)).toBeLessThan(3);
  const found = report.notices.find(({ code }) => code === 'sun-off-time')!;
  expect(found.text).toContain(`${Math.abs(Math.round(report.timing!.lateMin))} min ${fast > 0 ? 'late' : 'early'}`);
  expect(found.level).toBe(Math.abs(fast) > 45 ? 'error' : 'warning');
});

test.each([-45, 0, 25, 64])('at latitude %d a sun on time is on time', (latitudeDeg) => {
  const report = examineWeather(clearYear({ ...pond, latitudeDeg }));
  expect(Math.abs(report.timing!.lateMin)).toBeLessThan(1);
  expect(report.timing!.monthsLateMin.every((late) => late === null || Math.abs(late) < 5)).toBe(true);
  expect(report.closure!.offHours).toBe(0);
});

test('the offset that would fit is named', () => {
  expect(
    notice(
      clearYear(pond, () => 60),
      'sun-off-time',
    )!.text,
  ).toContain('it would fit UTC-5');
});

test('summer time in the file is told from a wrong zone', () => {
  const summerTime = clearYear(pond, (h) => (h >= 69 * 24 && h < 307 * 24 ? 60 : 0));
  const report = examineWeather(summerTime);
  expect(report.notices.map(({ code }) => code)).toContain('summer-time');
  expect(report.notices.map(({ code }) => code)).not.toContain('sun-off-time');
  expect(report.verdict).toBe('rejected');
});

test('irradiance in true solar time is told from a wrong zone', () => {
  // 8.55 degrees east on the time of 15 degrees east: 25.8 minutes, and the equation of time (two-term form).
  const place = { ...pond, latitudeDeg: 49.5, longitudeDeg: 8.55, utcOffsetH: 1 };
  const fast = (h: number): number => {
    const b = (2 * Math.PI * (h / 24 - 81)) / 364;
    return (8.55 - 15) * 4 + 9.87 * Math.sin(2 * b) - 7.53 * Math.cos(b) - 1.5 * Math.sin(b);
  };
  const report = examineWeather(clearYear(place, fast));
  expect(report.timing!.sundial).toBe(true);
  const { text } = report.notices.find(({ code }) => code === 'sundial-time')!;
  expect(text).toContain('closes better by the sundial');
  expect(text).toContain('0.57 h');
  expect(examineWeather(clearYear(place)).timing!.sundial).toBe(false);
});

// Global and diffuse keep sundial time; the beam is made anew from both and the sun of the zone, as if only the clouds had
// moved the light of the day.
test('a beam that closes by the clock of the zone speaks for the clock', () => {
  const place = { ...pond, latitudeDeg: 49.5, longitudeDeg: 8.55, utcOffsetH: 1 };
  const fast = (h: number): number => {
    const b = (2 * Math.PI * (h / 24 - 81)) / 364;
    return (8.55 - 15) * 4 + 9.87 * Math.sin(2 * b) - 7.53 * Math.cos(b) - 1.5 * Math.sin(b);
  };
  const year = clearYear(place, fast);
  const sun = sunOf(place);
  const dniWm2 = year.ghiWm2.map((ghi, h) => closingBeamWm2(ghi - year.dhiWm2[h]!, sun, h));
  const report = examineWeather({ ...year, dniWm2 });
  const found = report.notices.find(({ code }) => code === 'sundial-time')!;
  expect(found.level).toBe('warning');
  expect(found.text).toContain('closes better by the standard clock');
  expect(found.text).not.toContain('UTC offset of');
  const split = examineWeather({ ...year, splitFrom: 'erbs' });
  expect(split.notices.find(({ code }) => code === 'sundial-time')!.text).not.toContain('closes');
});

test('in the hours of sunrise and sunset a beam averaged over the hour closes, and one over its sunlit part', () => {
  const { upShare } = sunOf(pond);
  const sunlit = good.dniWm2.map((dni, h) => (upShare[h]! > 0 ? dni / upShare[h]! : 0));
  const gap = (dniWm2: Float64Array) => Math.abs(examineWeather({ ...good, dniWm2 }).closure!.meanGapWm2);
  expect(gap(good.dniWm2)).toBeLessThan(0.2);
  expect(gap(sunlit)).toBeLessThan(0.2);
  expect(gap(good.dniWm2.map((dni, h) => (upShare[h]! < 1 ? 0 : dni)))).toBeGreaterThan(0.3);
});

test('columns that do not belong together do not close', () => {
  const swapped = { ...good, dniWm2: good.dhiWm2, dhiWm2: good.dniWm2 };
  expect(notice(swapped, 'closure')?.level).toBe('error');
});

test('irradiance that no sky gives is counted', () => {
  const tooMuch = { ...good, ghiWm2: good.ghiWm2.map((ghi) => ghi * 3) };
  expect(notice(tooMuch, 'impossible-irradiance')?.level).toBe('error');
  expect(notice({ ...good, ghiWm2: good.ghiWm2.map((ghi) => ghi * 1.5) }, 'too-bright')).toBeDefined();
  expect(notice({ ...good, ghiWm2: good.ghiWm2.map((ghi) => Math.max(ghi, 30)) }, 'sun-at-night')?.level).toBe('error');
});

test('copied days and stuck instruments are found', () => {
  const copy = (values: Float64Array): Float64Array => {
    const copied = values.slice();
    for (let day = 1; day < 5; day++) copied.copyWithin(day * 24, 0, 24);
    return copied;
  };
  const copied = notice({ ...good, ghiWm2: copy(good.ghiWm2), airC: copy(good.airC) }, 'repeated-days');
  expect(copied).toMatchObject({ level: 'warning', rows: 96 });
  expect(copied!.text).toContain('4 days repeat');
  const stuck = good.airC.slice().fill(3.2, 1000, 1030);
  expect(notice({ ...good, airC: stuck }, 'stuck-reading')!.text).toBe(
    'air temperature stays the same for 30 hours from 02-11 16:00',
  );
});

test('a place with frost and no snow all year most likely lacks snow data', () => {
  const bare = { ...good, snowDepthM: new Float64Array(8760) };
  expect(notice(bare, 'no-snow-in-frost')?.level).toBe('warning');
  expect(codes({ ...bare, airC: good.airC.map((air) => air + 30) })).not.toContain('no-snow-in-frost');
});

test('a site far from or far above the weather is told', () => {
  expect(codes(good, pond)).toEqual(['no-snow-data']);
  expect(codes(good, { ...pond, latitudeDeg: 47.9 })).toContain('far-from-site');
  expect(codes(good, { ...pond, elevationM: 900 })).toContain('other-elevation');
  expect(codes(good, { ...pond, utcOffsetH: -5 })).toContain('other-utc-offset');
});

test('without a place the rest is still examined', () => {
  const report = examineWeather({ ...good, place: {} });
  expect(report.timing).toBeNull();
  expect(report.closure).toBeNull();
  expect(report.verdict).toBe('usable');
});
