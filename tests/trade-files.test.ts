import { readFileSync } from 'node:fs';
import { compareCsv, monthsCsv, yearCalendar } from '@wintergap/report';
import { loadSite, parseSite } from '@wintergap/site';
import { commonAnswer, runDesigns } from '@wintergap/study';
import { simulateSite } from '@wintergap/year';
import ICAL from 'ical.js';
import Papa from 'papaparse';
import { expect, test } from 'vitest';

// What leaves the program for other programs is read back with parsers that are not its own.

const file = 'examples/kettle-pond.yaml';
const habits = readFileSync(file, 'utf8')
  .replace('stop: { above: 80 % }', 'stop: { above: 80 % }\n  exercise: { every: 30, lasts: 20 min }')
  .replace('floor: 30 %\n', 'floor: 30 %\n  equalise: { voltage: 31 V, every: 45, time: 2 h }\n')
  .replace('ground: {', 'snow: { clearing: { within: 24 h } }\nground: {');
const site = parseSite(habits, file);
const designs = [
  { name: 'base', site: site.base },
  { name: 'taller pole', site: site.variants.get('taller pole')! },
];
const run = await runDesigns(designs, { years: 4, workers: 1 });
const answer = commonAnswer(run);
const result = simulateSite(site.base);

const rowsOf = (csv: string) => {
  const { data, errors, meta } = Papa.parse<Record<string, string | number>>(csv.trim(), {
    header: true,
    dynamicTyping: true,
  });
  expect(errors).toEqual([]);
  return { rows: data, heads: meta.fields ?? [] };
};
const sum = (rows: readonly Record<string, unknown>[], head: string) =>
  rows.reduce((total, row) => total + Number(row[head]), 0);

test('the months as CSV are twelve rows that add up to the year, with units in the headings', () => {
  const { rows, heads } = rowsOf(monthsCsv(result, 'metric', answer));
  const { array, generator, load } = result.summary;
  expect(rows).toHaveLength(12);
  expect(rows[0]).toHaveProperty('month', 'Jan');
  expect(sum(rows, 'array offered [kWh]')).toBeCloseTo(array.availableKWh, 6);
  expect(sum(rows, 'sun used [kWh]')).toBeCloseTo(array.usedKWh, 6);
  expect(sum(rows, 'engine [h]')).toBeCloseTo(generator.hours, 6);
  expect(sum(rows, 'fuel [L]')).toBeCloseTo(generator.fuelLitres, 6);
  expect(sum(rows, 'fuel cost')).toBeCloseTo(generator.fuelCost!, 6);
  expect(sum(rows, 'load [kWh]')).toBeCloseTo(load.acKWh + load.dcKWh, 6);
  expect(sum(rows, 'engine, mean of the common years [h]')).toBeCloseTo(answer.designs[0]!.generatorHours.mean, 6);
  for (const head of heads) expect(head).toMatch(/\[.+\]$|^(month|engine starts|fuel cost)$/);
  expect(sum(rowsOf(monthsCsv(result, 'us')).rows, 'fuel [gal]')).toBeCloseTo(generator.fuelLitres / 3.785411784, 6);
});

test('the comparison as CSV has a row for each design, the base first, with the figures of the common years', () => {
  const named = designs.map(({ name, site: design }) => ({ name, result: simulateSite(design) }));
  const { rows } = rowsOf(compareCsv(named, answer, 'metric'));
  expect(rows.map(({ design }) => design)).toEqual(['base', 'taller pole']);
  const [base, taller] = answer.designs;
  expect(rows[0]!['engine, usual year [h]']).toBeCloseTo(base!.ranked.generatorHours.usual.value, 9);
  expect(rows[1]!['engine less base, mean [h]']).toBeCloseTo(taller!.againstBase!.generatorHours.mean, 9);
  expect(rows[0]!['engine less base, mean [h]']).toBeNull();
  expect(rows[1]!['file year: engine [h]']).toBeCloseTo(named[1]!.result.summary.generator.hours, 9);
  const months = Object.entries(rows[1]!).filter(([head]) => /^engine, mean [A-Z]\w+ \[h\]$/.test(head));
  expect(months.reduce((total, [, hours]) => total + Number(hours), 0)).toBeCloseTo(taller!.generatorHours.mean, 6);
  // A name that a spreadsheet would calculate, or that has a comma, stays a name.
  const odd = compareCsv([{ ...named[0]!, name: '=1+1, no' }, named[1]!], answer, 'metric');
  expect(rowsOf(odd).rows[0]!.design).toBe("'=1+1, no");
});

