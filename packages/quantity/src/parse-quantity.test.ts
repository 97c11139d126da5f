import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonicalUnit, type Dimension, dimensions } from './dimension.js';
import { formatQuantity } from './format-quantity.js';
import { parseQuantity } from './parse-quantity.js';
import { QuantityError } from './quantity-error.js';

const failure = (text: string | number, dimension: Dimension): QuantityError => {
  try {
    parseQuantity(text, dimension);
  } catch (error) {
    if (error instanceof QuantityError) return error;
    throw error;
  }
  throw new Error(`${text} was read as ${dimension}`);
};

describe('text that is read', () => {
  test.each<[string, Dimension, number]>([
    ['300 W', 'power', 300],
    ['4 kW', 'power', 4000],
    ['4.5 kWh', 'energy', 4500],
    ['4.5 kwh', 'energy', 4500],
    ['1000 Ah', 'charge', 1000],
    ['24 V', 'voltage', 24],
    ['0.5 mOhm', 'resistance', 0.0005],
    ['430 m', 'length', 430],
    ['430m', 'length', 430],
    ['5 ft 6 in', 'length', 1.6764],
    ['5\' 6"', 'length', 1.6764],
    ['6 cm', 'depth', 0.06],
    ['25 mm', 'precipitation', 25],
    ['16 mm2', 'conductorArea', 16],
    ['16 mm²', 'conductorArea', 16],
    ['-40 degF', 'temperature', -40],
    ['-40 °C', 'temperature', -40],
    ['−40 C', 'temperature', -40],
    ['212 F', 'temperature', 100],
    ['273.15 K', 'temperature', 0],
    ['18 degF', 'temperatureDifference', 10],
    ['20 h', 'duration', 20],
    ['2 hours', 'duration', 2],
    ['15 min', 'duration', 0.25],
    ['-6 h', 'duration', -6],
    ['10 days', 'duration', 240],
    ['1.6 L/h', 'volumeFlow', 1.6],
    ['2 litres', 'volume', 2],
    ['1.55 /L', 'pricePerVolume', 1.55],
    ['$1.55 /L', 'pricePerVolume', 1.55],
    ['1.55 EUR/L', 'pricePerVolume', 1.55],
    ['0.30 / kWh', 'pricePerEnergy', 0.3],
    ['800 /kW', 'pricePerPower', 800],
    ['0.9 W/K', 'heatLoss', 0.9],
    ['0.9 W/°C', 'heatLoss', 0.9],
    ['110 Wh/K', 'heatCapacity', 110],
    ['396 kJ/K', 'heatCapacity', 110],
    ['85 %', 'fraction', 0.85],
    ['85%', 'fraction', 0.85],
    ['0.85', 'fraction', 0.85],
    ['-0.39 %', 'fractionPerK', -0.0039],
    ['-0.39 %/°C', 'fractionPerK', -0.0039],
    ['-0.0039 /K', 'fractionPerK', -0.0039],
    ['3.2 kWh/m2', 'irradiation', 3.2],
    ['3.2 kWh/m2/day', 'irradiation', 3.2],
    ['11.52 MJ/m2', 'irradiation', 3.2],
    ['740 kg/m3', 'density', 740],
    ['0.74 kg/L', 'density', 740],
    ['36', 'angle', 36],
    ['36 deg', 'angle', 36],
    ['1e3 W', 'power', 1000],
  ])('%s as %s is %d', (text, dimension, expected) => {
    expect(parseQuantity(text, dimension)).toBeCloseTo(expected, 12);
  });

  test.each<[string, Dimension, number]>([
    ['3 V*A', 'power', 3],
    ['2 kW*h', 'energy', 2000],
    ['1 BTU/h*degF', 'heatLoss', 0.527528],
    ['1 kcal/degK', 'heatCapacity', 4184 / 3600],
    ['1 kWh/ft2', 'irradiation', 1 / 0.3048 ** 2],
  ])('%s, outside the table, goes through the unit library as %s', (text, dimension, expected) => {
    expect(Math.abs(parseQuantity(text, dimension) / expected - 1)).toBeLessThan(1e-6);
  });

  test('a bare number passes for a fraction and an angle only', () => {
    expect(parseQuantity(0.85, 'fraction')).toBe(0.85);
    expect(parseQuantity(-92.2, 'angle')).toBe(-92.2);
    expect(() => parseQuantity(24, 'voltage')).toThrow(QuantityError);
  });
});

