import { type BankSettings, chemistryDefaults } from '@wintergap/battery';
import { hoursPerYear } from '@wintergap/ground';
import type { SiteBank } from './schema/bank.js';

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
      site.compensation === undefined
        ? undefined
        : site.compensation / Math.round(site.voltage / chemistryDefaults[site.chemistry].cellV),
  };
}
