import type { Site } from '@wintergap/site';
import { expect, test } from 'vitest';
import { inventedSite } from '../site.fixture.js';
import { withScaledArray } from './scaled-array.js';

const { base } = inventedSite();
const roof = base.arrays[0]!;
/** The only array of the site, changed and then scaled. */
const scaled = (change: object, scale: number) =>
  withScaledArray({ ...base, arrays: [{ ...roof, ...change }] } as Site, scale).arrays[0]!;

test('whole strings are taken while they last, and the rest is in the currents of the modules', () => {
  // 2 strings: 1.6 times are 3.2, three strings of 3.2 / 3.
  const more = scaled({}, 1.6);
  expect(more.strings).toBe(3);
  expect(more.module.imp).toBeCloseTo((9.24 * 3.2) / 3, 9);
  expect(more.module.isc).toBeCloseTo((9.82 * 3.2) / 3, 9);
  expect(more.module.power).toBeCloseTo((300 * 3.2) / 3, 9);
  expect([more.module.vmp, more.module.voc]).toEqual([32.5, 39.9]);
  // A tenth of two strings is one of a fifth.
  expect(scaled({}, 0.1)).toMatchObject({ strings: 1, module: { imp: expect.closeTo(9.24 / 5, 9) } });
  expect(scaled({ strings: 0 }, 3)).toMatchObject({ strings: 0, module: { imp: 9.24 } });
  expect(withScaledArray(base, 1)).toBe(base);
});

test('area is scaled where a module has one, and cable, controller and drive go with the array', () => {
  const module = { ...roof.module, area: 1.6 };
  expect(scaled({ module }, 1.6).module.area).toBeCloseTo((1.6 * 3.2) / 3, 9);
  expect('area' in scaled({}, 1.6).module).toBe(false);
  const { power: _power, ...unrated } = roof.module;
  expect('power' in scaled({ module: unrated }, 1.6).module).toBe(false);
  const more = scaled({ mount: { kind: 'pole', tilt: 40, turn: 200, drive: 3 } }, 1.6);
  expect(more.cable!.size).toBeCloseTo(1.6 * roof.cable!.size, 9);
  expect(more.controller).toMatchObject({ maxCurrent: 96, nightDraw: expect.closeTo(3.2, 9), maxVoltage: 150 });
  expect(more.mount).toMatchObject({ kind: 'pole', drive: expect.closeTo(4.8, 9) });
  expect('drive' in scaled({ mount: { kind: 'pole', tilt: 40, turn: 200, drive: undefined } }, 1.6).mount).toBe(true);
  expect(scaled({}, 1.6).mount).toEqual(roof.mount);
  const { cable: _cable, ...bare } = roof;
  expect('cable' in withScaledArray({ ...base, arrays: [bare] } as Site, 1.6).arrays[0]!).toBe(false);
  const { maxCurrent: _limit, ...endless } = roof.controller as { maxCurrent?: number };
  expect('maxCurrent' in scaled({ controller: endless }, 1.6).controller).toBe(false);
});

test('prices by the piece grow with the array, those by its power stay', () => {
  const priced = scaled(
    {
      module: { ...roof.module, price: 180, upkeep: 3 },
      controller: { ...roof.controller, price: 450 },
      mount: { ...roof.mount, price: { perKW: 200 }, upkeep: 50 },
    },
    1.6,
  );
  expect(priced.module).toMatchObject({ price: expect.closeTo((180 * 3.2) / 3, 9), upkeep: expect.closeTo(3.2, 9) });
  expect(priced.controller.price).toBeCloseTo(720, 9);
  expect(priced.mount).toMatchObject({ price: { perKW: 200 }, upkeep: expect.closeTo(80, 9) });
  expect('upkeep' in priced.controller).toBe(false);
  expect('price' in scaled({}, 1.6).module).toBe(false);
});
