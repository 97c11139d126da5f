import { airWPerKPerM3PerH, type HydrogenVentilation, tenHourAh, ventilationOfBank } from '@wintergap/battery';
import type { YearResult } from '../year-result.js';

/** The air that a bank's hydrogen needs, and the air that the site file assumes. */
export interface BankAir extends HydrogenVentilation {
  /** What `bank.cabinet.ventilation` comes to as air, m3/h; `null` for a bank without a cabinet, which the room airs. */
  assumedM3PerH: number | null;
  /** Heat that the needed air carries out, W/K. */
  neededWPerK: number;
}

/** `null` for a bank that makes no hydrogen in use. */
export function bankAir({ site, plant }: Pick<YearResult, 'site' | 'plant'>): BankAir | null {
  const { settings, refAh } = plant.bank;
  const needed = ventilationOfBank(settings, tenHourAh(refAh, settings.atRateH, settings.rateWeight));
  if (needed === null) return null;
  const { cabinet } = site.bank;
  const neededWPerK = needed.airM3PerH * airWPerKPerM3PerH;
  return { ...needed, neededWPerK, assumedM3PerH: cabinet ? cabinet.ventilation / airWPerKPerM3PerH : null };
}
