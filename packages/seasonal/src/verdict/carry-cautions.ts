import { hydrogenCaution } from '../store/hydrogen.js';
import type { CarryStudy } from './carry-study.js';

/** A bank warmer than this ages fast: common practice, no source. */
const hotBankC = 45;
/** Dark load beyond any store that is worth a word, kWh a year. */
export const notableKWh = 1;

/** What the owner must know before a seasonal store is planned; the dangers last, so that they are read last. */
export function carryCautions(study: CarryStudy): { code: string; text: string }[] {
  const { judged, closing, costs, technology, asItIs } = study;
  const cautions: { code: string; text: string }[] = [];
  const add = (code: string, text: string) => cautions.push({ code, text });
  const beyondKWh = judged.year.beyondWh / 1000;
  if (beyondKWh > notableKWh) {
    add(
      'beyond-inverter',
      `${Math.round(beyondKWh)} kWh of AC load are above what the inverter can give; no store on the DC bus answers them`,
    );
  }
  if (judged.judgement.verdict === 'nothing to retire') return cautions;
  if (closing?.closes && judged.judgement.size.closes && judged.scale < closing.scaleWithAllowance * 0.99) {
    const spare = Math.round((judged.scale / closing.scale - 1) * 100);
    add('small-allowance', `the array has ${spare} % to spare for losses nobody knows yet; 20 % is common practice`);
  }
  add(
    'one-year',
    'sizes are those of this one weather year; a store that just covers this year runs empty in a duller one (see outlook)',
  );
  const hottest = Math.max(...study.rivals.map(({ kind, warmestBankC }) => (kind === 'bank' ? warmestBankC : 0)));
  if (hottest > hotBankC) {
    add(
      'hot-cabinet',
      `a cabinet losing half the heat warms the bank ${hottest > 60 ? 'above 60' : `to ${Math.round(hottest)}`} degC in summer: open its vents then`,
    );
  }
  if (costs?.store && costs.engine === null && asItIs.site.generator) {
    add('fuel-only', 'the engine is counted by its fuel alone; costs.engine would add wear and service');
  }
  if (costs?.years != null && costs.discountRate === 0) {
    add('no-discount', 'money of later years counts in full; costs.discount would change that');
  }
  if (technology.technology.kind === 'hydrogen') add('hydrogen', hydrogenCaution);
  return cautions;
}
