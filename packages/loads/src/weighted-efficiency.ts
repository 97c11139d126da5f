import { type Inverter, inverterEfficiency } from './inverter.js';

const sumOverLoads = (inverter: Inverter, weights: readonly (readonly [share: number, weight: number])[]): number => {
  let sum = 0;
  for (const [share, weight] of weights) sum += weight * inverterEfficiency(share * inverter.powerW, inverter);
  return sum;
};

/** European efficiency, to compare with a data sheet. Weights from memory (Joint Research Centre, Ispra, 1990s). */
export function europeanEfficiency(inverter: Inverter): number {
  return sumOverLoads(inverter, [
    [0.05, 0.03],
    [0.1, 0.06],
    [0.2, 0.13],
    [0.3, 0.1],
    [0.5, 0.48],
    [1, 0.2],
  ]);
}

/** California Energy Commission efficiency, to compare with a data sheet. Weights from memory (CEC 2004). */
export function californianEfficiency(inverter: Inverter): number {
  return sumOverLoads(inverter, [
    [0.1, 0.04],
    [0.2, 0.05],
    [0.3, 0.12],
    [0.5, 0.21],
    [0.75, 0.53],
    [1, 0.05],
  ]);
}