describe('text that is refused', () => {
  test('a bare number shows the likely spellings of the same amount', () => {
    const error = failure(430, 'length');
    expect(error.message).toBe('430 has no unit; write 430 m or 1411 ft');
    expect(error.found).toBe('430');
    expect(error.expected).toBe('a length');
    expect(error.examples).toEqual(['430 m', '1411 ft']);
    expect(failure('8', 'conductorArea').message).toBe('8 has no unit; write 8 mm2 or 8 AWG');
    expect(failure(45, 'temperature').message).toBe('45 has no unit; write 45 degC or 113 degF');
  });

  test('85 as a fraction asks whether percent was meant', () => {
    expect(failure(85, 'fraction').message).toBe('85 is not a fraction of one; write 85 % or 0.85');
  });

  test('a unit of another kind names both kinds', () => {
    expect(failure('300 W', 'energy').message).toBe(
      '300 W is a power, but an energy is needed here, such as 1500 Wh or 1.5 kWh',
    );
    // The number belongs to the other kind: 24 kWh in a bank of 24 V are 1000 Ah, and never 24 Ah.
    expect(failure('24 kWh', 'charge').message).not.toContain('24 Ah');
    expect(failure('8 AWG', 'length').message).toContain('is a conductor size, but a length is needed');
    expect(failure('5 degC', 'length').message).toContain('a length is needed');
    expect(failure('1.55 /kg', 'pricePerVolume').message).toContain('is a price per mass, but a price per volume');
    expect(failure('5 acre', 'length').message).toContain('measures area, but a length is needed');
  });

  test('capitals that change nothing but the spelling get the right spelling', () => {
    expect(failure('4 Kw', 'power').message).toContain('meaning kW?');
    expect(failure('4 VoLts', 'voltage').message).toContain('meaning volts?');
  });

  test.each<[string, Dimension, string]>([
    ['14 kWhh', 'energy', 'meaning kWh?; write 14 kWh'],
    ['300 Wat', 'power', 'meaning watt?; write 300 W'],
    ['18 fts', 'length', 'meaning ft?; write 18 ft'],
    ['8 AGW', 'conductorArea', 'meaning AWG?; write 8 AWG'],
    ['250 kcmils', 'conductorArea', 'meaning kcmil?; write 250 kcmil'],
    ['20 degc', 'temperature', 'meaning degC?; write 20 degC'],
    ['20 decF', 'temperature', 'meaning degF?; write 20 degF'],
    ['1.5 gall', 'volume', 'meaning gal?; write 1.5 gal'],
    ['2 $/gall', 'pricePerVolume', 'meaning /gal?; write 2 /gal'],
    ['1000 Ha', 'charge', 'meaning Ah?; write 1000 Ah'],
    ['5 KW', 'power', 'meaning kW?; write 5 kW'],
    ['5 mw', 'power', 'meaning MW or mW?; write 5 MW or 5 mW'],
    ['-0.4 %/k', 'fractionPerK', 'meaning %/K?; write -0.4 %/K'],
  ])('%s as %s: the number keeps the unit that was meant', (text, dimension, advice) => {
    expect(failure(text, dimension).message).toContain(advice);
  });

  test.each<[string, Dimension, string]>([
    ['14 kWhh', 'charge', '14 kWhh has the unknown unit kWhh, and kWh is an energy; a charge is needed here'],
    ['300 Wat', 'energy', 'watt is a power; an energy is needed here'],
    ['20 Amph', 'charge', 'amp is a current; a charge is needed here'],
    ['12 Volts', 'current', '12 Volts is a voltage, but a current is needed here'],
    ['7 xyz', 'power', '7 xyz has the unknown unit xyz, and a power is needed here'],
    ['14 kVAh', 'energy', 'is an apparent energy'],
  ])('%s as %s: a number whose unit means something else is not offered with another', (text, dimension, said) => {
    const { message } = failure(text, dimension);
    expect(message).toContain(said);
    expect(message).toContain(', such as ');
    expect(message.slice(message.indexOf('such as'))).not.toContain(text.split(' ')[0]!);
  });

  test('an apparent power is not taken for a real one', () => {
    expect(failure('5 kVA', 'power').message).toContain('apparent power');
  });

  test('a comma in the number is not guessed at', () => {
    expect(failure('1,5 gal', 'volume').message).toBe(
      '1,5 gal has a comma in the number; use a point for decimals and nothing for thousands: write 1.5 gal',
    );
    expect(failure('1,000 Ah', 'charge').examples).toEqual(['1000 Ah', '1.000 Ah']);
  });

  test.each<[string, Dimension]>([
    ['', 'power'],
    ['   ', 'power'],
    ['W', 'power'],
    ['1 000 Ah', 'charge'],
    ['1e999 W', 'power'],
    ['NaN', 'power'],
    ['5 bananas', 'length'],
    ['300 W 20 h', 'energy'],
    ['41 AWG', 'conductorArea'],
    ['5/0 AWG', 'conductorArea'],
    ['3.5 AWG', 'conductorArea'],
    ['1.5 %', 'length'],
    ['12 m', 'duration'],
    ['1.55 L', 'pricePerVolume'],
  ])('"%s" is no %s', (text, dimension) => {
    expect(failure(text, dimension).examples.length).toBeGreaterThan(0);
  });

  test('infinite numbers and numbers that are none are refused', () => {
    for (const bad of [Number.NaN, Number.POSITIVE_INFINITY]) expect(() => parseQuantity(bad, 'fraction')).toThrow();
  });
});

