import { carryText, commonRivalsText } from '@wintergap/report';
import { carrySummary, studyCarry } from '@wintergap/seasonal';
import { designOf } from '@wintergap/site';
import { commonRivals } from '@wintergap/study';
import type { Command } from 'commander';
import { addCommonYearsOptions, type CommonYearsOptions, commonWish } from '../common-years.js';
import { exitCodes } from '../exit-codes.js';
import { print } from '../print.js';
import { countProgress } from '../progress.js';
import { unitsOption } from '../units-option.js';
import { type AcceptWeather, acceptWeather, loadAccepting, trustJson, trustOf, withTrust } from '../weather-trust.js';

interface CarryOptions extends AcceptWeather, CommonYearsOptions {
  variant?: string;
  json?: boolean;
  units?: string;
}

const help = `
The site file may say what store, and at what prices; without them the store is
hydrogen and the verdict is in hours, fuel and kWh:
  carry:
    store: { in: { efficiency: 65 %, minimumLoad: 10 %, standby: 20 W },
             standing: 0.1 %/day, out: { efficiency: 50 % } }
  costs:
    { years: 20, discount: 3 %, fuelEscalation: 1 %,
      array: 600 /kW, bank: 200 /kWh,
      engine: { price: 1800, life: 2000 h, service: 0.4 /h },
      store: { in: 1500 /kW, kept: 20 /kWh, out: 2500 /kW, upkeep: 100 /year,
               lives: { in: 12 years, kept: 25 years, out: 10 years } } }

Exit code 1 when no array that was tried covers the year.

Example:
  wintergap carry examples/kettle-pond.yaml`;

export function addCarry(program: Command): void {
  const command = program
    .command('carry')
    .description('is seasonal storage worth it: sizes, closed-loop array, cost against the engine')
    .argument('<site>', 'site file (YAML)')
    .option('--variant <name>', 'a variant of the site file instead of its base design')
    .option(...acceptWeather)
    .option('--json', 'print one JSON document')
    .option('--units <system>', 'metric or us, instead of what the site file says');
  addCommonYearsOptions(command)
    .addHelpText('after', help)
    .action(async (file: string, options: CarryOptions) => {
      const site = loadAccepting(file, options);
      const units = unitsOption(options.units, site.base.units);
      const trust = trustOf(designOf(site, options.variant));
      const progress = countProgress('years at most');
      try {
        const study = studyCarry(site, options.variant, progress.reached);
        const rivals = await commonRivals(study, commonWish(options));
        const page = [carryText(study, units), rivals ? commonRivalsText(rivals) : ''].filter((part) => part !== '');
        const answer = options.json
          ? JSON.stringify(
              { ...carrySummary(study), commonRivals: rivals?.common ?? null, trust: trustJson(trust) },
              null,
              2,
            )
          : withTrust(trust, page.join('\n\n'));
        progress.stop();
        print(`${answer}\n`);
        if (!study.judged.judgement.size.closes && !study.closing?.closes) process.exitCode = exitCodes.no;
      } finally {
        progress.stop();
      }
    });
}
