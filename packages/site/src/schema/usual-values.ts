import {
  airWPerKPerM3PerH,
  type Chemistry,
  chemistryDefaults,
  floatGasMAPerAh,
  hydrogenVentilation,
} from '@wintergap/battery';
import { formatQuantity, type UnitSystem } from '@wintergap/quantity';

/** What a usual value is called, where it comes from, and how it is written in a site file; `null` for none. */
interface UsualValue {
  what: string;
  value: unknown;
  written: (value: never, units: UnitSystem) => string | null;
  /** The value in a sentence, where it would be misread as it is written in a site file. */
  said?: (value: never, units: UnitSystem) => string;
  source: string;
}

const noSource = 'common practice, no source';

const minutes = (hours: number) => `${Math.round(hours * 60)} min`;
const percent = (share: number) => `${Math.round(share * 100)} %`;
const none = () => null;

/** Heat that the air for the hydrogen of a bank on float carries out of its cabinet, W/K. */
function floatAirWPerK({ chemistry, voltage, capacity }: { chemistry: Chemistry; voltage: number; capacity: number }) {
  const { traits, cellV } = chemistryDefaults[chemistry];
  if (traits.gas === 'none') return 0;
  const gasMAPerAh = traits.gas === 'vented' ? floatGasMAPerAh.vented : floatGasMAPerAh.valveRegulated;
  return airWPerKPerM3PerH * hydrogenVentilation(Math.round(voltage / cellV), gasMAPerAh, capacity).airM3PerH;
}

/**
 * What a design is given where its site file says nothing, by the path of the key: the schema takes its defaults from
 * here, and the answer lists what was taken. A habit that people have or have not is never taken up for them: `none`.
 */
export const usual = {
  'generator.warmUp': {
    what: 'engine warm-up',
    value: 3 / 60,
    written: minutes,
    source: `before it is loaded, 2 to 5 min: ${noSource}`,
  },
  'generator.coolDown': {
    what: 'cool-down',
    value: 3 / 60,
    written: minutes,
    source: `without load before it stops, 3 to 5 min: ${noSource}`,
  },
  'generator.output.efficiency': {
    what: 'rectifier and regulator of the engine',
    value: 0.9,
    written: percent,
    source: `share of the set's rated power that reaches the bank's bus, 85 to 95 %: ${noSource}`,
  },
  'generator.output.charger.efficiency': {
    what: 'charger',
    value: 0.88,
    written: percent,
    source: `85 to 92 %: ${noSource}`,
  },
  'generator.exercise': {
    what: 'exercise runs',
    value: undefined,
    written: none,
    source: 'usual for engines that rest for months: 20 to 30 min a month; not taken up unless the file asks for it',
  },
  'generator.stop.fullEvery': {
    what: 'engine runs to a full bank',
    value: undefined,
    written: none,
    source: 'usual for flooded lead-acid: every 14 to 30 days; not taken up unless the file asks for it',
  },
  'bank.stands': {
    what: 'bank stands',
    value: undefined,
    written: (place: string) => place,
    source: 'a cabinet outdoors, a bank without one in the rooms',
  },
  'bank.cabinet.ventilation': {
    what: 'air through the cabinet',
    value: floatAirWPerK,
    written: (WPerK: number, units) => formatQuantity(WPerK, 'heatLoss', units, 2),
    source:
      'air for the hydrogen on float, 5 mA/Ah vented and 1 valve-regulated: EN 50272-2 / IEC 62485-2, public copy; none for lithium',
  },
  'rooms.atLeast': {
    what: 'rooms heated to',
    value: 18,
    written: (celsius: number, units) => formatQuantity(celsius, 'temperature', units),
    source: noSource,
  },
  'rooms.above': {
    what: 'rooms and huts above outdoors by',
    value: 3,
    written: (kelvin: number, units) => formatQuantity(kelvin, 'temperatureDifference', units),
    // "5.4 degF above outdoors" reads as a temperature.
    said: (kelvin: number, units) =>
      units === 'us'
        ? `${formatQuantity(kelvin, 'temperatureDifference', units).replace(' degF', '')} Fahrenheit degrees`
        : formatQuantity(kelvin, 'temperatureDifference', units),
    source: `what sun and walls give: ${noSource}`,
  },
  'converter.idle': {
    what: 'converter idle',
    value: 1,
    written: (watts: number) => `${watts} W`,
    source: noSource,
  },
} as const satisfies Record<string, UsualValue>;
