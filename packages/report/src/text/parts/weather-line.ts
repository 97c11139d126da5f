import type { WeatherJudgement } from '@wintergap/weather';
import { wrap } from '../../words/figures.js';

/**
 * What stands in the first lines of every answer that rests on weather: a warning where rejected weather was run all
 * the same, one line where it needs care, nothing where it is good.
 */
export function weatherLine(weather: Pick<WeatherJudgement, 'verdict' | 'line'> | null): string {
  if (weather === null || weather.verdict === 'good') return '';
  if (weather.verdict === 'usable') return wrap(`Weather ${weather.line}`);
  return wrap(`WARNING: the weather is not to be trusted, and so are these figures. ${weather.line}`);
}