const anyDimension = fc.constantFrom(...(Object.keys(dimensions) as Dimension[]));

test('any text gives a finite number or a QuantityError, never anything else', () => {
  const text = fc.oneof(
    fc.string(),
    fc.tuple(fc.double({ noNaN: true }), fc.string({ maxLength: 8 })).map(([number, unit]) => `${number} ${unit}`),
    fc
      .tuple(fc.integer(), fc.constantFrom('kWh', 'm/s', '/L', '%', '//', 'W/K/K', 'constructor', '__proto__'))
      .map(([number, unit]) => `${number} ${unit}`),
  );
  fc.assert(
    fc.property(text, anyDimension, (written, dimension) => {
      try {
        expect(Number.isFinite(parseQuantity(written, dimension))).toBe(true);
      } catch (error) {
        expect(error).toBeInstanceOf(QuantityError);
      }
    }),
    { numRuns: 500 },
  );
});

test('the examples of an error can themselves be read', () => {
  for (const dimension of Object.keys(dimensions) as Dimension[]) {
    for (const example of failure('what', dimension).examples) {
      expect(Number.isFinite(parseQuantity(example, dimension))).toBe(true);
    }
  }
});

test('what is formatted in metric units reads back to the digits shown', () => {
  fc.assert(
    fc.property(anyDimension, fc.double({ min: 0.01, max: 1e5, noNaN: true }), (dimension, value) => {
      const back = parseQuantity(formatQuantity(value, dimension, 'metric', 9), dimension);
      expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-7 * Math.max(1, value));
    }),
  );
});

test('what is formatted in US units reads back to the digits shown', () => {
  const not: Dimension[] = ['conductorArea'];
  fc.assert(
    fc.property(
      anyDimension.filter((dimension) => !not.includes(dimension)),
      fc.double({ min: 0.01, max: 1e5, noNaN: true }),
      (dimension, value) => {
        const back = parseQuantity(formatQuantity(value, dimension, 'us', 9), dimension);
        expect(Math.abs(back / value - 1)).toBeLessThan(1e-6);
      },
    ),
  );
});

test('every dimension reads its canonical unit as itself', () => {
  for (const dimension of Object.keys(dimensions) as Dimension[]) {
    expect(parseQuantity(`0.5 ${canonicalUnit(dimension)}`, dimension)).toBeCloseTo(0.5, 12);
  }
});

test('names that every object has are unknown units', () => {
  for (const unit of ['constructor', 'toString', '__proto__', 'hasOwnProperty']) {
    expect(() => parseQuantity(`1000 ${unit}`, 'power')).toThrow(`has the unknown unit ${unit}`);
  }
});

test('a long text is quoted by its beginning', () => {
  expect(() => parseQuantity(`${'5'.repeat(2e6)} V`, 'voltage')).toThrow(
    'found a text of 2000002 characters that begins "55555555555555555555", where a voltage is needed',
  );
});
