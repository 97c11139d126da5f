import type { Command } from 'commander';
import type { CarryOptions } from '../answers/carry.js';
import { acceptWeather } from '../options/accept-weather.js';
import { addCommonYearsOptions } from '../options/common-years-options.js';
import { openSite } from '../site/open-site.js';

const help = `
The site file may say what store and prices; without: hydrogen, hours and kWh:
  carry:
    store: { in: { efficiency: 65 %, minimumLoad: 10 %, standby: 20 W },
             standing: 0.1 %/day, out: { efficiency: 50 % } }
  costs:
    { years: 20, discount: 3 %, fuelEscalation: 1 %, array: 600 /kW,
      bank: 200 /kWh, engine: { price: 1800, life: 2000 h, service: 0.4 /h },
      store: { in: 1500 /kW, kept: 20 /kWh, out: 2500 /kW, upkeep: 100 /year,
               lives: { in: 12 years, kept: 25 years, out: 10 years } } }

Exit code 1 when no array that was tried covers the year.
Example: wintergap carry examples/kettle-pond.yaml`;

export function addCarry(program: Command): void {
  const command = program
    .command('carry')
    .summary('worth of a seasonal store')
    .description('is seasonal storage worth it: sizes, closed-loop array, cost against the engine')
    .argument('<site>', 'site file (YAML)')
    .option('--variant <name>', 'a variant of the site file instead of its base design')
    .option(...acceptWeather)
    .option('--json', 'print one JSON document')
    .option('--units <system>', 'metric or us, instead of what the site file says');
  addCommonYearsOptions(command)
    .addHelpText('after', help)
    .action(async (file: string, options: CarryOptions) => {
      const site = await openSite(file, options);
      const { answerCarry } = await import('../answers/carry.js');
      return answerCarry(site, options);
    });
}
