import type { UnitSystem } from '@wintergap/quantity';
import type { PlaceAnswer } from './read-answer.js';
import type { TypicalLoad } from './typical-loads.js';
import type { EngineParts } from './typical-parts.js';

export const chemistries = ['flooded-lead-acid', 'agm', 'gel', 'lithium-iron-phosphate'] as const;
export const mounts = ['fixed', 'seasonal', 'pole'] as const;

/** Where the weather comes from: a file, twelve means, the demo's, or a guess from the latitude. */
export type WeatherAnswer =
  | { kind: 'file'; path: string }
  | { kind: 'means'; irradiation: number[]; airC: number[] }
  | { kind: 'demo' }
  | { kind: 'guess' };

/** What somebody answered about a place, all that a site file is made from. */
export interface Answers {
  units: UnitSystem;
  place: PlaceAnswer;
  utcOffsetH: number;
  weather: WeatherAnswer;
  loads: TypicalLoad[];
  array: { watts: number; mount: (typeof mounts)[number] };
  bank: {
    chemistry: (typeof chemistries)[number];
    voltageV: 12 | 24 | 48;
    /** As it stands in the site file: `10 kWh` or `800 Ah`. */
    capacity: string;
    kWh: number;
  };
  engine: { kW: number; fuel: EngineParts['fuel'] } | null;
}

/** The day's energy of all that runs, Wh. */
export const dailyWh = ({ loads }: Pick<Answers, 'loads'>): number =>
  loads.reduce((sum, { whADay }) => sum + whADay, 0);

/** Lithium cells of 3.2 V make 12.8, 25.6 and 51.2 V of what is called 12, 24 and 48. */
export const nominalV = (chemistry: Answers['bank']['chemistry'], voltageV: number): number =>
  chemistry === 'lithium-iron-phosphate' ? Number((voltageV * (12.8 / 12)).toFixed(1)) : voltageV;
