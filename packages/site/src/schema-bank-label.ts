import * as z from 'zod';
import { mapping, quantity } from './fields.js';

const capacityRange = { min: 1, max: 1e6, say: '1 Ah to 1000000 Ah' };
const timeRange = { min: 0.25, max: 500, say: '15 min to 500 h' };

/** What a label says of a bank: how much an even discharge gives, and in what time. */
const labelPoint = mapping({ gives: quantity('charge', capacityRange), in: quantity('duration', timeRange) });

const singleCapacity = quantity('charge', capacityRange);

/** The capacity of a bank whose rate does not matter. */
export const plainLabel = { capacity: singleCapacity, atRate: quantity('duration', timeRange).default(20) };

/** The capacity of a lead-acid bank: one figure with `atRate`, or two points of the label. */
export const leadAcidLabel = {
  capacity: z.union([singleCapacity, z.tuple([labelPoint, labelPoint])], {
    error: ({ input }) =>
      typeof input === 'object'
        ? 'expected a capacity such as 1000 Ah (with atRate: 20 h), or two points of the label such as ' +
          '[{ gives: 1000 Ah, in: 20 h }, { gives: 1200 Ah, in: 100 h }]'
        : undefined,
  }),
  atRate: quantity('duration', timeRange).optional(),
};

/** The discharge time that a capacity without one is meant for, h: common practice, no source. */
const usualRateH = 20;

/** The label in plain numbers: the first point is what the state of charge is counted against. */
export function plainCapacity<
  Bank extends { capacity: z.output<typeof leadAcidLabel.capacity>; atRate?: number | undefined },
>(bank: Bank, context: z.RefinementCtx) {
  const { capacity, atRate } = bank;
  if (typeof capacity === 'number') return { ...bank, capacity, atRate: atRate ?? usualRateH, otherLabel: undefined };
  const [first, second] = capacity;
  if (atRate !== undefined) {
    context.addIssue({
      code: 'custom',
      path: ['atRate'],
      message: 'found beside two points of the label, which have their times; leave it out',
    });
  }
  return {
    ...bank,
    capacity: first.gives,
    atRate: first.in,
    otherLabel: { capacityAh: second.gives, atRateH: second.in },
  };
}
