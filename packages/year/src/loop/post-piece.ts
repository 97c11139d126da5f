import type { Ledger } from '@wintergap/tally';
import type { BusFlow, Moment } from './bus-flow.js';
import type { Plant } from './plant.js';

/** Dark load below this share of the load is rounding, not darkness. */
const darkRounding = 1e-9;

/** A piece of an hour in which nothing happens. One object per run, filled again. */
export interface Piece {
  /** Its length, h. */
  hours: number;
  /** Change of the energy in the bank over it. */
  storedWh: number;
  /** What the engine gives towards the DC bus, before the charger. */
  engineDcInW: number;
}

export const createPiece = (): Piece => ({ hours: 0, storedWh: 0, engineDcInW: 0 });

/**
 * Posts one piece of an hour to the ledger's columns.
 *
 * The bank's loss is what went in at its terminals less what it holds more afterwards (or the other way round): the
 * heat of its resistance and of gassing. Load that the sun could not carry counts as shortfall when the engine runs
 * or the bank gives nothing.
 *
 * @param moment the moment for which the flow was solved
 */
export function postPiece(ledger: Ledger, plant: Plant, flow: BusFlow, moment: Moment, piece: Piece): void {
  const { h, heaterW, engineLoaded } = moment;
  const { hours, storedWh, engineDcInW } = piece;
  const acW = plant.acW[h]!;
  const dcW = plant.dcW[h]!;
  const served = flow.servedShare * hours;
  const acServedWh = flow.engineToAcW * hours + flow.acByInverterW * served;
  const dcServedWh = dcW * served;
  const loadWh = (acW + dcW) * hours;
  ledger.arrayAvailableWh[h]! += flow.sunW * hours;
  ledger.arrayUsedWh[h]! += (flow.sunW - flow.thrownW) * hours;
  ledger.throttledWh[h]! += flow.thrownW * hours;
  ledger.clippedWh[h]! += flow.clippedW * hours;
  ledger.spareWh[h]! += flow.spareW * hours;
  ledger.acServedWh[h]! += acServedWh;
  ledger.dcServedWh[h]! += dcServedWh;
  ledger.ownUseWh[h]! += (plant.ownUseW[h]! + heaterW) * served;
  ledger.inverterLossWh[h]! += (flow.inverterW - flow.acByInverterW) * served;
  ledger.converterLossWh[h]! += (plant.converterInputW[h]! - dcW) * served;
  ledger.bankV[h]! += flow.voltageV * hours;
  const darkWh = loadWh - acServedWh - dcServedWh;
  const isDark = darkWh > darkRounding * loadWh;
  if (isDark) {
    ledger.darkWh[h]! += darkWh;
    ledger.darkH[h]! += hours;
  }
  if (engineLoaded) {
    ledger.generatorWh[h]! += (flow.engineToAcW + engineDcInW) * hours;
    ledger.generatorToBusWh[h]! += (flow.engineToAcW + flow.engineToDcW) * hours;
    ledger.chargerLossWh[h]! += (engineDcInW - flow.engineToDcW) * hours;
    const askedW = flow.demandW + flow.engineToAcW;
    const bySun = askedW > 0 ? Math.min(flow.sunW / askedW, 1) : 1;
    ledger.shortfallWh[h]! += (1 - bySun) * loadWh;
  } else if (isDark) {
    ledger.shortfallWh[h]! += darkWh;
  }
  if (flow.amps >= 0) {
    ledger.bankChargeWh[h]! += flow.chargeW * hours;
    ledger.bankLossWh[h]! += flow.chargeW * hours - storedWh;
    ledger.gassingAh[h]! += (1 - flow.storedShare) * flow.amps * hours;
  } else {
    ledger.bankDischargeWh[h]! += flow.dischargeW * hours;
    ledger.bankLossWh[h]! += -storedWh - flow.dischargeW * hours;
  }
}
