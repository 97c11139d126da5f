import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clearYear } from '../check/clear-year.fixture.js';
import { examineWeather } from '../check/examine-weather.js';
import { WeatherError } from '../weather-error.js';
import { readWeather } from './read-weather.js';
import { epwLines, isoStart, tableLines, tmy3Lines } from './weather-files.fixture.js';

const made = clearYear();
const files = {
  epw: epwLines(made),
  tmy3: tmy3Lines(made),
  table: tableLines('time,ghi [W/m2],dni [W/m2],dhi [W/m2],air [degC],wind [m/s],snow depth [cm]', (h) =>
    [isoStart(h), made.ghiWm2[h]!.toFixed(1), made.dniWm2[h]!.toFixed(1), '', made.airC[h], made.windMs[h], 0].join(),
  ),
};

/** A wrong thing to do to a line, given as an edit of its text. */
const edit = fc.oneof(
  fc.constant((): string | null => null),
  fc.string({ maxLength: 30 }).map((text) => () => text),
  fc.tuple(fc.nat(40), fc.oneof(fc.string({ maxLength: 6 }), fc.double().map(String), fc.constant('"'))).map(
    ([at, text]) =>
      (row: string) =>
        row
          .split(',')
          .with(at % row.split(',').length, text)
          .join(),
  ),
  fc.nat(80).map((length) => (row: string) => row.slice(0, length)),
  fc.constant((row: string) => `${row}\n${row}`),
  fc.constant((row: string) => `${row},1`),
);

test('a mangled file gives a whole year without NaN or a WeatherError with a line, never anything else', () => {
  let refused = 0;
  fc.assert(
    fc.property(
      fc.constantFrom('epw' as const, 'tmy3' as const, 'table' as const),
      fc.array(fc.tuple(fc.oneof(fc.nat(12), fc.nat(8767)), edit), { minLength: 1, maxLength: 3 }),
      (kind, edits) => {
        const lines: (string | null)[] = [...files[kind]];
        for (const [at, change] of edits) {
          const line = lines[at % lines.length];
          if (typeof line === 'string') lines[at % lines.length] = change(line);
        }
        try {
          const weather = readWeather(lines.filter((line) => line !== null).join('\n'), { source: 'mangled' });
          for (const values of [weather.ghiWm2, weather.dniWm2, weather.dhiWm2, weather.airC, weather.windMs]) {
            expect(values.length).toBe(8760);
            expect(values.every(Number.isFinite)).toBe(true);
          }
          for (const values of [weather.snowDepthM, weather.precipitationMm, weather.pressurePa, weather.albedo]) {
            expect(values?.every(Number.isFinite) ?? true).toBe(true);
          }
          expect(Number.isFinite(examineWeather(weather).year.ghiKWhM2)).toBe(true);
        } catch (error) {
          if (!(error instanceof WeatherError)) throw error;
          refused++;
          expect(error.line).toBeGreaterThanOrEqual(1);
          expect(error.message).toMatch(/^mangled line \d+: /);
        }
      },
    ),
    { numRuns: 40 },
  );
  expect(refused).toBeGreaterThan(5);
});

test('any text at all gives a WeatherError', () => {
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string(),
        fc.string().map((text) => `LOCATION,${text}`),
      ),
      (text) => {
        expect(() => readWeather(text, { source: 'any' })).toThrow(WeatherError);
      },
    ),
  );
});
