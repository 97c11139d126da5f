import { hoursPerYear } from '@wintergap/ground';

/**
 * The hourly energy columns, Wh in the hour that begins h hours after New Year, and how each enters the balance.
 * `in` and `out` cross the system's edge, `lost` turns to heat or gas inside it, `note` is not part of the balance.
 */
export const energyColumns = {
  /** What the controllers can put on the bus within their current limits. available = used + throttled. */
  arrayAvailableWh: 'note',
  arrayUsedWh: 'in',
  /** There, but the full bank and the load could not take it. */
  throttledWh: 'note',
  /** Above a controller's current limit, where load or bank would have taken it: what a larger controller would bring. */
  clippedWh: 'note',
  /** Above a controller's current limit, where the full bank and the load would have refused it too. */
  spareWh: 'note',
  /** Everything the engine's generator gave, AC and DC. */
  generatorWh: 'in',
  /** The part of it that reached the buses: AC loads straight away, the DC bus after the charger. */
  generatorToBusWh: 'note',
  acServedWh: 'out',
  dcServedWh: 'out',
  /** Load that nothing met, AC and DC. */
  darkWh: 'note',
  /** Load that sun and bank could not meet at that moment: engine-carried or dark. */
  shortfallWh: 'note',
  /** Tracker drives, controllers' night draw, cabinet heater. */
  ownUseWh: 'out',
  inverterLossWh: 'lost',
  converterLossWh: 'lost',
  chargerLossWh: 'lost',
  bankLossWh: 'lost',
  selfDischargeWh: 'lost',
  bankChargeWh: 'note',
  bankDischargeWh: 'note',
} as const;

export type EnergyColumn = keyof typeof energyColumns;

/** The year as an hourly table. Energies are Wh within the hour; states are those at the hour's end. */
export type Ledger = Record<EnergyColumn, Float64Array> & {
  /** Energy held in the bank at the hour's end, Wh. */
  bankStoredWh: Float64Array;
  /** Energy held at the year's start, Wh. */
  bankStoredAtStartWh: number;
  /** State of charge at the hour's end, 0 to 1. */
  stateOfCharge: Float64Array;
  /** Lowest state of charge within the hour, 0 to 1. */
  lowestStateOfCharge: Float64Array;
  /** Bank temperature at the hour's end, degC. */
  bankC: Float64Array;
  /** Bank terminal voltage, mean over the hour, V. */
  bankV: Float64Array;
  /** Engine running time within the hour, h. */
  generatorH: Float64Array;
  /** Engine starts within the hour. */
  starts: Float64Array;
  fuelL: Float64Array;
  /** Charge turned to gas, Ah per cell string. */
  gassingAh: Float64Array;
  /** Time in which some load stayed dark, h. */
  darkH: Float64Array;
  /** Days since the chargers last brought the bank to full, counted at midnight. */
  daysSinceFull: Float64Array;
};

/** Columns beside the energies that an hour moves: what the bank holds, how warm it is, the engine, counts. */
const stateColumns = [
  'bankStoredWh',
  'stateOfCharge',
  'lowestStateOfCharge',
  'bankC',
  'bankV',
  'generatorH',
  'starts',
  'fuelL',
  'gassingAh',
  'darkH',
  'daysSinceFull',
] as const;

/** All hourly columns in the order of the CSV file. */
export const ledgerColumns: readonly (EnergyColumn | (typeof stateColumns)[number])[] = [
  ...(Object.keys(energyColumns) as EnergyColumn[]),
  ...stateColumns,
];

/** An empty ledger: every column allocated once, before the loop. */
export function createLedger(): Ledger {
  const columns = Object.fromEntries(ledgerColumns.map((name) => [name, new Float64Array(hoursPerYear)]));
  return { ...columns, bankStoredAtStartWh: 0 } as Ledger;
}
