import type { UnitSystem } from '@wintergap/quantity';
import { withStop } from '@wintergap/report';
import type { Site } from '@wintergap/site';
import type { Caution } from '@wintergap/tally';
import type { WeatherJudgement } from '@wintergap/weather';
import { type ArrayLimit, limitCautions, type PreparedCache, siteLimits } from '@wintergap/year';
import { type TrustJson, trustJson, trustOf, withTrust } from './weather-trust.js';

/** What must be said beside any answer about a design: whether its weather can be trusted, and the limits it exceeds. */
export interface Standing {
  trust: WeatherJudgement;
  limits: ArrayLimit[];
}

/**
 * Found out before anything is run.
 *
 * @param prepared keeps the weather for what is run
 * @throws RejectedWeatherError when the weather cannot be trusted, and the design does not accept that
 */
export const standingOf = (design: Site, prepared: PreparedCache): Standing => ({
  trust: trustOf(design, prepared),
  limits: siteLimits(design, prepared),
});

/** An answer with what must be said before it. */
export const withStanding = ({ trust, limits }: Standing, units: UnitSystem, answer: string): string =>
  withTrust(trust, withStop(limits, units, answer));

/** The same in a JSON document. */
export const standingJson = ({ trust, limits }: Standing): { cautions: Caution[]; trust: TrustJson } => ({
  cautions: limitCautions(limits),
  trust: trustJson(trust),
});
