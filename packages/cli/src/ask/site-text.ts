import { relative, sep } from 'node:path';
import { type Dimension, formatQuantity } from '@wintergap/quantity';
import { type Answers, dailyWh, nominalV, type WeatherAnswer } from './answers.js';
import { guessedClimate } from './guessed-climate.js';
import { arrayParts, controllerFor, engineParts, inverterWattsFor } from './typical-parts.js';

/**
 * The site file for what was answered: complete, commented, with typical parts marked as such.
 *
 * @param folder where it will stand; the weather file is named from there
 */
export function siteText(answers: Answers, name: string, folder: string): string {
  const { units, place, utcOffsetH, loads, bank } = answers;
  const shown = (value: number, dimension: Dimension, digits = 3) => formatQuantity(value, dimension, units, digits);
  const acPowers = loads.filter(({ bus }) => bus === 'ac').map(({ powerW }) => powerW);
  const watts = inverterWattsFor(acPowers);
  const inverter =
    acPowers.length === 0
      ? ''
      : `# Large enough for what may run together; idle draw and efficiency as usual for the size.
inverter: { power: ${shown(watts, 'power')}, surge: ${shown(2 * watts, 'power')}, idle: ${Math.round(5 + 0.004 * watts)} W, efficiency: 93 % }

`;
  return `# ${name}: written from answers. What is marked typical is a class of parts, no one's: put in the data sheets.
# Every quantity carries its unit. Then:  wintergap year FILE, wintergap check FILE, wintergap compare FILE

name: ${JSON.stringify(name)}
units: ${units}
place: { latitude: ${place.latitude}, longitude: ${place.longitude}, elevation: ${shown(place.elevationM, 'length', 4)}, utcOffset: ${utcOffsetH} h }

${weatherLines(answers, folder)}

# What stands between array and sun, by direction; take away the # and put in trees, ridges and houses.
# skyline: [{ from: 100, to: 140, top: ${shown(12, 'length')}, distance: ${shown(40, 'length')} }]

${arrayLines(answers, shown)}

${bankLines(bank, shown)}

${inverter}# ${Math.round(dailyWh(answers))} Wh a day of typical loads.
loads:
${loads.map((load) => `  - { name: ${nameText(load.name)}, ${inUnits(load.keys, shown)}, bus: ${load.bus} }   # ${Math.round(load.whADay)} Wh a day`).join('\n')}

${engineLines(answers, shown)}
# Other designs, side by side: wintergap compare FILE
variants:
${variantLines(answers)}
`;
}

/** A name as YAML reads it: in quotes where it would be taken for something else. */
const nameText = (name: string): string =>
  /^[a-z][\w ]*$/i.test(name) && !/^(true|false|null|yes|no|on|off|y|n)$/i.test(name) ? name : JSON.stringify(name);

type Shown = (value: number, dimension: Dimension, digits?: number) => string;

/** Temperatures of a load's keys in the units of the file. */
const inUnits = (keys: string, shown: Shown): string =>
  keys.replace(/(-?\d+) degC/g, (_, celsius: string) => shown(Number(celsius), 'temperature'));

function weatherLines({ weather, place, units }: Answers, folder: string): string {
  const list = (values: readonly number[], dimension: Dimension) =>
    `[${values.map((value) => formatQuantity(value, dimension, units)).join(', ')}]`;
  const about: Record<WeatherAnswer['kind'], string> = {
    file: '# Judge it first: wintergap weather FILE',
    demo: '# Invented weather of an invented place.',
    means: '# Twelve means, January first; a year of hours is made from them.',
    guess:
      '# A GUESS from the latitude and elevation, good to several degrees, near the sea ten, and a fifth of the sun. Decide nothing on it:\n# put in a weather file, or the twelve means of a station nearby (irradiation: [1.5 kWh/m2, ...] for clearness).',
  };
  if (weather.kind === 'demo') return `${about.demo}\nweather: kettle-pond.csv`;
  if (weather.kind === 'file') {
    return `${about.file}\nweather: ${JSON.stringify(relative(folder, weather.path).split(sep).join('/'))}`;
  }
  const guess = guessedClimate(place.latitude, place.elevationM);
  const sun =
    weather.kind === 'means'
      ? `irradiation: ${list(weather.irradiation, 'irradiation')}`
      : `clearness: [${guess.clearness.join(', ')}]`;
  const air = weather.kind === 'means' ? weather.airC : guess.airC;
  const snowyDays = air.map((celsius) => (celsius < 0 ? 8 : celsius < 4 ? 3 : 0));
  return `${about[weather.kind]}
weather:
  months:
    ${sun}
    air: ${list(air, 'temperature')}
    snowyDays: [${snowyDays.join(', ')}]                # typical where it is that cold${weather.kind === 'guess' ? '\n    guessed: true' : ''}`;
}

