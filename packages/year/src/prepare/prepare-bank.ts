import {
  type Bank,
  type Cabinet,
  type CabinetHeater,
  checkCabinet,
  createBank,
  heatCapacityFrom,
  insulationFrom,
} from '@wintergap/battery';
import { bankSettings, bankStands, type Site, type SiteBank } from '@wintergap/site';
import type { ChargingRules } from '../loop/charging.js';
import type { PreparedCache } from './prepared-cache.js';
import { airAround } from './rooms-air.js';

/** The bank and the place it stands in, ready for the balance. */
export interface PreparedBank {
  bank: Bank;
  cabinet: Cabinet;
  /** Air around the cabinet, or around a bank without one, degC, hour by hour. */
  aroundC: Float64Array;
  heater: CabinetHeater | null;
  chargeRules: ChargingRules;
}

/** Heat a bank without a cabinet gives to the air, W/K: about 1.5 m2 of surface at 8 W/(m2 K), common practice, no source. */
const bareBankWPerK = 12;

/** Makes the bank and what surrounds it. */
export function prepareBank(site: Site, outdoorC: Float64Array, prepared: PreparedCache): PreparedBank {
  const bank = prepared.lasting('bank', [site.bank], () => createBank(bankSettings(site.bank)));
  const { cabinet: written } = site.bank;
  const heatCapacityWhPerK =
    written?.heatCapacity ?? heatCapacityFrom(site.bank.chemistry, site.bank.voltage * site.bank.capacity);
  const heatedBy = written?.heatedBy;
  const cabinet: Cabinet = written
    ? {
        insulationWPerK: insulationOf(written.insulation),
        heatCapacityWhPerK,
        ventilationWPerK: written.ventilation,
        ...(heatedBy !== undefined &&
          heatedBy !== 'none' &&
          heatedBy.kind === 'room' && { sharedRoom: { roomC: heatedBy.temperature, WPerK: heatedBy.coupling } }),
      }
    : { insulationWPerK: bareBankWPerK, heatCapacityWhPerK };
  checkCabinet(cabinet);
  const equalise = 'equalise' in site.bank ? site.bank.equalise : undefined;
  return {
    bank,
    cabinet,
    aroundC: airAround(bankStands(site.bank), site, outdoorC),
    heater:
      heatedBy !== undefined && heatedBy !== 'none' && heatedBy.kind === 'heater'
        ? { powerW: heatedBy.power, keepAboveC: heatedBy.keepAbove }
        : null,
    chargeRules: {
      absorptionH: bank.absorptionHours,
      tailAmps: bank.tailA,
      equaliseEveryDays: equalise?.every ?? 0,
      equaliseH: equalise?.time ?? 0,
    },
  };
}

function insulationOf(written: NonNullable<SiteBank['cabinet']>['insulation']): number {
  if (typeof written === 'number') return written;
  return insulationFrom({ areaM2: written.area, thicknessM: written.foam, conductivity: written.conductivity });
}
