import { bankAir, type YearResult } from '@wintergap/year';
import { figure } from '../../words/figures.js';

/** The air that the bank's hydrogen needs, in one sentence; `null` for a bank that makes none in use. */
export function bankAirText(result: YearResult): string | null {
  const air = bankAir(result);
  if (air === null) return null;
  const { airM3PerH, openingCm2, assumedM3PerH } = air;
  const where = assumedM3PerH === null ? 'the room of the bank' : 'the cabinet';
  const assumed =
    assumedM3PerH === null
      ? ''
      : `; the site file assumes ${assumedM3PerH < 0.05 ? 'none' : `${figure(assumedM3PerH)} m3/h`} (bank.cabinet.ventilation), which sets how warm it stays`;
  return `hydrogen: ${where} needs ${figure(airM3PerH)} m3/h of air while charging, or openings of ${figure(openingCm2, 0)} cm2 low and high (IEC 62485-2)${assumed}. An estimate for planning: the local code decides; no sparks or flames near it`;
}
