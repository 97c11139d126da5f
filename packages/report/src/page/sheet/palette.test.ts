import { describe, expect, test } from 'vitest';
import { darkPalette, lightPalette, type Palette } from './palette.js';

// Relative luminance and contrast ratio as WCAG 2.2 defines them (W3C Recommendation, terms of the same names).
function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}

function contrast(one: string, other: string): number {
  const [dim, bright] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (bright! + 0.05) / (dim! + 0.05);
}

// The grey that just passes and the one that just fails on white: from memory, widely printed.
test('the contrast ratio is that of the standard', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
});

const palettes: [string, Palette][] = [
  ['light', lightPalette],
  ['dark', darkPalette],
];

describe.each(palettes)('the %s palette', (_, palette) => {
  const { paper, panel, rule, steps, ...colours } = palette;

  test('every colour of text, line and bar has 4.5 : 1 against the page', () => {
    expect(Object.keys(colours).length).toBeGreaterThan(8);
    for (const [name, colour] of Object.entries(colours)) {
      expect(contrast(colour, paper), `${name} ${colour} on ${paper}`).toBeGreaterThanOrEqual(4.5);
    }
  });

  test('text on the panels has 4.5 : 1', () => {
    for (const colour of [palette.ink, palette.quiet, palette.alarm]) {
      expect(contrast(colour, panel), `${colour} on ${panel}`).toBeGreaterThanOrEqual(4.5);
    }
  });

  test('the figure on each shade of the throttle calendar has 4.5 : 1', () => {
    expect(steps.length).toBe(5);
    for (const [fill, text] of steps) expect(contrast(text, fill), `${text} on ${fill}`).toBeGreaterThanOrEqual(4.5);
  });

  test('the shades step away from the page one by one', () => {
    const ratios = steps.map(([fill]) => contrast(fill, paper));
    for (let i = 1; i < ratios.length; i++) expect(ratios[i]!).toBeGreaterThan(ratios[i - 1]! * 1.2);
  });
});
