import { handOverOf, livePage, serveLive } from '@wintergap/live';
import { inputFiles, type SiteFile } from '@wintergap/site';
import { commonWish } from '../common-years.js';
import type { AcceptWeather } from '../options/accept-weather.js';
import type { CommonYearsOptions } from '../options/common-years-options.js';
import { unitsOption } from '../options/units-option.js';
import { checkOutputs } from '../output/output-place.js';
import { print } from '../output/print.js';
import { writeWhole } from '../output/whole-file.js';

export interface LiveOptions extends Omit<CommonYearsOptions, 'workers'>, AcceptWeather {
  variant?: string;
  htmlLive?: string;
  units?: string;
}

/** Writes the page, or serves it until the program is ended. */
export async function answerLive(site: SiteFile, options: LiveOptions): Promise<void> {
  const { years, seed } = commonWish(options);
  checkOutputs({ '--html-live': options.htmlLive }, inputFiles(site));
  const handOver = handOverOf(site, {
    units: unitsOption(options.units, site.base.units),
    ...(options.variant !== undefined && { variant: options.variant }),
    ...(years !== undefined && { years }),
    ...(seed !== undefined && { seed }),
  });
  if (options.htmlLive) {
    writeWhole(options.htmlLive, livePage(handOver), inputFiles(site));
    print(`${options.htmlLive} is the page: open it in a browser.\n`);
    return;
  }
  const { address } = await serveLive((savePath) => livePage(handOver, savePath), site.file);
  print(`${address}\nOpen it in a browser on this machine. Ctrl-C ends it.\n`);
}
