import type { UnitSystem } from '@wintergap/quantity';
import type { YearResult } from '@wintergap/year';
import { basisText, placeText } from './html-basis.js';
import { cautionsSection } from './html-cautions.js';
import { chargeSection } from './html-charge.js';
import { energySection } from './html-energy.js';
import { factsList } from './html-facts.js';
import { pageText, section } from './html-frame.js';
import { lossChain, lossTable } from './html-losses.js';
import { html } from './html-markup.js';
import { monthsSection } from './html-months.js';
import { temperatureSection } from './html-temperature.js';
import { throttleSection } from './html-throttle.js';
import { headline } from './year-text.js';

/** The report of one design's year. */
export function yearPage(result: YearResult, units: UnitSystem, variant?: string): string {
  const { site, summary } = result;
  const chain = lossChain(result);
  return pageText({
    title: variant === undefined ? site.name : `${site.name}, ${variant}`,
    place: placeText(result, units),
    answer: headline(result, units),
    sections: [
      factsList(result, units),
      cautionsSection(summary.cautions),
      chargeSection(result),
      throttleSection(summary),
      energySection(result),
      temperatureSection(result, units),
      section('months', 'Month by month', monthsSection(result, units)),
      ...(chain ? [section('losses', 'What becomes of the light?', html`${lossTable(chain)}`)] : []),
    ],
    foot: basisText(result),
  });
}
