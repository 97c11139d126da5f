import type { UnitSystem } from '@wintergap/quantity';
import type { CommonAnswer } from '@wintergap/study';
import type { YearResult } from '@wintergap/year';
import { headline } from '../text/year.js';
import { basisText, placeText } from './basis.js';
import { cautionsSection } from './cautions.js';
import { chargeSection } from './charge.js';
import { energySection } from './energy.js';
import { factsList } from './facts.js';
import { pageText, section } from './frame.js';
import { lossChain, lossTable } from './losses.js';
import { html } from './markup.js';
import { monthsSection } from './months.js';
import { takenSection } from './taken.js';
import { temperatureSection } from './temperature.js';
import { throttleSection } from './throttle.js';
import { worstSection } from './worst.js';

export interface YearPageSettings {
  /** The design's name where it is not the base. */
  variant?: string;
  /** What the common years say of this design; without it the page is about the file's year alone. */
  common?: CommonAnswer;
}

/** The report of one design's year. */
export function yearPage(result: YearResult, units: UnitSystem, { variant, common }: YearPageSettings): string {
  const { site, summary } = result;
  const chain = lossChain(result);
  return pageText({
    title: variant === undefined ? site.name : `${site.name}, ${variant}`,
    place: placeText(result, units),
    answer: headline(result, units, common),
    sections: [
      factsList(result, units, common),
      cautionsSection(summary.cautions, units),
      chargeSection(result),
      throttleSection(summary),
      energySection(result),
      temperatureSection(result, units),
      worstSection(result, units),
      section('months', 'Month by month', monthsSection(result, units)),
      ...(chain ? [section('losses', 'What becomes of the light?', html`${lossTable(chain)}`)] : []),
      ...takenSection(site, units),
    ],
    foot: basisText(result),
  });
}
