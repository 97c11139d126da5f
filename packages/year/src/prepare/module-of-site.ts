import type { ModuleSheet } from '@wintergap/array';
import type { SiteArray } from '@wintergap/site';

/** Coefficients of crystalline silicon where the sheet has none: common practice, no source. */
const usualVocPerK = -0.003;
const usualIscPerK = 0.0005;

/** The site file's data sheet in the words of the array package. */
export function moduleSheet({
  power,
  vmp,
  imp,
  voc,
  isc,
  cells,
  powerPerK,
  vocPerK,
  iscPerK,
  noct,
  area,
  technology,
}: SiteArray['module']): ModuleSheet {
  return {
    vmpV: vmp,
    impA: imp,
    vocV: voc,
    iscA: isc,
    cells,
    vocPerK: vocPerK ?? usualVocPerK,
    iscPerK: iscPerK ?? usualIscPerK,
    technology,
    ...(power !== undefined && { powerW: power }),
    ...(powerPerK !== undefined && { powerPerK }),
    ...(noct !== undefined && { noctC: noct }),
    ...(area !== undefined && { areaM2: area }),
  };
}
