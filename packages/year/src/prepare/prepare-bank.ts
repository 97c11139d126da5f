import {
  type Bank,
  type BankSettings,
  type Cabinet,
  type CabinetHeater,
  checkCabinet,
  createBank,
  heatCapacityFrom,
  insulationFrom,
} from '@wintergap/battery';
import { hoursPerYear } from '@wintergap/ground';
import { bankStands, type Site, type SiteBank } from '@wintergap/site';
import type { ChargingRules } from '../loop/charging.js';
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
export function prepareBank(site: Site, outdoorC: Float64Array): PreparedBank {
  const bank = createBank(bankSettings(site.bank));
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

/** The site file's bank in the words of the battery package. */
export function bankSettings(site: SiteBank): BankSettings {
  const shared = {
    voltageV: site.voltage,
    capacityAh: site.capacity,
    atRateH: site.atRate,
    floor: site.floor,
    ageYears: site.age / hoursPerYear,
    absorptionV: site.absorption,
    absorptionHours: site.absorptionTime,
    tailA: site.tailCurrent,
    floatV: site.float,
    chargeLimitA: site.chargeLimit,
    dischargeLimitA: site.dischargeLimit,
    cyclesByDepth: site.cycleLife,
    calendarLifeYears: site.calendarLife === undefined ? undefined : site.calendarLife / hoursPerYear,
  };
  if (site.chemistry === 'lithium-iron-phosphate') return { chemistry: site.chemistry, ...shared };
  return {
    chemistry: site.chemistry,
    ...shared,
    otherLabel: site.otherLabel,
    equaliseV: site.equalise?.voltage,
    compensationVPerCellK:
      site.compensation === undefined ? undefined : site.compensation / Math.round(site.voltage / leadAcidCellV),
  };
}

const leadAcidCellV = 2;
