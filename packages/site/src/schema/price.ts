import { hoursPerYear } from '@wintergap/ground';
import { parseQuantity, QuantityError } from '@wintergap/quantity';
import * as z from 'zod';
import { withFacts } from './field-facts.js';
import { found, mapping, number, quantity, text } from './fields.js';

const most = 1e10;
const amount = number(0, most, 'a price');

/** A price for the whole thing, or for each kW of its rated power. */
export type PriceByPower = number | { perKW: number };
/** A price for the whole bank, or for each kWh of its label. */
export type PriceByEnergy = number | { perKWh: number };

/** `1500`, or with a unit such as `600 /kW`. */
function priceField<Per extends string>(per: Per, dimension: 'pricePerPower' | 'pricePerEnergy', example: string) {
  const say = `expected a price as a bare number such as 1500, or such as ${example}`;
  const field = z
    .union([z.number(), z.string()], { error: (issue) => `found ${found(issue.input)}, ${say}` })
    .transform((written, context): number | { [Key in Per]: number } => {
      const complain = () => {
        context.addIssue({ code: 'custom', message: `found ${found(written)}, ${say}; prices are of 0 or more` });
        return z.NEVER;
      };
      if (typeof written === 'number') return written >= 0 && written <= most ? written : complain();
      try {
        const value = parseQuantity(written, dimension);
        return value >= 0 && value <= most ? ({ [per]: value } as { [Key in Per]: number }) : complain();
      } catch (error) {
        if (!(error instanceof QuantityError)) throw error;
        return complain();
      }
    });
  return withFacts(field, { kind: 'said', says: `a bare number such as 1500, or such as ${example}` });
}

const life = quantity('duration', {
  min: 24,
  max: 200 * hoursPerYear,
  say: 'a life such as 12 years, 1 day to 200 years',
});

/** A sum a year, such as `60 /year`, or by another time. */
const yearly = withFacts(
  z
    .union([z.number(), z.string()], { error: (issue) => `found ${found(issue.input)}, expected such as 60 /year` })
    .transform((written, context) => {
      const complain = (message: string) => {
        context.addIssue({ code: 'custom', message });
        return z.NEVER;
      };
      if (typeof written === 'number') return complain(`${written} has no unit; write ${written} /year`);
      try {
        const value = parseQuantity(written, 'pricePerTime');
        if (value >= 0 && value * hoursPerYear <= most) return value;
        return complain(`found ${found(written)}, expected zero or more, such as 60 /year`);
      } catch (error) {
        if (!(error instanceof QuantityError)) throw error;
        return complain(error.message);
      }
    }),
  { kind: 'said', says: 'a sum a year such as 60 /year' },
);

/** What a thing costs beside its price. */
const kept = {
  /** Service and repair, whether it is used or not. */
  upkeep: yearly.optional(),
  /** After which it is bought again; as long as the comparison unless given. */
  lives: life.optional(),
};

/** Keys of a thing that is bought: whole, or by its rated power. */
export const priced = { price: priceField('perKW', 'pricePerPower', '600 /kW or 0.6 /W').optional(), ...kept };

/** The same of a thing without a rated power. */
export const pricedWhole = { price: amount.optional(), ...kept };

/** The same of a bank, whose life follows from its use unless given. */
export const pricedByEnergy = { price: priceField('perKWh', 'pricePerEnergy', '200 /kWh').optional(), ...kept };

/** How long an engine lasts: running hours written in hours, years written in anything longer. */
export interface EngineLives {
  runningH?: number;
  years?: number;
}

const engineLife = withFacts(
  z
    .union([z.string(), z.array(z.string()).min(1).max(2)], {
      error: (issue) =>
        `found ${found(issue.input)}, expected running hours such as 2000 h, years such as 15 years, or both in brackets`,
    })
    .transform((written, context): EngineLives => {
      const lives: EngineLives = {};
      [written].flat().forEach((one, i) => {
        const complain = (message: string) =>
          context.addIssue({ code: 'custom', path: Array.isArray(written) ? [i] : [], message });
        const key = /h(ours?|rs?)?\s*$/i.test(one) ? 'runningH' : 'years';
        try {
          const hours = parseQuantity(one, 'duration');
          const value = key === 'years' ? hours / hoursPerYear : hours;
          const [least, longest, say] =
            key === 'years' ? [1, 100, '1 to 100 years'] : [10, 1e6, '10 h to 1000000 h of running'];
          if (lives[key] !== undefined)
            complain(`found ${found(written)}, expected one of each such as [2000 h, 15 years]`);
          else if (value < least || value > longest) complain(`found ${found(one)}, expected ${say}`);
          lives[key] = value;
        } catch (error) {
          if (!(error instanceof QuantityError)) throw error;
          complain(error.message);
        }
      });
      return lives;
    }),
  { kind: 'said', says: 'running hours such as 2000 h, years such as 15 years, or both in brackets' },
);

/** The same of an engine, which wears by the hours it runs. */
export const pricedEngine = { price: priced.price, upkeep: kept.upkeep, lives: engineLife.optional() };

/** A line of the bill that belongs to no part of the system: cable, shed, permits, work. */
const extraLine = mapping({ name: text, price: amount, ...kept });

/** What the `costs` section holds of a design: the rest of it is around all designs and read by others. */
export const designCosts = mapping({
  currency: text.refine((word) => word.length <= 12, { error: () => 'expected a short name such as EUR' }).optional(),
  extra: z.array(extraLine, { error: () => 'expected a list such as [{ name: shed, price: 1200 }]' }).default([]),
});

/** Keys of `costs` that belong to a design, so that variants may change them. */
export const costsOfDesign = ['currency', 'extra'] as const;
