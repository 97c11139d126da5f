import { checkText, problemsFound } from '@wintergap/report';
import type { SiteFile } from '@wintergap/site';
import { examineWeather } from '@wintergap/weather';
import { bankAir, PreparedCache } from '@wintergap/year';
import { exitCodes } from '../exit-codes.js';
import type { AcceptWeather } from '../options/accept-weather.js';
import { unitsOption } from '../options/units-option.js';
import { print } from '../output/print.js';
import { runDesigns } from '../site/run-designs.js';

export function answerCheck(site: SiteFile, options: AcceptWeather & { json?: boolean; units?: string }): void {
  const designs = runDesigns(site, new PreparedCache());
  const { place } = site.base;
  const weather = examineWeather(designs[0]!.result.weather, {
    latitudeDeg: place.latitude,
    longitudeDeg: place.longitude,
    utcOffsetH: place.utcOffset,
    elevationM: place.elevation,
  });
  if (options.json) {
    const checks = designs.map(({ name, result }) => ({
      name,
      limits: result.limits,
      bankAir: bankAir(result),
      cautions: result.summary.cautions,
    }));
    print(`${JSON.stringify({ weather, designs: checks }, null, 2)}\n`);
  } else {
    print(`${checkText(site.file, weather, designs, unitsOption(options.units, site.base.units))}\n`);
  }
  if (problemsFound(weather, designs) > 0) process.exitCode = exitCodes.no;
}
