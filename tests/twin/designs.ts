import { join } from 'node:path';
import { parseSite, type SiteFile } from '@wintergap/site';
import type { Place } from './places.js';

const root = join(import.meta.dirname, '../..');

/** Sheets that leave all five parameters free to meet it; invented. */
const modules = {
  small: `{ vmp: 17.9 V, imp: 5.59 A, voc: 22.3 V, isc: 5.98 A, cells: 36, vocPerK: -0.31 %, iscPerK: 0.05 %, noct: 46 degC }`,
  middle: `{ vmp: 32.5 V, imp: 9.24 A, voc: 39.9 V, isc: 9.82 A, cells: 60, vocPerK: -0.31 %, iscPerK: 0.05 %, noct: 45 degC }`,
  large: `{ vmp: 37.2 V, imp: 8.6 A, voc: 45.9 V, isc: 9.12 A, cells: 72, vocPerK: -0.32 %, iscPerK: 0.05 %, noct: 45 degC }`,
};

/**
 * Evenly spread numbers from a seed: Park and Miller (1988), Communications of the ACM 31, 1192-1201, begun at a remainder
 * of the seed's fifth power, since neighbouring seeds give neighbouring numbers.
 */
function chances(seed: number): () => number {
  const most = 2_147_483_647n;
  let state = Number((BigInt(seed + 2) ** 5n * 69_069n) % most);
  return () => {
    state = Number((BigInt(state) * 48_271n) % most);
    return state / Number(most);
  };
}

export interface Design {
  name: string;
  site: SiteFile;
}

