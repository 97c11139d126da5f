import type { Chemistry } from '@wintergap/battery';
import { hoursPerYear } from '@wintergap/ground';
import * as z from 'zod';
import { checkBank } from '../rules/bank.js';
import { leadAcidLabel, plainCapacity, plainLabel } from './bank-label.js';
import { cabinet } from './cabinet.js';
import { between, fraction, mapping, number, oneOf, quantity, upTo, wholeNumber, word } from './fields.js';
import { pricedByEnergy } from './price.js';
import { usual } from './usual-values.js';

/** Keys every chemistry has. Voltages of set points are those of the whole bank at 25 degC. */
const anyBank = {
  voltage: quantity('voltage', { min: 2, max: 1000, say: '2 V to 1000 V' }),
  age: quantity('duration', { min: 0, max: 100 * hoursPerYear, say: '0 to 100 years' }).default(0),
  absorption: quantity('voltage', upTo(4000, 'V')).optional(),
  absorptionTime: quantity('duration', { min: 0, max: 48, say: '0 h to 48 h' }).optional(),
  /** Current at which absorption may end before its time; 0 A for never. */
  tailCurrent: quantity('current', between(0, 1e6, 'A')).optional(),
  float: quantity('voltage', upTo(4000, 'V')).optional(),
  chargeLimit: quantity('current', upTo(1e7, 'A')).optional(),
  dischargeLimit: quantity('current', upTo(1e7, 'A')).optional(),
  cabinet: cabinet.optional(),
  /** What surrounds the cabinet, or the bank without one: the heated rooms, a hut nobody heats, or the open air. */
  stands: word(['rooms', 'unheated', 'outdoors']).optional(),
  /** Cycles to 80 % capacity at depths of discharge, as a maker prints them. */
  cycleLife: z.array(mapping({ depth: fraction(), cycles: number(1, 1e6, 'cycles') })).optional(),
  calendarLife: quantity('duration', {
    min: 0.5 * hoursPerYear,
    max: 100 * hoursPerYear,
    say: '0.5 to 100 years',
  }).optional(),
  ...pricedByEnergy,
};

const leadAcid = {
  ...anyBank,
  ...leadAcidLabel,
  /** Below 0 a discharge slower than the label's goes on past the label. */
  floor: fraction({ min: -0.5, max: 0.95, say: '-50 % to 95 %' }).optional(),
  equalise: mapping({
    voltage: quantity('voltage', upTo(4000, 'V')).optional(),
    every: wholeNumber(1, 366, 'days'),
    time: quantity('duration', upTo(48, 'h')).default(2),
  }).optional(),
  compensation: quantity('voltagePerK', {
    min: -0.2,
    max: 0,
    say: 'a fall per kelvin for the whole bank such as -0.06 V/K',
  }).optional(),
};

interface Aired {
  chemistry: Chemistry;
  voltage: number;
  capacity: number;
  cabinet?: z.output<typeof cabinet> | undefined;
}

/** The bank with the air of its cabinet, where it has one. */
function airedCabinet<Bank extends Aired>({ cabinet, ...bank }: Bank) {
  const airOf = usual['bank.cabinet.ventilation'].value;
  return { ...bank, cabinet: cabinet && { ...cabinet, ventilation: cabinet.ventilation ?? airOf(bank) } };
}

export const bank = oneOf(
  'chemistry',
  ['flooded-lead-acid', 'agm', 'gel', 'lithium-iron-phosphate'],
  [
    mapping({ chemistry: z.literal('flooded-lead-acid'), ...leadAcid })
      .transform(plainCapacity)
      .superRefine(checkBank)
      .transform(airedCabinet),
    mapping({ chemistry: z.literal('agm'), ...leadAcid })
      .transform(plainCapacity)
      .superRefine(checkBank)
      .transform(airedCabinet),
    mapping({ chemistry: z.literal('gel'), ...leadAcid })
      .transform(plainCapacity)
      .superRefine(checkBank)
      .transform(airedCabinet),
    mapping({
      chemistry: z.literal('lithium-iron-phosphate'),
      ...anyBank,
      ...plainLabel,
      floor: fraction({ min: 0, max: 0.95, say: '0 % to 95 %' }).optional(),
    })
      .transform(plainCapacity)
      .superRefine(checkBank)
      .transform(airedCabinet),
  ],
);

export type SiteBank = z.output<typeof bank>;
