import { expect, test } from 'vitest';
import { airAround, roomsAirC } from './rooms-air.js';

const places = { rooms: { above: 4, atLeast: 15 } } as never;
const outdoorC = Float64Array.of(-20, 11, 30);

test('heated rooms are warmer than outdoors and never colder than they are kept', () => {
  expect([...roomsAirC(places, outdoorC)]).toEqual([15, 15, 34]);
});

test('a bank in the rooms has their air, in an unheated hut what the sun on its walls adds, outdoors that of outdoors', () => {
  expect([...airAround('rooms', places, outdoorC)]).toEqual([15, 15, 34]);
  expect([...airAround('unheated', places, outdoorC)]).toEqual([-16, 15, 34]);
  expect(airAround('outdoors', places, outdoorC)).toBe(outdoorC);
});
