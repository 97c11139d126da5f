import { checkText, problemsFound } from '@wintergap/report';
import { examineWeather } from '@wintergap/weather';
import { bankAir, PreparedCache } from '@wintergap/year';
import type { Command } from 'commander';
import { exitCodes } from '../exit-codes.js';
import { print } from '../print.js';
import { runDesigns } from '../run-designs.js';
import { unitsOption } from '../units-option.js';
import { type AcceptWeather, acceptWeather, loadAccepting } from '../weather-trust.js';

export function addCheck(program: Command): void {
  program
    .command('check')
    .description('file, data and electrical limits of a site and its variants')
    .argument('<site>', 'site file (YAML)')
    .option(...acceptWeather)
    .option('--json', 'print one JSON document')
    .option('--units <system>', 'metric or us, instead of what the site file says')
    .addHelpText(
      'after',
      '\nExit code 1 when a calculated limit is exceeded.\nExample:\n  wintergap check examples/kettle-pond.yaml',
    )
    .action((file: string, options: AcceptWeather & { json?: boolean; units?: string }) => {
      const site = loadAccepting(file, options);
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
        print(`${checkText(file, weather, designs, unitsOption(options.units, site.base.units))}\n`);
      }
      if (problemsFound(weather, designs) > 0) process.exitCode = exitCodes.no;
    });
}
