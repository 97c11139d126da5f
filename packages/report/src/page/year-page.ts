import type { UnitSystem } from '@wintergap/quantity';
import type { CommonAnswer } from '@wintergap/study';
import type { YearResult } from '@wintergap/year';
import { headline } from '../text/year.js';
import { basisText, placeText } from './sections/basis.js';
import { cautionsSection } from './sections/cautions.js';
import { chargeSection } from './sections/charge.js';
import { costSection, type PricedDesigns } from './sections/costs.js';
import { energySection } from './sections/energy.js';
import { engineWeeksSection } from './sections/engine-weeks.js';
import { factsList } from './sections/facts.js';
import { lossChain, lossTable } from './sections/losses.js';
import { monthsSection } from './sections/months.js';
import { outcomeSection } from './sections/outcome.js';
import { systemSection } from './sections/system.js';
import { takenSection } from './sections/taken.js';
import { temperatureSection } from './sections/temperature.js';
import { throttleSection } from './sections/throttle.js';
import { worstSection } from './sections/worst.js';
import { pageText, section, type Written } from './sheet/frame.js';
import { html } from './sheet/markup.js';

export interface YearPageSettings {
  /** The design's name where it is not the base. */
  variant?: string;
  /** What the common years say of this design; without it the page is about the file's year alone. */
  common?: CommonAnswer;
  /** What the design costs; without it, or without prices, nothing is said of money. */
  costs?: PricedDesigns | null;
  written?: Written;
}

/** The report of one design's year. */
export function yearPage(result: YearResult, units: UnitSystem, settings: YearPageSettings): string {
  const { variant, common, costs, written } = settings;
  const { site, summary } = result;
  const chain = lossChain(result);
  return pageText({
    title: variant === undefined ? site.name : `${site.name}, ${variant}`,
    place: placeText(result, units),
    written,
    answer: headline(result, units, common),
    sections: [
      factsList(result, units, common),
      cautionsSection(summary.cautions, units),
      ...outcomeSection(result, units, common),
      ...engineWeeksSection(result, units),
      ...(costs ? costSection(costs.designs, costs.terms, units) : []),
      systemSection(result, units),
      ...takenSection(site, units),
      chargeSection(result),
      throttleSection(summary),
      energySection(result),
      temperatureSection(result, units),
      worstSection(result, units),
      section('months', 'Month by month', monthsSection(result, units)),
      ...(chain ? [section('losses', 'What becomes of the light?', html`${lossTable(chain)}`)] : []),
    ],
    foot: basisText(result),
  });
}
