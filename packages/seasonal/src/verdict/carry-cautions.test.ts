import { expect, test } from 'vitest';
import { carryCautions } from './carry-cautions.js';
import { closingAt, inventedStudy, inventedYear, judged, neverClosing } from './study.fixture.js';

const codes = (...study: Parameters<typeof inventedStudy>) =>
  carryCautions(inventedStudy(...study)).map(({ code }) => code);
const textOf = (code: string, ...study: Parameters<typeof inventedStudy>) =>
  carryCautions(inventedStudy(...study)).find((caution) => caution.code === code)?.text;

test('every store is warned of the one year it was sized for, and of nothing that does not concern it', () => {
  expect(codes()).toEqual(['one-year']);
  expect(textOf('one-year')).toContain('one weather year');
});

test('nothing to retire leaves nothing to warn of but load that no store answers', () => {
  const nothing = judged(612, 0);
  expect(codes({}, nothing)).toEqual([]);
  const study = inventedStudy({}, nothing);
  study.judged.year.beyondWh = 1600;
  expect(carryCautions(study)).toEqual([
    {
      code: 'beyond-inverter',
      text: '2 kWh of AC load are above what the inverter can give; no store on the DC bus answers them',
    },
  ]);
  // A single kilowatt-hour a year is no word.
  study.judged.year.beyondWh = 1000;
  expect(carryCautions(study)).toEqual([]);
});

// Covered at 2 times, with the usual fifth at 2.4.
test('an array with less than the usual fifth to spare is told how much it has', () => {
  const closing = closingAt(2);
  expect(textOf('small-allowance', { closing }, judged(1400, 380), 2.2)).toBe(
    'the array has 10 % to spare for losses nobody knows yet; 20 % is common practice',
  );
  for (const scale of [2.4, 2.38, 5]) expect(codes({ closing }, judged(1400, 380), scale)).toEqual(['one-year']);
  // Where the store does not cover the year there is no allowance to be small.
  expect(codes({ closing }, judged(612, 380), 1)).toEqual(['one-year']);
  expect(codes({ closing: neverClosing(16) }, judged(612, 380), 1)).toEqual(['one-year']);
  expect(codes({ closing: neverClosing(16) }, judged(1400, 380), 1)).toEqual(['one-year']);
});

test('a tighter cabinet above 45 degC is to be opened in summer', () => {
  const rivals = (warmestBankC: number, kind = 'bank') => ({
    rivals: [
      { kind: 'array', warmestBankC: 20 },
      { kind, warmestBankC },
    ],
  });
  expect(textOf('hot-cabinet', rivals(52.4))).toBe(
    'a cabinet losing half the heat warms the bank to 52 degC in summer: open its vents then',
  );
  expect(textOf('hot-cabinet', rivals(60))).toContain('to 60 degC');
  expect(textOf('hot-cabinet', rivals(61))).toContain('above 60 degC');
  expect(textOf('hot-cabinet', rivals(45))).toBeUndefined();
  // Without another cabinet a warm summer is none of the study's doing.
  expect(textOf('hot-cabinet', rivals(52, 'tilt'))).toBeUndefined();
});

test('prices that leave wear or time out are named', () => {
  const costs = (
    engine: object | null,
    discountRate: number,
    store: object | null = {},
    years: number | null = 20,
  ) => ({
    costs: { engine, store, discountRate, years },
  });
  expect(codes(costs(null, 0.03))).toEqual(['one-year', 'fuel-only']);
  expect(codes(costs({}, 0.03))).toEqual(['one-year']);
  expect(codes(costs(null, 0.03, null))).toEqual(['one-year']);
  expect(codes({ ...costs(null, 0.03), asItIs: inventedYear({}) })).toEqual(['one-year']);
  expect(codes(costs({}, 0))).toEqual(['one-year', 'no-discount']);
  expect(codes(costs({}, 0, {}, null))).toEqual(['one-year']);
});

test('what burns is warned of last', () => {
  const hydrogen = { name: 'typical', technology: { kind: 'hydrogen' }, chain: null };
  expect(codes({ technology: hydrogen, costs: { engine: {}, store: {}, discountRate: 0, years: 20 } })).toEqual([
    'one-year',
    'no-discount',
    'hydrogen',
  ]);
  expect(textOf('hydrogen', { technology: hydrogen })).toContain('4 to 75 % by volume');
});
