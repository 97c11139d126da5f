import { parseQuantity } from '@wintergap/quantity';

/** A load as a site file has it, and what it takes. */
export interface TypicalLoad {
  name: string;
  whADay: number;
  bus: 'ac' | 'dc';
  powerW: number;
  /** Its keys beside `name` and `bus`. */
  keys: string;
}

const load = (name: string, whADay: number, bus: 'ac' | 'dc', powerW: number, keys: string): TypicalLoad => ({
  name,
  whADay,
  bus,
  powerW,
  keys,
});

/** What runs in a small house, with the Wh of a day: common practice, no source. */
export const typicalLoads: readonly TypicalLoad[] = [
  load('refrigerator', 670, 'ac', 80, 'power: 80 W, runs: 35 %, surge: 800 W'),
  load('freezer', 760, 'ac', 90, 'power: 90 W, runs: 35 %, surge: 900 W'),
  load('lights', 240, 'dc', 40, 'power: 40 W, when: { dark: true, hours: [[6, 8], [16, 23]] }'),
  load('telephones and laptop', 300, 'ac', 60, 'power: 60 W, perDay: 5 h, when: { hours: [8, 22] }'),
  load('router and radio', 340, 'dc', 14, 'power: 14 W'),
  load('water pump', 250, 'ac', 750, 'power: 750 W, perDay: 20 min, surge: 2.5 kW, when: { hours: [7, 20] }'),
  load('washing machine', 300, 'ac', 400, 'power: 400 W, perDay: 45 min, when: { hours: [10, 15] }'),
  load('television', 240, 'ac', 80, 'power: 80 W, perDay: 3 h, when: { hours: [18, 23] }'),
  load('kitchen machines', 230, 'ac', 900, 'power: 900 W, perDay: 15 min, when: { hours: [7, 19] }'),
  load('workshop tools', 290, 'ac', 1200, 'power: 1200 W, perDay: 20 min, when: { hours: [8, 18], days: weekdays }'),
  load('heating circulators', 540, 'dc', 45, 'power: 45 W, when: { outdoorBelow: 14 degC, fullAt: -15 degC }'),
  load('satellite terminal', 1200, 'ac', 50, 'power: 50 W'),
];

/** Numbers of the list, ranges of them, and things of one's own such as `radio beacon 40 Wh`, between commas. */
export function readLoads(answer: string): TypicalLoad[] {
  const loads = answer
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .flatMap((part) => (/^[\d\s-]+$/.test(part) ? part.split(/\s+(?!-)/).flatMap(listed) : [own(part)]));
  if (loads.length === 0) throw new Error('found nothing, expected numbers of the list such as 1, 3-5');
  const twice = loads.find(({ name }, i) => loads.findIndex((other) => other.name === name) < i);
  if (twice) throw new Error(`found ${twice.name} twice; name each thing once`);
  return loads;
}

function listed(part: string): TypicalLoad[] {
  const [from = Number.NaN, to = from] = part.split('-').map(Number);
  if (!(from >= 1 && to >= from && to <= typicalLoads.length)) {
    throw new Error(`found "${part}", expected numbers of the list, 1 to ${typicalLoads.length}`);
  }
  return typicalLoads.slice(from - 1, to);
}

function own(part: string): TypicalLoad {
  const match = /^([^\d"{}:#]*[^\d\s"{}:#])\s+(\d\S*\s*\S*)$/.exec(part);
  if (!match) {
    throw new Error(
      `found "${part}", expected a number of the list, or a name with the energy of a day such as radio 40 Wh`,
    );
  }
  const [, name = '', energy = ''] = match;
  const wh = parseQuantity(energy.replace(/\s*(a|\/|per)\s*day$/, ''), 'energy');
  if (!(wh >= 1 && wh <= 1e6)) throw new Error(`found ${energy}, expected 1 Wh to 1000 kWh a day`);
  return load(name, wh, 'ac', wh / 24, `power: ${Number((wh / 24).toPrecision(3))} W`);
}
