import { hoursPerYear, mustHold, mustLie } from '@wintergap/ground';

/** A DC-DC converter between the bank and DC loads of another voltage. */
export interface Converter {
  /** Output over input, idle draw left out, above 0 and up to 1. */
  efficiency: number;
  idleW: number;
}

/** Power drawn from the bank to give `dcW` behind the converter. */
export function converterInputW(dcW: number, converter: Converter): number {
  return dcW / converter.efficiency + converter.idleW;
}

/** Power drawn from the bank in each hour, W. */
export function converterYear(dcW: Float64Array, converter: Converter): Float64Array {
  mustLie('converter efficiency', converter.efficiency, 0.1, 1);
  mustLie('converter idleW', converter.idleW, 0, 1e6);
  mustHold('dcW', dcW, hoursPerYear, 0, 1e12);
  const inputW = new Float64Array(hoursPerYear);
  for (let h = 0; h < hoursPerYear; h++) inputW[h] = converterInputW(dcW[h]!, converter);
  return inputW;
}
