import type { Dimension } from './dimension.js';

/** What a price is per, and the canonical amount of it. */
export const pricedBy: Partial<Record<Dimension, readonly [Dimension, number]>> = {
  pricePerVolume: ['volume', 1],
  pricePerMass: ['mass', 1],
  pricePerEnergy: ['energy', 1000],
  pricePerPower: ['power', 1000],
  pricePerLength: ['length', 1],
  pricePerArea: ['area', 1],
  pricePerTime: ['duration', 1],
};
