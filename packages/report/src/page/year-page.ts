import type { UnitSystem } from '@wintergap/quantity';
import type { CommonAnswer } from '@wintergap/study';
import type { YearResult } from '@wintergap/year';
import { headline } from '../text/year.js';
import { basisText, placeText } from './basis.js';
import { cautionsSection } from './cautions.js';
import { chargeSection } from './charge.js';
import { costSection, type PricedDesigns } from './costs.js';
import { energySection } from './energy.js';
import { engineWeeksSection } from './engine-weeks.js';
import { factsList } from './facts.js';
import { pageText, section, type Written } from './frame.js';
import { lossChain, lossTable } from './losses.js';
import { html } from './markup.js';
import { monthsSection } from './months.js';
import { outcomeSection } from './outcome.js';
import { systemSection } from './system.js';
import { takenSection } from './taken.js';
import { temperatureSection } from './temperature.js';
import { throttleSection } from './throttle.js';
import { worstSection } from './worst.js';

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
