import * as z from 'zod';
import { mapping, number, oneOf, quantity, upTo } from './fields.js';
import { pricedWhole } from './price.js';

const warmth = { min: -40, max: 40, say: '-40 degC to 40 degC' };

const heat = oneOf(
  'kind',
  ['heater', 'room'],
  [
    mapping({
      kind: z.literal('heater'),
      power: quantity('power', upTo(100_000, 'W')),
      keepAbove: quantity('temperature', warmth),
    }),
    mapping({
      kind: z.literal('room'),
      temperature: quantity('temperature', warmth),
      coupling: quantity('heatLoss', { min: 0.01, max: 1000, say: '0.01 W/K to 1000 W/K' }),
    }),
  ],
);

/** A box of foam: its loss follows from thickness and area. */
const foam = mapping({
  foam: quantity('length', {
    min: 0,
    max: 0.31,
    say: '0 cm to 30 cm (12 in): cables, joints and lid lose more than thicker foam would save',
  }),
  /** All six sides. */
  area: quantity('area', { min: 0.1, max: 100, say: '0.1 m2 to 100 m2, all six sides of the box' }),
  /** W/(m K); extruded polystyrene unless given. */
  conductivity: number(0.015, 1, 'a conductivity in W/(m K)').optional(),
});

export const cabinet = mapping({
  insulation: z.union([quantity('heatLoss', upTo(100_000, 'W/K')), foam], {
    error: () => 'expected a heat loss such as 0.9 W/K, or a box of foam such as { foam: 2 in, area: 30 ft2 }',
  }),
  heatCapacity: quantity('heatCapacity', { min: 0.5, max: 1e5, say: '0.5 Wh/K to 100000 Wh/K' }).optional(),
  /** 0.34 W/K for each m3/h of air; what the bank needs on float unless given. */
  ventilation: quantity('heatLoss', {
    min: 0,
    max: 500,
    say: '0 W/K to 500 W/K, which is 1500 m3/h of air',
  }).optional(),
  heatedBy: z.union([z.literal('none'), heat]).default('none'),
  ...pricedWhole,
});
