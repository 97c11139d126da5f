import { mustBeShare, mustLie } from '@wintergap/ground';
import { largestAmount } from '../check-input.js';

/** A converter between the DC bus and the store: electrolyser and compressor, fuel cell, charger or inverter. */
export interface StoreConverter {
  /** Energy out per energy in while it runs, auxiliaries included, above 0 and up to 1. */
  efficiency: number;
  /** Rated power at the DC bus, W: what converter in draws, what converter out gives. */
  powerW: number;
  /** Share of the rated power below which it cannot run, 0 to 1. */
  minimumLoad: number;
  /** Draw on the DC bus in hours in which it does not run, W. */
  standbyW: number;
}

/**
 * A seasonal store between two converters. Content is counted at the store, after converter in: for hydrogen it is the
 * lower heat of the gas held; for any other kind (`own`) it is whatever converter out turns back into electricity.
 */
export interface SeasonalStore {
  kind: 'hydrogen' | 'own';
  converterIn: StoreConverter;
  store: {
    /** Most the store can hold, Wh at the store. */
    capacityWh: number;
    /** Share of the content lost per hour, 0 up to but not including 1. 3 % a month is 0.03 / 730. */
    standingLossPerH: number;
  };
  converterOut: StoreConverter;
}

/** A seasonal store before it is sized: everything but the three sizes. */
export interface StoreTechnology {
  kind: 'hydrogen' | 'own';
  converterIn: Omit<StoreConverter, 'powerW'>;
  standingLossPerH: number;
  converterOut: Omit<StoreConverter, 'powerW'>;
}

/** Electricity back per electricity put in, standing loss and standby aside. */
export function roundTripEfficiency(technology: Pick<StoreTechnology, 'converterIn' | 'converterOut'>): number {
  return technology.converterIn.efficiency * technology.converterOut.efficiency;
}

/** A store of given sizes. */
export function sizedStore(
  technology: StoreTechnology,
  converterInW: number,
  capacityWh: number,
  converterOutW: number,
): SeasonalStore {
  return {
    kind: technology.kind,
    converterIn: { ...technology.converterIn, powerW: converterInW },
    store: { capacityWh, standingLossPerH: technology.standingLossPerH },
    converterOut: { ...technology.converterOut, powerW: converterOutW },
  };
}

/** @throws OutOfRangeError naming the first value out of range */
export function checkTechnology(technology: StoreTechnology): void {
  for (const side of ['converterIn', 'converterOut'] as const) {
    mustBeShare(`${side}.efficiency`, technology[side].efficiency);
    mustLie(`${side}.minimumLoad`, technology[side].minimumLoad, 0, 1);
    mustLie(`${side}.standbyW`, technology[side].standbyW, 0, largestAmount);
  }
  mustLie('standingLossPerH', technology.standingLossPerH, 0, 1 - Number.EPSILON);
}

/** @throws OutOfRangeError naming the first value out of range */
export function checkStore(store: SeasonalStore): void {
  checkTechnology({ ...store, standingLossPerH: store.store.standingLossPerH });
  mustLie('converterIn.powerW', store.converterIn.powerW, 0, largestAmount);
  mustLie('converterOut.powerW', store.converterOut.powerW, 0, largestAmount);
  mustLie('store.capacityWh', store.store.capacityWh, 0, largestAmount);
}