const eventsOf = (ics: string) =>
  new ICAL.Component(ICAL.parse(ics)).getAllSubcomponents('vevent').map((component) => {
    const event = new ICAL.Event(component);
    return {
      title: event.summary,
      start: event.startDate.toString(),
      end: event.endDate.toString(),
      rule: String(component.getFirstPropertyValue('rrule')),
      stamp: String(component.getFirstPropertyValue('dtstamp')),
      uid: event.uid,
      text: event.description,
    };
  });

test('the calendar opens elsewhere: tilts on their dates, weeks of fuel, snow, equalising, the same bytes each time', async () => {
  const ics = await yearCalendar(result, answer, 'metric');
  expect(await yearCalendar(simulateSite(site.base), answer, 'metric')).toBe(ics);
  const events = eventsOf(ics);
  const starting = (title: string) => events.filter((event) => event.title.startsWith(title));
  expect(starting('Set garden pole').map(({ title, start, end, rule }) => [title, start, end, rule])).toEqual([
    ['Set garden pole to 68 degrees', '2025-10-01', '2025-10-02', 'FREQ=YEARLY'],
    ['Set garden pole to 35 degrees', '2025-04-01', '2025-04-02', 'FREQ=YEARLY'],
  ]);
  const { weekHours, fuelLitres, generatorHours } = answer.designs[0]!;
  expect(weekHours).toHaveLength(52);
  expect(weekHours.reduce((total, hours) => total + hours, 0)).toBeCloseTo(generatorHours.mean, 6);
  const weeks = starting('Engine about');
  const wanted = weekHours.flatMap((hours, week) => (hours >= 0.5 ? [week] : []));
  const dayOf = (date: string) => Math.round((Date.parse(date) - Date.UTC(2025, 0, 1)) / 86_400_000);
  expect(weeks.map(({ start }) => dayOf(start) / 7)).toEqual(wanted);
  for (const { start, end } of weeks) expect(dayOf(end) - dayOf(start)).toBe(start === '2025-12-24' ? 8 : 7);
  expect(starting('Have ')[0]!.title).toContain(`${Number(fuelLitres.mean.toPrecision(3))} L of petrol in store`);
  expect(starting('Sweep snow')[0]!.title).toBe('Sweep snow off the arrays within 24 h');
  expect(starting('Equalise')[0]).toMatchObject({
    title: 'Equalise the bank for 2 h at 31 V',
    rule: 'FREQ=DAILY;INTERVAL=45',
  });
  expect(starting('Run the engine')[0]!.title).toBe('Run the engine for 20 min');
  expect(new Set(events.map(({ stamp }) => stamp))).toEqual(new Set(['2025-01-01T00:00:00Z']));
  expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
});

test('a calendar from one year says what that year burns, and nothing of one in ten', async () => {
  const one = commonAnswer(await runDesigns(designs, { years: 1, workers: 1 }));
  const texts = eventsOf(await yearCalendar(result, one, 'metric')).map(({ text }) => text);
  expect(texts.some((text) => text.includes("what the file's year burns"))).toBe(true);
  for (const text of texts) expect(text).not.toMatch(/one year in ten|of them|Mean/);
});

test('a place without an engine and with one tilt has an empty calendar that opens', async () => {
  const { generator: _, ...rest } = loadSite(file).variants.get('fixed')!;
  const still = await yearCalendar(simulateSite(rest), answer, 'us');
  expect(eventsOf(still)).toEqual([]);
});
