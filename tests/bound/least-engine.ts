import type { YearResult } from '@wintergap/year';
import loadHighs from 'highs';

/** Of a finished year: what was to be supplied by what, and what happened. */
type Year = Pick<YearResult, 'plant' | 'ledger'>;

/** The least energy that an engine could have given, and what it did give, kWh at the set's terminals. */
export interface EngineBound {
  /** With perfect foresight, a bank that loses nothing, and no minimum run, warm-up or hour cut into parts. */
  leastKWh: number;
  /** The same with the share of charge that this bank kept while its engine ran: an estimate, not a bound. */
  likelyKWh: number;
  ranKWh: number;
}

// Its types are those of a CommonJS module, which it is not when imported.
const highs = (loadHighs as unknown as typeof import('highs')['default'])();

/**
 * The linear programme that no start rule can beat, for a finished year.
 *
 * Energy on the DC bus, step by step: sun and engine in, load out, a store between the floor and full, sun thrown away at
 * will. All of the year is known beforehand, and the store begins it as it ends it. What makes it an outer bound: the
 * store loses nothing (lead-acid and lithium do: their terminals stand above the rest voltage in charge and below it in
 * discharge), does not leak, takes any current, is not cold; the engine may run at any part of its power for any part of
 * an hour; the heater of a cabinet draws nothing; as much load as stayed dark may be left dark where it suits best. Sun
 * is what the controllers offered hour by hour in the simulated year.
 *
 * An AC set carries AC loads itself. That saves the inverter's draw: for each watt-hour at most the larger of its slope
 * at that load and its mean draw, since the draw is hollow in the load and falls to nothing with it.
 *
 * @param stepH 1, or 24 for a programme that is solved in a moment: within a step everything may be shifted, so that its
 *   bound is lower or the same
 */
export async function leastEngine(year: Year, stepH: 1 | 24): Promise<EngineBound> {
  const { ledger } = year;
  const ranKWh = ledger.generatorWh.reduce((total, wh) => total + wh, 0) / 1000;
  const leastKWh = await solve(year, stepH, 1);
  // While the engine ran: what the bank gained over what went in.
  let inWh = 0;
  let lostWh = 0;
  for (let h = 0; h < ledger.generatorH.length; h++) {
    if (ledger.generatorH[h]! < 0.99 || ledger.bankDischargeWh[h]! > 0) continue;
    inWh += ledger.bankChargeWh[h]!;
    lostWh += ledger.bankLossWh[h]!;
  }
  const likelyKWh = inWh > 0 ? await solve(year, stepH, 1 - lostWh / inWh) : leastKWh;
  return { leastKWh, likelyKWh, ranKWh };
}

/** What one step of the programme has to do with, Wh. */
interface Step {
  sunWh: number;
  demandWh: number;
  acWh: number;
  /** What the bus is spared for each watt-hour of AC load that the engine carries, at most. */
  savedPerWh: number;
  /** Most output of the set, and most of it that can go to the DC bus. */
  ratedWh: number;
  chargerWh: number;
  /** What stayed dark, in terms of the bus. */
  darkWh: number;
}

function stepOf({ plant, ledger }: Year, fromHour: number, toHour: number): Step {
  const { generator, inverter } = plant;
  const step = { sunWh: 0, demandWh: 0, acWh: 0, savedPerWh: 1, ratedWh: 0, chargerWh: 0, darkWh: 0 };
  for (let h = fromHour; h < toHour; h++) {
    const busW = plant.inverterInputW[h]! + plant.converterInputW[h]! + plant.ownUseW[h]!;
    const loadW = plant.acW[h]! + plant.dcW[h]!;
    const acW = Math.min(plant.acW[h]!, plant.inverterLimitW);
    step.sunWh += ledger.arrayAvailableWh[h]!;
    step.demandWh += busW;
    step.acWh += acW;
    if (ledger.darkWh[h]! > 0) step.darkWh += (ledger.darkWh[h]! / loadW) * Math.max(busW, loadW);
    if (generator!.bus === 'ac' && inverter && acW > 0) {
      const slope = 1 + inverter.proportionalLoss + (2 * inverter.squareLoss * acW) / inverter.powerW;
      step.savedPerWh = Math.max(step.savedPerWh, slope, plant.inverterInputW[h]! / acW);
    }
    if (generator!.runAllowed[h] === 0) continue;
    step.ratedWh += generator!.ratedW[h]!;
    step.chargerWh += Math.min(generator!.ratedW[h]!, generator!.chargerW);
  }
  return step;
}

const number = (value: number): string => (Math.abs(value) < 1e-9 ? '0' : value.toPrecision(10));
const signed = (value: number, name: string): string => `${value < 0 ? '-' : '+'} ${number(Math.abs(value))} ${name}`;

/** kWh; `kept` is the share of a charge that the store keeps. */
async function solve(year: Year, stepH: number, kept: number): Promise<number> {
  const { generator, bank } = year.plant;
  if (!generator) return 0;
  const steps = 8760 / stepH;
  const isAc = generator.bus === 'ac';
  const aims: string[] = [];
  const rows: string[] = [];
  const bounds: string[] = [];
  const perWh = 1 / generator.chargerEfficiency;
  // Self-discharge may take a bank below its owner's floor.
  const lowestWh = year.ledger.bankStoredWh.reduce((least, wh) => Math.min(least, wh), bank.storedWh(bank.floor));
  let darkWh = 0;
  for (let i = 0; i < steps; i++) {
    const step = stepOf(year, i * stepH, (i + 1) * stepH);
    darkWh += step.darkWh;
    // g: what the engine gives towards the DC bus, after the charger; a: AC load that it carries; w: sun thrown away;
    // c, d: into and out of the bank; u: load left dark; x: energy in the bank before the step.
    aims.push(signed(perWh, `g${i}`));
    const carried = isAc ? ` ${signed(step.savedPerWh, `a${i}`)}` : '';
    rows.push(`b${i}: g${i} - w${i} - c${i} + d${i} + u${i}${carried} = ${number(step.demandWh - step.sunWh)}`);
    rows.push(`s${i}: x${(i + 1) % steps} - x${i} ${signed(-kept, `c${i}`)} + d${i} = 0`);
    if (isAc) {
      aims.push(signed(1, `a${i}`));
      rows.push(`r${i}: a${i} ${signed(perWh, `g${i}`)} <= ${number(step.ratedWh)}`);
      bounds.push(`0 <= a${i} <= ${number(step.acWh)}`);
    }
    bounds.push(`0 <= g${i} <= ${number(isAc ? step.chargerWh : step.ratedWh)}`, `0 <= w${i} <= ${number(step.sunWh)}`);
    bounds.push(`0 <= u${i} <= ${number(step.demandWh)}`);
    bounds.push(`${number(lowestWh)} <= x${i} <= ${number(bank.storedWh(1))}`);
  }
  const shed = Array.from({ length: steps }, (_, i) => `u${i}`).join('\n+ ');
  rows.push(`dark: ${shed} <= ${number(darkWh * (1 + 1e-6))}`);
  const text = ['Minimize', `obj: ${aims.join('\n')}`, 'Subject To', ...rows, 'Bounds', ...bounds, 'End', ''].join(
    '\n',
  );
  const solution = (await highs).solve(text, { output_flag: false });
  if (solution.Status !== 'Optimal') throw new Error(`the programme is ${solution.Status}`);
  return solution.ObjectiveValue / 1000;
}
