import v8 from 'node:v8';

/**
 * Tells the engine that one year alone will be run. What it usually compiles for speed is ready when such a year is nearly
 * over, and takes the processors meanwhile: only what runs longest is worth it.
 */
export function expectOneYear(): void {
  v8.setFlagsFromString('--interrupt-budget=200000');
}
