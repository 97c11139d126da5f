import { throttleSeason } from '@wintergap/tally';
import { parseHTML } from 'linkedom';
import { expect, test } from 'vitest';
import { drawn } from '../page/sheet/draw.js';
import { shadeOf, throttleChart } from './throttle.js';

/** A year in which the array offers 1 kWh from 10 to 14 h, all of it thrown away on the given days. */
function throttle(throttles: (day: number) => boolean) {
  const available = Float64Array.from({ length: 8760 }, (_, h) => (h % 24 >= 10 && h % 24 < 14 ? 1000 : 0));
  const thrown = available.map((wh, h) => (throttles(Math.floor(h / 24)) ? wh : 0));
  return { kWh: 0, ...throttleSeason(thrown, available) };
}

const page = (svg: string) => parseHTML(`<html><body>${svg}</body></html>`).document;

test('a share of days falls into the shade whose range the key prints', () => {
  expect([0, 0.001, 0.2, 0.21, 0.4, 0.8, 0.81, 1].map(shadeOf)).toEqual([0, 1, 1, 2, 2, 4, 5, 5]);
});

test('288 cells, the same on narrow and wide drawings, with figures where there is something to say', () => {
  const year = throttle((day) => day >= 120 && day < 240);
  for (const narrow of [true, false]) {
    const document = page(drawn(throttleChart(year, narrow)));
    const cells = [...document.querySelectorAll('rect[data-share]')];
    expect(cells.length).toBe(288);
    for (const cell of cells) {
      const [month, hour, share] = ['month', 'hour', 'share'].map((name) => Number(cell.getAttribute(`data-${name}`)));
      expect(share).toBeCloseTo(year.calendar[month! - 1]![hour!]!, 8);
    }
    const figures = [...document.querySelectorAll('text')].filter(({ textContent }) => textContent === '100');
    // May, June and July whole; four hours each.
    expect(figures.length).toBe(12);
  }
});

test('the first and last date stand at their months', () => {
  const texts = (narrow: boolean) => {
    const document = page(
      drawn(
        throttleChart(
          throttle((day) => day >= 120 && day < 240),
          narrow,
        ),
      ),
    );
    return [...document.querySelectorAll('text')].map(({ textContent }) => textContent);
  };
  expect(texts(false)).toEqual(expect.arrayContaining(['from 1 May', 'to 28 Aug']));
  expect(texts(true)).toEqual(expect.arrayContaining(['from', 'to']));
});

test('a season that ends in the month it began in gets one mark', () => {
  // Throttles always but from 6 to 19 November.
  const year = throttle((day) => day < 309 || day > 322);
  expect([year.firstDate, year.lastDate]).toEqual(['11-20', '11-05']);
  const document = page(drawn(throttleChart(year, true)));
  expect([...document.querySelectorAll('text')].map(({ textContent }) => textContent)).toContain('to/from');
});
