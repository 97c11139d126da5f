import { hoursPerYear } from '@wintergap/ground';
import * as z from 'zod';
import {
  azimuth,
  between,
  date,
  fraction,
  mapping,
  number,
  oneOf,
  quantity,
  text,
  tilt,
  twelve,
  upTo,
  wholeNumber,
  word,
} from './fields.js';
import { priced, pricedWhole } from './price.js';

/** A change per kelvin as data sheets print it: `-0.39 %`. */
const perKelvin = quantity('fraction', { min: -0.02, max: 0.02, say: 'a change per kelvin such as -0.39 %' });

const moduleShape = {
  power: quantity('power', upTo(100_000, 'W')).optional(),
  vmp: quantity('voltage', between(0.1, 1000, 'V')),
  imp: quantity('current', between(0.01, 100, 'A')),
  voc: quantity('voltage', between(0.3, 1000, 'V')),
  isc: quantity('current', between(0.01, 100, 'A')),
  cells: wholeNumber(1, 400, 'cells in series'),
  powerPerK: perKelvin.optional(),
  vocPerK: perKelvin.optional(),
  iscPerK: perKelvin.optional(),
  noct: quantity('temperature', { min: 30, max: 70, say: '30 degC to 70 degC' }).optional(),
  area: quantity('area', between(0.005, 10, 'm2')).optional(),
  technology: word(['crystalline', 'thin-film']).default('crystalline'),
  /** Of one module, or by its power. */
  price: priced.price,
  upkeep: priced.upkeep,
  lives: priced.lives,
};

/** Keys of a data sheet, which are the columns of a table of modules. */
export const moduleKeys: readonly string[] = Object.keys(moduleShape);

const moduleSheet = mapping(moduleShape);

const tilts = z
  .array(mapping({ from: date, tilt }), { error: () => 'expected a list such as [{ from: 10-01, tilt: 68 }]' })
  .min(1);

const stuck = z.array(mapping({ from: date, to: date, azimuth, tilt: tilt.optional() }));

/** What a mount that moves by motor has beside its geometry. */
const motor = {
  drive: quantity('power', between(0, 100_000, 'W')).optional(),
  stowAbove: quantity('speed', upTo(1000, 'm/s')).optional(),
  stuck: stuck.optional(),
  ...priced,
};

const mount = oneOf(
  'kind',
  ['fixed', 'seasonal', 'pole', 'one-axis', 'two-axis'],
  [
    mapping({ kind: z.literal('fixed'), tilt, azimuth, maxTilt: tilt.optional(), ...priced }),
    mapping({ kind: z.literal('seasonal'), azimuth, tilts, maxTilt: tilt.optional(), ...priced }),
    mapping({
      kind: z.literal('pole'),
      tilts: tilts.optional(),
      tilt: tilt.optional(),
      turn: number(0, 360, 'the whole turn in degrees').default(220),
      facing: azimuth.optional(),
      /** The steepest the mount can be set. */
      maxTilt: tilt.optional(),
      ...motor,
    }),
    mapping({
      kind: z.literal('one-axis'),
      axisTilt: tilt.default(0),
      axisAzimuth: azimuth.default(180),
      limit: number(0, 90, 'the rotation to either side in degrees').default(60),
      ...motor,
    }),
    mapping({
      kind: z.literal('two-axis'),
      minTilt: tilt.default(0),
      maxTilt: tilt.default(90),
      turn: number(0, 360, 'the whole turn in degrees').default(360),
      ...motor,
    }),
  ],
);

const efficiency = z.union([fraction(), mapping({ at: z.array(fraction()).min(2), is: z.array(fraction()).min(2) })]);

const controller = oneOf(
  'kind',
  ['maximum-power', 'direct'],
  [
    mapping({
      kind: z.literal('maximum-power'),
      maxVoltage: quantity('voltage', upTo(10_000, 'V')),
      maxCurrent: quantity('current', upTo(100_000, 'A')),
      efficiency: efficiency.default(0.97),
      nightDraw: quantity('power', between(0, 100_000, 'W')).default(0),
      ...pricedWhole,
    }),
    mapping({
      kind: z.literal('direct'),
      maxCurrent: quantity('current', upTo(100_000, 'A')).optional(),
      maxVoltage: quantity('voltage', upTo(10_000, 'V')).optional(),
      nightDraw: quantity('power', between(0, 100_000, 'W')).default(0),
      ...pricedWhole,
    }),
  ],
);

const losses = mapping({
  /** One share, or twelve by month. */
  soiling: z.union([fraction(), twelve(fraction())]).default(0.01),
  mismatch: fraction().default(0.01),
  /** Loss of power per year of age. */
  ageing: fraction().default(0.005),
  age: quantity('duration', { min: 0, max: 100 * hoursPerYear, say: '0 to 100 years' }).default(0),
  /** `false` leaves out what the glass throws back at flat angles, to see what it costs. */
  glass: z.boolean().default(true),
});

export const array = mapping({
  name: text,
  module: moduleSheet,
  inSeries: wholeNumber(1, 100, 'modules in series'),
  strings: wholeNumber(0, 1000, 'strings in parallel'),
  mount,
  height: quantity('length', between(0, 10_000, 'm')).default(0),
  cable: mapping({
    length: quantity('length', between(0, 10_000, 'm')),
    size: quantity('conductorArea', upTo(10_000, 'mm2')),
  }).optional(),
  controller,
  cellModel: word(['wind', 'noct']).default('wind'),
  losses: losses.prefault({}),
});

export type SiteArray = z.output<typeof array>;
export type SiteMount = SiteArray['mount'];

/** A mount whose tilt the owner chooses. */
export type TiltedMount = Extract<SiteMount, { kind: 'fixed' | 'seasonal' | 'pole' }>;

/** Whether the owner chooses a mount's tilt, for the year or by date; the others tilt by themselves. */
export const isTilted = (mount: SiteMount): mount is TiltedMount =>
  mount.kind === 'fixed' || mount.kind === 'seasonal' || mount.kind === 'pole';
