import { compareHtml, compareText, type NamedYear } from '@wintergap/report';
import { loadSite, StageCache, simulateSite } from '@wintergap/year';
import type { Command } from 'commander';
import { unitsOption } from './units-option.js';
import { writeWhole } from './whole-file.js';

interface CompareOptions {
  json?: boolean;
  html?: string;
  units?: string;
}

export function addCompare(program: Command): void {
  program
    .command('compare')
    .description("the site's variants side by side, differences against the base")
    .argument('<site>', 'site file (YAML)')
    .option('--json', 'print one JSON document: a summary for each design')
    .option('--html <file>', 'write the report, one page with charts')
    .option('--units <system>', 'metric or us, instead of what the site file says')
    .addHelpText('after', '\nExample:\n  wintergap compare examples/kettle-pond.yaml')
    .action(async (file: string, options: CompareOptions) => {
      const site = loadSite(file);
      const stages = new StageCache();
      const designs: NamedYear[] = [['base', site.base] as const, ...site.variants].map(([name, design]) => ({
        name,
        result: simulateSite(design, file, stages),
      }));
      const units = unitsOption(options.units, site.base.units);
      if (options.html) writeWhole(options.html, await compareHtml(designs, units));
      if (options.json) {
        const summaries = Object.fromEntries(designs.map(({ name, result }) => [name, result.summary]));
        process.stdout.write(`${JSON.stringify(summaries, null, 2)}\n`);
      } else {
        process.stdout.write(`${compareText(designs, units)}\n`);
      }
    });
}
