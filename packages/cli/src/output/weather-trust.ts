import { weatherLine } from '@wintergap/report';
import type { Site } from '@wintergap/site';
import type { WeatherJudgement } from '@wintergap/weather';
import { type PreparedCache, siteWeather } from '@wintergap/year';

/**
 * Whether a design's weather can be trusted, found out before anything is run.
 *
 * @param prepared keeps the weather for what is run
 * @throws RejectedWeatherError when it cannot, and the design does not accept that
 */
export function trustOf(design: Site, prepared: PreparedCache): WeatherJudgement {
  return siteWeather(design, prepared).judgement!;
}

/** An answer with what must be said of its weather before it. */
export function withTrust(trust: WeatherJudgement | undefined, answer: string): string {
  const line = weatherLine(trust ?? null);
  return line === '' ? answer : `${line}\n\n${answer}`;
}

/** The weather's verdict in a JSON document. */
export interface TrustJson extends Pick<WeatherJudgement, 'verdict' | 'line'> {
  cautions: WeatherJudgement['notices'];
}

/** What the JSON of a command says of the weather it rests on. */
export function trustJson({ verdict, line, notices }: WeatherJudgement): TrustJson {
  return { verdict, line, cautions: notices.filter(({ level }) => level !== 'note') };
}
