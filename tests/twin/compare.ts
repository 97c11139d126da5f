import { simulateSite } from '@wintergap/year';
import { randomDesign } from './designs.js';
import { type Grain, twinOf } from './from-site.js';
import type { Place } from './places.js';
import { type Sun, sunOfMinutes } from './sun.js';
import { twinYear } from './year.js';

/** What is compared, of one run. */
export interface Figures {
  planeKWhPerM2: number;
  availableKWh: number;
  throttledKWh: number;
  engineH: number;
  starts: number;
  fuelL: number;
  /** 0 to 1. */
  lowestCharge: number;
}

/** One design, run both ways. */
export interface Compared {
  place: string;
  seed: number;
  design: string;
  packages: Figures;
  twin: Figures;
}

const calendarYear = 2025;
const suns = new Map<Place, Sun>();

function sunOf(place: Place): Sun {
  let sun = suns.get(place);
  if (!sun) {
    sun = sunOfMinutes(place.latitude, place.longitude, place.utcOffsetH, calendarYear);
    suns.clear();
    suns.set(place, sun);
  }
  return sun;
}

/** Runs random design number `seed` at a place through the packages and through the twin. */
export function compare(place: Place, seed: number, grain: Grain = 'hours'): Compared {
  const { name, site } = randomDesign(place, seed);
  const year = simulateSite(site.base);
  const { ledger } = year;
  const settings = twinOf(year, sunOf(place), grain);
  const twin = twinYear(settings);
  return {
    place: place.name,
    seed,
    design: name,
    packages: {
      planeKWhPerM2: sum(year.arrays[0]!.plane.planeWm2) / 1000,
      availableKWh: sum(ledger.arrayAvailableWh) / 1000,
      throttledKWh: sum(ledger.throttledWh) / 1000,
      engineH: sum(ledger.generatorH),
      starts: sum(ledger.starts),
      fuelL: sum(ledger.fuelL),
      lowestCharge: Math.min(...ledger.lowestStateOfCharge),
    },
    twin: {
      planeKWhPerM2: sum(settings.arrays[0]!.planeWm2) / 60_000,
      availableKWh: twin.availableKWh,
      throttledKWh: twin.throttledKWh,
      engineH: twin.engineH,
      starts: twin.starts,
      fuelL: twin.fuelL,
      lowestCharge: twin.lowestCharge,
    },
  };
}

const sum = (column: Float64Array): number => column.reduce((total, value) => total + value, 0);

/** By how much the twin has more, as a share of what the packages have. */
export const moreInTwin = ({ packages, twin }: Compared, figure: keyof Figures): number =>
  packages[figure] === twin[figure] ? 0 : twin[figure] / packages[figure] - 1;
