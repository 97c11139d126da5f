import {
  commonDerating,
  deratedShare,
  type FuelKind,
  fuelFromEfficiency,
  fuelLine,
  fuelLPerH,
  fuelProperties,
  usualDieselFuel,
} from '@wintergap/generator';
import { describe, expect, test } from 'vitest';

const litresPerUsGallon = 3.785411784;
const joulesPerBtu = 1055.056;
const share = (found: number, expected: number) => Math.abs(found / expected - 1);

describe('fuels', () => {
  // Alternative Fuels Data Center, US Department of Energy, fuel properties comparison: lower heating values in Btu
  // per US gallon of petrol without ethanol, low-sulphur diesel and propane. From memory. Fuels as sold differ by 1 %.
  test.each<[FuelKind, number]>([
    ['petrol', 116_090],
    ['diesel', 128_488],
    ['propane', 84_250],
  ])('a litre of %s holds the printed heat', (kind, btuPerGallon) => {
    const whPerL = (btuPerGallon * joulesPerBtu) / litresPerUsGallon / 3600;
    expect(share(fuelProperties[kind].lowerHeatWhPerL, whPerL)).toBeLessThan(0.01);
  });

  // Standard enthalpies of formation, kJ/mol: propane gas -103.8, CO2 -393.5, water vapour -241.8 (CRC Handbook, from
  // memory). Half a per cent covers the heat that evaporates the liquid.
  test('the heat of propane follows from its combustion', () => {
    const kJPerMol = 3 * 393.5 + 4 * 241.8 - 103.8;
    expect(share(fuelProperties.propane.lowerHeatMJPerKg, kJPerMol / 44.096)).toBeLessThan(0.005);
  });

  // Carbon balance: propane is C3H8; petrol and diesel are close to CH1.87 and CH1.80 (Heywood 1988, Internal
  // Combustion Engine Fundamentals, appendix D, from memory). Blends as sold differ by 2 %.
  test.each<[FuelKind, number, number]>([
    ['petrol', 1.87, 0.025],
    ['diesel', 1.8, 0.025],
    ['propane', 8 / 3, 0.01],
  ])('the carbon dioxide of %s is its carbon', (kind, hydrogenPerCarbon, tolerance) => {
    const carbonShare = 12.011 / (12.011 + 1.008 * hydrogenPerCarbon);
    const co2KgPerL = fuelProperties[kind].densityKgPerL * carbonShare * (44.009 / 12.011);
    expect(share(fuelProperties[kind].co2KgPerL, co2KgPerL)).toBeLessThan(tolerance);
  });
});

describe('fuel flow of engine sets', () => {
  // The diesel consumption chart that circulates in the trade, US gallons per hour at 1/4, 1/2, 3/4 and full load.
  // From memory, its origin is not known; printed to a tenth of a gallon.
  test.each([
    [20, [0.6, 0.9, 1.3, 1.6]],
    [60, [1.8, 2.9, 3.8, 4.8]],
    [100, [2.6, 4.1, 5.8, 7.4]],
  ])('a straight line follows the chart of a %d kW diesel within 5 %%', (kW, gallonsPerH) => {
    const powerW = kW * 1000;
    const litresPerH = gallonsPerH.map((gallons) => gallons * litresPerUsGallon);
    const efficiency = (quarters: number) =>
      (powerW * quarters) / 4 / (litresPerH[quarters - 1]! * fuelProperties.diesel.lowerHeatWhPerL);
    const line = fuelLine(fuelFromEfficiency('diesel', powerW, efficiency(4), efficiency(1)), powerW);
    expect(fuelLPerH(powerW, line)).toBeCloseTo(litresPerH[3]!, 9);
    expect(fuelLPerH(powerW / 4, line)).toBeCloseTo(litresPerH[0]!, 9);
    expect(share(fuelLPerH(powerW / 2, line), litresPerH[1]!)).toBeLessThan(0.05);
    expect(share(fuelLPerH(0.75 * powerW, line), litresPerH[2]!)).toBeLessThan(0.05);
  });

  // Skarstein and Uhlen 1989, Wind Engineering 13(2): 0.246 L/kWh + 0.08415 L/h per kW of rating, from memory.
  // Against the trade's rule for small diesels: 2.5 to 3.3 kWh/L and 25 to 33 % of the lower heat at good load, half to
  // two thirds of that at a quarter of it (common practice, no source).
  test('the usual diesel line lies within the range of small diesels', () => {
    const line = fuelLine(usualDieselFuel(10_000), 10_000);
    expect(fuelLPerH(10_000, line)).toBeCloseTo(3.3015, 9);
    expect(fuelLPerH(0, line)).toBeCloseTo(0.8415, 9);
    const fullWhPerL = 10_000 / fuelLPerH(10_000, line);
    expect(fullWhPerL).toBeGreaterThan(2500);
    expect(fullWhPerL).toBeLessThan(3300);
    expect(fullWhPerL / fuelProperties.diesel.lowerHeatWhPerL).toBeGreaterThan(0.25);
    expect(fullWhPerL / fuelProperties.diesel.lowerHeatWhPerL).toBeLessThan(0.33);
    const quarter = 2500 / fuelLPerH(2500, line) / fullWhPerL;
    expect(quarter).toBeGreaterThan(1 / 2);
    expect(quarter).toBeLessThan(2 / 3);
  });

  // Common practice, no source: small petrol sets turn 15 to 25 % of the lower heat into electricity near full load,
  // about 1.5 to 2.2 kWh/L.
  test('small petrol sets from their efficiency give 1.3 to 2.3 kWh a litre', () => {
    const whPerL = (efficiency: number) => 3000 / fuelFromEfficiency('petrol', 3000, efficiency).atFullLPerH;
    expect(whPerL(0.15)).toBeGreaterThan(1300);
    expect(whPerL(0.2)).toBeGreaterThan(1700);
    expect(whPerL(0.2)).toBeLessThan(1900);
    expect(whPerL(0.25)).toBeLessThan(2300);
  });
});

// Common derating practice, no source: 3.5 % per 300 m above 150 m, 1 % per 5.5 K above 25 degC.
test('height and heat take their shares of the rating, one on top of the other', () => {
  expect(deratedShare(commonDerating, 1500, 10)).toBeCloseTo(1 - 0.035 * 4.5, 12);
  expect(deratedShare(commonDerating, 0, 36)).toBeCloseTo(0.98, 12);
  expect(deratedShare(commonDerating, 1500, 36)).toBeCloseTo(0.8425 * 0.98, 12);
});
