import type { YearFigures } from '../year-figures.js';

/** What a design must keep to. Left out means not asked for. */
export interface Targets {
  /** At most, h a year. */
  generatorHours?: number;
  /** At most, L a year. */
  fuelLitres?: number;
  /** At most, h a year. */
  darkHours?: number;
  /** At least, days. */
  autonomyDays?: number;
}

export type TargetFigure = keyof Targets;
export type TargetValues = Pick<YearFigures, TargetFigure>;

/** A target that is not met. */
export interface Miss {
  figure: TargetFigure;
  limit: number;
  value: number;
  /** By how much, in the figure's unit; above 0. */
  by: number;
}

/** Figures that must be large enough; the others must be small enough. */
const atLeast: ReadonlySet<TargetFigure> = new Set(['autonomyDays']);

/** Turns a figure so that more is worse. */
export const badness = (figure: TargetFigure, value: number): number => (atLeast.has(figure) ? -value : value);

export const targetFigures = (targets: Targets): TargetFigure[] =>
  (['generatorHours', 'fuelLitres', 'darkHours', 'autonomyDays'] as const).filter(
    (figure) => targets[figure] !== undefined,
  );

/** The targets that a year's figures, or those of a one-in-ten year, do not meet. */
export function missesOf(values: TargetValues, targets: Targets): Miss[] {
  return targetFigures(targets).flatMap((figure) => {
    const limit = targets[figure]!;
    const value = values[figure];
    const by = badness(figure, value) - badness(figure, limit);
    return by > 0 ? [{ figure, limit, value, by }] : [];
  });
}
