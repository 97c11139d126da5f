import { type CommonAnswer, commonAnswer, yearFigures } from '@wintergap/study';
import type { YearResult } from '@wintergap/year';

/**
 * An answer over common years without running them: the figures of the given results, the engine hours of invented
 * years scattered around them, the same scatter for each design.
 */
export function answerAround(designs: readonly { name: string; result: YearResult }[], count = 25): CommonAnswer {
  const scatter = Array.from({ length: count }, (_, i) => 0.8 + (0.4 * ((i * 7) % count)) / count);
  return commonAnswer({
    weather: { count, kind: 'resampled', spread: null },
    designs: designs.map(({ name, result }) => {
      const figures = yearFigures(result);
      const years = scatter.map((share) => ({ ...figures, generatorHours: figures.generatorHours * share }));
      return { name, years };
    }),
  });
}
