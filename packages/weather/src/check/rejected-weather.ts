import type { WeatherJudgement } from '../weather-year.js';

/** Weather that must not be used for a year, with the judgement that says why. */
export class RejectedWeatherError extends Error {
  override readonly name = 'RejectedWeatherError';
  readonly judgement: WeatherJudgement;

  constructor(judgement: WeatherJudgement) {
    const serious = judgement.notices.filter(({ level }) => level !== 'note');
    super(
      [`weather ${judgement.line}`, ...serious.map(({ level, code, text }) => `  ${level}: ${code}: ${text}`)].join(
        '\n',
      ),
    );
    this.judgement = judgement;
  }
}
