import { confidenceWithin } from '../common/quantile-error.js';
import type { YearFigures } from '../year-figures.js';
import { badness, type Miss, missesOf, type Targets, type TargetValues, targetFigures } from './targets.js';
import { judgedErrors, judgedValues } from './trial.js';

/** What years say of a design's targets. */
export interface Judged {
  figures: TargetValues;
  /** Standard errors of the figures. */
  errors: TargetValues;
  misses: Miss[];
  /** How sure the target that is least sure is met, 0 to 1; `null` of one year. */
  confidence: number | null;
}

/** Holds a share of the years, half for the usual year, against targets. */
export function judgedAgainst(years: readonly YearFigures[], targets: Targets, share: number): Judged {
  const figures = judgedValues(years, share);
  const errors = judgedErrors(years, share);
  const sure = targetFigures(targets).map((figure) =>
    confidenceWithin(badness(figure, targets[figure]!) - badness(figure, figures[figure]), errors[figure]),
  );
  return {
    figures,
    errors,
    misses: missesOf(figures, targets),
    confidence: years.length < 2 ? null : Math.min(...sure),
  };
}