/** Design number `seed` at a place: mount, modules, controller, bank, cabinet, loads and engine drawn by its chances. */
export function randomDesign(place: Place, seed: number): Design {
  const next = chances(seed);
  for (let i = 0; i < 5; i++) next();
  const pick = <Value>(...values: Value[]): Value => values[Math.floor(next() * values.length)]!;
  const between = (low: number, high: number) => low + next() * (high - low);
  const chance = (share: number) => next() < share;

  const volts = pick(12, 24, 24, 48);
  const chemistry = pick('flooded-lead-acid', 'flooded-lead-acid', 'agm', 'gel', 'lithium-iron-phosphate');
  const direct = chance(0.3);
  const tilt = Math.round(between(30, 80));
  const summer = Math.round(between(15, 50));
  const mount = pick(
    `{ kind: fixed, tilt: ${tilt}, azimuth: ${Math.round(between(140, 220))} }`,
    `{ kind: seasonal, azimuth: ${Math.round(between(160, 200))}, tilts: [{ from: 10-01, tilt: ${tilt} }, { from: 04-01, tilt: ${summer} }] }`,
    `{ kind: pole, turn: ${Math.round(between(120, 300))}, tilts: [{ from: 10-01, tilt: ${tilt} }, { from: 04-01, tilt: ${summer} }] }`,
    `{ kind: two-axis, minTilt: 5, maxTilt: 80, turn: 240 }`,
  );
  const kW = between(0.6, 4);
  const module = direct ? (volts === 12 ? 'small' : 'large') : pick('middle', 'large');
  const moduleW = module === 'small' ? 100 : module === 'middle' ? 300 : 320;
  const inSeries = direct ? Math.max(1, volts / 24) : volts === 48 ? 3 : 2;
  const strings = Math.max(1, Math.round((kW * 1000) / (moduleW * inSeries)));
  const arrayW = strings * inSeries * moduleW;
  // A limit that now and then clips, and one that never does.
  const limitA = Math.max(10, Math.round((arrayW / volts) * pick(0.75, 1.3)));
  const controller = direct
    ? `{ kind: direct, maxCurrent: ${limitA} A, nightDraw: 1 W }`
    : `{ kind: maximum-power, maxVoltage: 250 V, maxCurrent: ${limitA} A, efficiency: ${Math.round(between(94, 99))} %, nightDraw: 2 W }`;
  const dayKWh = (arrayW / 1000) * between(0.6, 1.8);
  const bankKWh = dayKWh * between(1.5, 6);
  const ampereHours = Math.max(40, Math.round((bankKWh * 1000) / volts));
  // Lithium stands warm: in the cold nobody can say when it charges, see the README.
  const isLithium = chemistry === 'lithium-iron-phosphate';
  const cabinet = chance(isLithium ? 0 : 0.6)
    ? `cabinet: { insulation: { foam: ${pick(1, 2, 4)} in, area: ${between(2.5, 4).toFixed(1)} m2 }${chance(0.3) ? `, heatedBy: { kind: heater, power: 40 W, keepAbove: 2 degC }` : ''} }`
    : `stands: ${isLithium ? 'rooms' : pick('rooms', 'unheated')}`;
  const floor = isLithium ? pick(5, 10, 20) : pick(20, 30, 50);
  const start = floor + Math.round(between(5, 20));
  const stop = Math.min(95, start + Math.round(between(20, 45)));
  const engineW = Math.round(Math.max(500, bankKWh * 1000 * between(0.08, 0.3)) / 100) * 100;
  const isAc = chance(0.4);
  const chargerW = Math.round((engineW * between(0.5, 0.9)) / 50) * 50;
  const bulkEnd = chance(0.2);
  const rule = pick('charge', 'charge', 'charge', 'hand', 'full');
  const engine = chance(0.15)
    ? ''
    : `
generator:
  output: ${isAc ? `{ bus: ac, power: ${engineW + 500} W, charger: { power: ${chargerW} W, efficiency: ${Math.round(between(80, 92))} % } }` : `{ bus: dc, power: ${engineW} W, efficiency: ${Math.round(between(85, 100))} % }`}
  fuel: { kind: petrol, atFull: ${(0.5 * (engineW / 1000) + 0.2).toFixed(2)} L/h, idle: ${(0.15 * (engineW / 1000) + 0.1).toFixed(2)} L/h }
  start: { ${rule === 'hand' ? `byHand: { below: ${start} %, at: [8, 13, 18] }` : `below: ${start} %`}${chance(0.6) ? `, between: [${pick(7, 8, 9)}, ${pick(19, 20, 22)}]${chance(0.3) ? ', endsRun: false' : ''}` : ''} }
  stop: { above: ${stop} %${bulkEnd ? ', atBulkEnd: true' : ''}${rule === 'full' ? ', fullEvery: 21' : ''} }
  minimumRun: ${bulkEnd ? '1 h' : pick('0 h', '1 h', '2 h')}
  warmUp: ${pick(0, 3, 5)} min
  coolDown: ${pick(0, 3)} min
`;
  const scale = dayKWh / 4.6;
  const watts = (value: number) => `${(value * scale).toFixed(1)} W`;
  const text = `
name: ${place.name} ${seed}
place: { latitude: ${place.latitude}, longitude: ${place.longitude}, elevation: ${place.elevationM} m, utcOffset: ${place.utcOffsetH} h }
weather: { file: ${place.weather}, accepted: true }
ground: { albedo: 0.2, snowAlbedo: 0.65 }
snow: { cover: ${pick('usual', 'usual', 'full', 'none')} }
${chance(0.5) ? 'skyline:\n  - { from: 70, to: 125, top: 16 m, distance: 40 m }\n  - { from: 215, to: 260, top: 14 m, distance: 45 m, clear: { leafOn: 10 %, leafOff: 50 % } }' : ''}
arrays:
  - name: array
    module: ${modules[module]}
    inSeries: ${inSeries}
    strings: ${strings}
    mount: ${mount}
    height: 3 m
    cable: { length: ${Math.round(between(5, 30))} m, size: ${pick(10, 16, 35)} mm2 }
    controller: ${controller}
    losses: { soiling: ${pick(0, 2, 4)} %, mismatch: 1 %${chance(0.2) ? ', glass: false' : ''} }
    cellModel: ${pick('wind', 'wind', 'noct')}
bank:
  chemistry: ${chemistry}
  voltage: ${volts} V
  capacity: ${ampereHours} Ah
  ${isLithium ? '' : `atRate: ${pick(10, 20, 100)} h`}
  floor: ${floor} %
  ${chemistry === 'flooded-lead-acid' && chance(0.4) ? 'equalise: { every: 30, time: 2 h }' : ''}
  ${cabinet}
inverter: { power: ${Math.round(600 + 900 * scale)} W, idle: ${Math.round(between(4, 18))} W, efficiency: ${Math.round(between(90, 95))} % }
loads:
  - { name: freezer, power: ${watts(90)}, runs: 35 %, bus: ac }
  - { name: lights, power: ${watts(60)}, bus: dc, when: { dark: true, hours: [[6, 8], [16, 23]] } }
  - { name: well pump, power: ${watts(750)}, perDay: 20 min, bus: ac, when: { hours: [7, 20] } }
  - { name: radio, power: ${watts(40)}, bus: dc }
  - { name: tools, power: ${watts(120)}, runs: 60 %, bus: ac, when: { hours: [8, 18], days: weekdays } }
  - { name: circulators, power: ${watts(45)}, bus: dc, when: { outdoorBelow: 14 degC, fullAt: -15 degC } }
  - { name: extractor, power: ${watts(300)}, perDay: 4 h, bus: ac, when: { hours: [9, 17], season: { from: 08-10, to: 09-05 } } }
${engine}`;
  const traits = [mount.split(' ')[2]!.replace(',', ''), direct ? 'direct' : 'max power', `${volts} V`, chemistry];
  const ofEngine = engine === '' ? 'no engine' : `${isAc ? 'ac' : 'dc'} engine, ${rule}`;
  return {
    name: [...traits, ofEngine].join(', '),
    site: parseSite(text, join(root, `${place.name}.yaml`)),
  };
}
