import { PreparedCache, simulateSite } from '@wintergap/year';
import { describe, expect, test } from 'vitest';
import { honeyHouseAt } from './honey-house.js';
import { realWeather, realWeatherNames } from './shared-folder.js';

// The honey house on real hours. Bounds are a practitioner's, wide enough for any dry-land site of the middle north:
// common practice, no source.
describe.each(realWeatherNames)('the honey house on %s', (name) => {
  const path = realWeather(name);

  test.skipIf(path === null)('has headline figures that a practitioner would find sane', () => {
    const site = honeyHouseAt(path!);
    const { summary, ledger } = simulateSite(site.base);
    const { array, generator, load, throttle, bank } = summary;
    // Yearly plane total of a pole over the flat: a tracker gains, but not out of this range.
    expect(array.planeKWhPerM2 / summary.weather.ghiKWhPerM2).toBeGreaterThan(1.15);
    expect(array.planeKWhPerM2 / summary.weather.ghiKWhPerM2).toBeLessThan(1.6);
    // kWh per kW and month: a dull December to a bright June.
    const perKW = array.months.map(({ availableKWh }) => availableKWh / array.ratedKW);
    for (const kWh of perKW) expect(kWh > 15 && kWh < 230, `${kWh} kWh/kW`).toBe(true);
    expect(Math.max(...perKW.slice(3, 8))).toBeGreaterThan(2 * Math.min(...perKW.slice(9), ...perKW.slice(0, 2)));
    // A small petrol set gives 1.5-2.2 kWh a litre near full load (common practice, no source).
    if (generator.hours > 0) {
      expect(generator.toBusKWh / generator.fuelLitres).toBeGreaterThan(1.2);
      expect(generator.toBusKWh / generator.fuelLitres).toBeLessThan(2.2);
      expect(generator.fuelLitres / generator.hours).toBeGreaterThan(0.5);
      expect(generator.fuelLitres / generator.hours).toBeLessThan(1.6);
    }
    // Two to five days, as the bank was chosen: usable kWh over the daily load with its inverter losses.
    const daily = (load.acKWh / 0.85 + load.dcKWh) / 365;
    expect(bank.autonomyDays / (bank.usableKWh / daily)).toBeGreaterThan(0.5);
    expect(bank.autonomyDays / (bank.usableKWh / daily)).toBeLessThan(1.5);
    expect(throttle.kWh).toBeGreaterThan(200);
    expect(bank.minStateOfCharge).toBeGreaterThan(0.25);
    expect(summary.ledger.worstHourImbalanceKWh).toBeLessThan(1e-9);
    expect(summary.ledger.settledAfterYears).not.toBeNull();
    expect(ledger.bankC.every(Number.isFinite)).toBe(true);
  });

  test.skipIf(path === null)('a pole runs the engine no longer than a fixed tilt, and throws more away', () => {
    const site = honeyHouseAt(path!);
    const prepared = new PreparedCache();
    const pole = simulateSite(site.base, prepared).summary;
    const fixed = simulateSite(site.variants.get('fixed')!, prepared).summary;
    expect(pole.generator.fuelLitres).toBeLessThanOrEqual(fixed.generator.fuelLitres);
    expect(pole.throttle.kWh).toBeGreaterThan(fixed.throttle.kWh);
  });
});