function arrayLines({ array, bank, place }: Answers, shown: Shown): string {
  const parts = arrayParts(array.watts, bank.voltageV);
  const { module, inSeries, strings } = parts;
  const total = module.powerW * inSeries * strings.reduce((sum, some) => sum + some, 0);
  const sunny = place.latitude >= 0 ? 180 : 0;
  const steep = Math.round(Math.min(85, Math.abs(place.latitude) + 15));
  const flat = Math.round(Math.max(5, Math.abs(place.latitude) - 15));
  const [winter, summer] = place.latitude >= 0 ? ['10-01', '04-01'] : ['04-01', '10-01'];
  const tilts = `tilts: [{ from: ${winter}, tilt: ${steep} }, { from: ${summer}, tilt: ${flat} }]`;
  const mount = {
    fixed: `{ kind: fixed, tilt: ${steep}, azimuth: ${sunny} }`,
    seasonal: `{ kind: seasonal, azimuth: ${sunny}, ${tilts} }`,
    pole: `{ kind: pole, turn: 220, facing: ${sunny}, ${tilts} }`,
  }[array.mount];
  const one = (inParallel: number, i: number) => `  - name: ${arrayName(i, strings.length)}
    module: ${module.sheet}
    inSeries: ${inSeries}
    strings: ${inParallel}
    mount: ${mount}
    height: ${shown(array.mount === 'pole' ? 3 : 2, 'length', 2)}
    cable: { length: ${shown(15, 'length', 2)}, size: ${cableSize(parts.cableMm2, shown)} }
    controller: { kind: maximum-power, maxVoltage: ${parts.maxVoltageV} V, maxCurrent: ${parts.maxCurrentA} A, efficiency: 97 % }
    losses: { soiling: 2 %, mismatch: 1 % }`;
  return `# Asked for ${shown(array.watts, 'power', 4)}; this is ${shown(total, 'power', 4)}, of ${module.name}: typical. So are controller and cable.
# Tilts are degrees from the horizontal, azimuths clockwise from north.
arrays:
${strings.map(one).join('\n')}`;
}

const arrayName = (i: number, of: number): string => (of === 1 ? 'array' : `array ${i + 1}`);

/** In US units the next gauge up, so that it is on sale. */
function cableSize(mm2: number, shown: Shown): string {
  if (shown(1, 'length').endsWith(' m')) return `${mm2} mm2`;
  const gauges = ['8 AWG', '6 AWG', '4 AWG', '2 AWG', '1/0 AWG', '2/0 AWG', '3/0 AWG', '4/0 AWG'];
  const areas = [8.4, 13.3, 21.2, 33.6, 53.5, 67.4, 85, 107.2];
  return gauges[areas.findIndex((area) => area >= mm2)] ?? '4/0 AWG';
}

function bankLines({ chemistry, voltageV, capacity, kWh }: Answers['bank'], shown: Shown): string {
  const lithium = chemistry === 'lithium-iron-phosphate';
  const flooded = chemistry === 'flooded-lead-acid';
  // Cells and the air around them, in a box of twice their surface.
  const area = Math.max(1, 0.42 * kWh ** (2 / 3));
  const stands = flooded
    ? `  # Vented cells stand outside the rooms: an insulated, vented cabinet.
  cabinet: { insulation: { foam: ${shown(0.05, 'depth', 2)}, area: ${shown(area, 'area', 2)} } }`
    : `  stands: rooms                     # or outdoors, unheated`;
  return `# Typical ${lithium ? 'lithium' : 'lead-acid'} cells; set points of the maker's sheet may be added (absorption, float).
bank:
  chemistry: ${chemistry}
  voltage: ${nominalV(chemistry, voltageV)} V
  capacity: ${capacity}
${lithium ? '' : '  atRate: 20 h\n'}  floor: ${lithium ? '10 %' : '40 %'}                        # not to be discharged further
${stands}`;
}

function engineLines({ engine, bank }: Answers, shown: Shown): string {
  if (!engine) return '# No engine: what sun and bank do not carry stays dark.\n';
  const { kW, fuel } = engine;
  const { atFull, idle } = engineParts(kW, fuel);
  const lithium = bank.chemistry === 'lithium-iron-phosphate';
  const charger = Math.min(0.7 * kW, (lithium ? 0.4 : 0.15) * bank.kWh);
  return `# A typical set with a charger that ${lithium ? 'the bank' : 'lead-acid of this size'} bears; it starts when the bank is low, in hours in which people
# accept the noise${lithium ? '' : ', and fills the bank every three weeks at least'}. Add price: 1.60 ${shown(1, 'volume').endsWith('gal') ? '/gal' : '/L'} to fuel, and costs are told.
generator:
  output: { bus: ac, power: ${shown(kW * 1000, 'power')}, charger: { power: ${shown(charger * 1000, 'power', 2)}, efficiency: 88 % } }
  fuel: { kind: ${fuel}, atFull: ${shown(atFull, 'volumeFlow', 2)}, idle: ${shown(idle, 'volumeFlow', 2)} }
  start: { below: ${lithium ? '20 %' : '50 %'}, between: [8, 20] }
  stop: { above: ${lithium ? '70 %' : '85 %, fullEvery: 21'} }
`;
}

function variantLines({ array, bank, engine }: Answers): string {
  const { module, inSeries, strings } = arrayParts(array.watts, bank.voltageV);
  const more = strings[0]! + 1;
  const maxCurrent = controllerFor(more * inSeries * module.powerW, bank.voltageV);
  const size = Number((1.5 * Number.parseFloat(bank.capacity)).toPrecision(3));
  const capacity = bank.capacity.replace(/^[\d.]+/, String(size));
  return [
    `  larger bank: { bank: { capacity: ${capacity} } }`,
    ...(maxCurrent === null
      ? []
      : [
          `  one string more: { arrays: [{ name: ${arrayName(0, strings.length)}, strings: ${more}, controller: { maxCurrent: ${maxCurrent} A } }] }`,
        ]),
    ...(engine ? ['  no engine: { generator: null }'] : []),
  ].join('\n');
}
