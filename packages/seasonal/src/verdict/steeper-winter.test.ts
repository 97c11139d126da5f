import { expect, test } from 'vitest';
import { steeperWinter } from './steeper-winter.js';

// Days of the year, 0 for 1 January: 21 September 263, 22 March 80, 1 October 273, 1 April 90.
test('a fixed mount becomes one that is steepened for the winter half of the year', () => {
  expect(steeperWinter({ kind: 'fixed', tilt: 45, azimuth: 170 }, 'north')).toEqual({
    mount: {
      kind: 'seasonal',
      azimuth: 170,
      tilts: [
        { from: 263, tilt: 60 },
        { from: 80, tilt: 45 },
      ],
    },
    tilt: 60,
    was: 45,
  });
});

test('the period of a tilt table that holds midwinter is steepened, and no other', () => {
  const tilts = [
    { from: 90, tilt: 35 },
    { from: 273, tilt: 68 },
  ];
  const north = steeperWinter({ kind: 'seasonal', azimuth: 180, tilts }, 'north');
  expect(north).toMatchObject({ was: 68, tilt: 83, mount: { tilts: [{ tilt: 35 }, { tilt: 83 }] } });
  const south = steeperWinter({ kind: 'pole', turn: 220, tilts }, 'south');
  expect(south).toMatchObject({
    was: 35,
    tilt: 50,
    mount: { kind: 'pole', turn: 220, tilts: [{ tilt: 50 }, { tilt: 68 }] },
  });
});

test('no plane is tilted past upright, and trackers that tilt by themselves are left alone', () => {
  expect(steeperWinter({ kind: 'fixed', tilt: 80, azimuth: 180 }, 'north')).toMatchObject({ tilt: 90 });
  expect(steeperWinter({ kind: 'fixed', tilt: 90, azimuth: 180 }, 'north')).toBeNull();
  expect(steeperWinter({ kind: 'two-axis', minTilt: 0, maxTilt: 90, turn: 360 }, 'north')).toBeNull();
});

test('a pole of one tilt gets a table of two, and in the south the winter half is the other one', () => {
  expect(steeperWinter({ kind: 'pole', turn: 220, tilt: 50 }, 'south')).toEqual({
    mount: {
      kind: 'pole',
      turn: 220,
      tilts: [
        { from: 80, tilt: 65 },
        { from: 262, tilt: 50 },
      ],
    },
    ...{ tilt: 65, was: 50 },
  });
  expect(steeperWinter({ kind: 'pole', turn: 220 } as never, 'north')).toMatchObject({ was: 0, tilt: 15 });
});

test('a period that begins on the day of the solstice is the one in force', () => {
  const tilts = [
    { from: 355, tilt: 30 },
    { from: 354, tilt: 50 },
  ];
  expect(steeperWinter({ kind: 'seasonal', azimuth: 180, tilts }, 'north')).toMatchObject({ was: 50, tilt: 65 });
});
