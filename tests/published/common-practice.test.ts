import type { SiteFile } from '@wintergap/site';
import { yearSum } from '@wintergap/tally';
import { simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { honeyHouse } from '../honey-house.js';
import { liesWithin, type Source } from '../validation/hold.js';

// Rules of the trade: common practice, no source. Each is one order-of-magnitude check with a set-up of our own; nothing
// in the model was tuned to them. What the model gives is printed, and how far it is off is explained beside the bound.

const trade: Source = { from: 'practice of the trade', sure: 'common practice' };

const run = (site: SiteFile) => simulateSite(site.base);

// "A small efficient home with about 1.5 kW of tracked array and dull Novembers reports about 50 h of engine a year."
test('a small home with 1.5 kW on a pole runs its engine some tens of hours', () => {
  const site = honeyHouse((text) =>
    text
      .replace('inSeries: 2\n    strings: 3', 'inSeries: 1\n    strings: 5')
      .replace('maxCurrent: 60 A', 'maxCurrent: 80 A')
      .replace(/ {2}- \{ name: laptop[^\n]*\n/, '')
      .replace(/ {2}- \{ name: washing[^\n]*\n/, ''),
  );
  const { summary } = run(site);
  const daily = (summary.load.acKWh + summary.load.dcKWh) / 365;
  console.log(`1.5 kW on a pole, ${daily.toFixed(1)} kWh a day: ${summary.generator.hours.toFixed(0)} h, trade 50 h`);
  expect(daily).toBeLessThan(3.5);
  liesWithin(trade, 'engine of a small home with 1.5 kW on a pole, h a year', summary.generator.hours, 50 / 4, 50 * 4);
});

// "A very large DC generator on a bank of about a week's capacity runs a few hours and is done for days."
test('a very large DC set on a week of bank runs a few hours and rests for days', () => {
  const site = honeyHouse((text) =>
    text
      .replace('capacity: 1000 Ah', 'capacity: 2200 Ah')
      // The larger bank in a larger box.
      .replace('area: 3 m2', 'area: 5 m2')
      .replace('output: { bus: dc, power: 3 kW }', 'output: { bus: dc, power: 12 kW }'),
  );
  const { summary, ledger } = run(site);
  const { hours, starts } = summary.generator;
  const winter = Array.from({ length: 8760 }, (_, h) => h).filter((h) => h < 1416 || h >= 7296);
  const runDays = new Set(winter.filter((h) => ledger.generatorH[h]! > 0).map((h) => Math.floor(h / 24))).size;
  console.log(
    `12 kW on ${summary.bank.autonomyDays.toFixed(1)} days of bank: ${starts} runs of ${(hours / starts).toFixed(1)} h, on ${runDays} days`,
  );
  liesWithin(trade, 'hours a run of a 12 kW set on a week of bank', hours / starts, 0, 6);
  expect(120 / runDays).toBeGreaterThan(4);
});

// "A bank in use in an insulated outdoor cabinet stayed near -4 degC when outdoors was -30 degC": 26 K warmer.
test('a bank in use in an insulated cabinet stays far warmer than the cold outdoors', () => {
  const { ledger, weather } = run(honeyHouse());
  const cold = Array.from({ length: 8760 }, (_, h) => h).filter((h) => weather.airC[h]! < -27);
  expect(cold.length).toBeGreaterThan(5);
  const lift = cold.reduce((sum, h) => sum + ledger.bankC[h]! - weather.airC[h]!, 0) / cold.length;
  const loss = yearSum(ledger.bankLossWh) / 8760;
  console.log(`below -27 degC outdoors: bank ${lift.toFixed(0)} K warmer, trade 26 K; mean loss ${loss.toFixed(0)} W`);
  // The invented cold spells are short against the ten days in which the cabinet follows: the lift is then larger.
  liesWithin(trade, 'bank in its cabinet warmer than outdoors below -27 degC, K', lift, 13, 52);
});

/** Ampere-hours put into the bank over those taken out, and the degree-warmest hour. */
function charging(change: (text: string) => string) {
  const { ledger, plant, summary } = run(honeyHouse(change));
  let outAh = 0;
  for (let h = 0; h < 8760; h++) outAh += ledger.bankDischargeWh[h]! / (ledger.bankV[h]! || 24);
  const gassingAh = yearSum(ledger.gassingAh);
  return {
    factor: 1 + gassingAh / outAh,
    waterL: plant.bank.waterLossGrams(gassingAh) / 1000,
    warmestC: summary.bank.maxTemp,
    codes: summary.cautions.map(({ code }) => code),
  };
}

const absorption = (volts: number) => (text: string) =>
  text.replace('floor: 30 %', `floor: 30 %\n  absorption: ${volts} V`);

// "Flooded banks are given 1.1 to 1.2 times what was taken, sealed ones a few per cent more than it." Set at 2.40 to 2.45
// V a cell; nothing jumps on the way to 2.467 V, where the bank once boiled away three times as much.
test('flooded banks are overcharged by a tenth to a fifth, more with each step of the voltage and no cliff', () => {
  const steps = [28.8, 29.2, 29.4, 29.6].map((volts) => charging(absorption(volts)));
  steps.slice(0, 3).forEach(({ factor }, i) => {
    liesWithin(trade, `charge given over charge taken, absorption ${[28.8, 29.2, 29.4][i]} V`, factor, 1.08, 1.2);
  });
  for (let i = 1; i < steps.length; i++) {
    expect(steps[i]!.waterL).toBeGreaterThan(steps[i - 1]!.waterL);
    expect(steps[i]!.waterL).toBeLessThan(1.6 * steps[i - 1]!.waterL);
  }
  expect(steps[3]!.warmestC).toBeLessThan(40);
});

test('a sealed bank returns 95 % of its ampere-hours, is not watered, and is warned of its heat when overcharged', () => {
  const agm = (text: string) => text.replace('flooded-lead-acid', 'agm');
  const usual = charging(agm);
  expect(1 / usual.factor).toBeGreaterThan(0.95);
  expect(usual.waterL).toBe(0);
  expect(usual.codes).not.toContain('thermal-runaway');
  expect(charging((text) => absorption(29.6)(agm(text))).codes).toContain('thermal-runaway');
});
