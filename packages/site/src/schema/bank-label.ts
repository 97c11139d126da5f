import * as z from 'zod';
import { mapping, quantity } from './fields.js';

const leastAh = 1;
const mostAh = 1e6;
const capacityRange = { min: leastAh, max: mostAh, say: '1 Ah to 1000000 Ah' };
const timeRange = { min: 0.25, max: 500, say: '15 min to 500 h' };

/** What a label says of a bank: how much an even discharge gives, and in what time. */
const labelPoint = mapping({ gives: quantity('charge', capacityRange), in: quantity('duration', timeRange) });

/** A capacity in Ah, or as `{ wh }` where the label gives an energy, which is turned into Ah at the nominal voltage. */
const singleCapacity = z.union([z.string(), z.number()]).transform((written, context) => {
  // Whatever else is amiss with the unit, a watt in it means an energy.
  const isEnergy = typeof written === 'string' && /\d\s*[kM]?W/i.test(written);
  const read = (isEnergy ? quantity('energy') : quantity('charge', capacityRange)).safeParse(written);
  if (read.success) return isEnergy ? { wh: read.data } : read.data;
  for (const { message } of read.error.issues) context.addIssue({ code: 'custom', message });
  return z.NEVER;
});

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
  Bank extends {
    voltage: number;
    capacity: z.output<typeof leadAcidLabel.capacity>;
    atRate?: number | undefined;
  },
>(bank: Bank, context: z.RefinementCtx) {
  const { voltage, atRate } = bank;
  let { capacity } = bank;
  if (typeof capacity === 'object' && 'wh' in capacity) {
    const { wh } = capacity;
    capacity = wh / voltage;
    if (capacity < leastAh || capacity > mostAh) {
      const message = `found ${wh} Wh, ${Number(capacity.toPrecision(4))} Ah at ${voltage} V, expected ${capacityRange.say}`;
      context.addIssue({ code: 'custom', path: ['capacity'], message });
    }
  }
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
