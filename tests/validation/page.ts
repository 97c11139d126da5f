import { keptFigures, placesTable } from '../twin/figures.js';
import { certaintyTable, keptCertainty } from './certainty.js';
import type { Held } from './hold.js';

/** What one file of `tests/published` held. */
export interface Section {
  name: string;
  held: readonly Held[];
}

/** The order of the page: along the way of the energy. */
const titles: Record<string, string> = {
  sun: 'Sun',
  plane: 'Light on the plane of the array',
  'sky-models': 'Sky models, on one site',
  snow: 'Snow on the array',
  module: 'Module and cell temperature',
  conductors: 'Conductors and cold voltage',
  battery: 'Bank',
  wear: 'Wear of the bank',
  hydrogen: 'Hydrogen of the bank',
  inverter: 'Inverter',
  fuel: 'Engine and fuel',
  'common-practice': 'The whole year against rules of the trade',
  synthesis: 'Years made from means, and resampled years',
  'next-year': 'One measured year against the next',
  'days-to-hours': 'Hours made from the days of a year',
  weather: 'Weather files',
  'sequent-peak': 'Size of a seasonal store',
  'life-cycle-cost': 'Money over the years',
  'hand-method': 'Sizing by hand',
  quantity: 'Units',
};

const opening = `# Validation

Made by \`npm run validation\` from the tests in \`tests/published\`, never by hand; a run of the tests fails when it says
something else than they found. Each line is one comparison: the value published, ours, how far apart they are and how far
they may be. Of a table or curve the worst of its values is shown.

How sure a published value is: \`looked up\` in the text named; \`from memory\` of it; \`recomputed\` apart from the program
by the equation named; \`independent\`: a program or measurement of others; \`law\`: must hold whatever the model; \`common
practice\`: has no source; \`stated only\`: nothing published stands against it.
`;

/** The test whose figures stand under what is not validated. */
const doubts = 'doubts';

const closing = (held: readonly Held[]) => `## What is not validated

No system of this kind was measured here for a year: no line above holds generator hours against those of a real engine.
How much the doubtful parts may move them, by running the honey house both ways (\`tests/published/${doubts}.test.ts\`, means
over the same twelve made years):

| what | engine hours in a year |
| --- | ---: |
${held.map(({ what, ours }) => `| ${what} | ${ours} |`).join('\n')}

The models of snow are validated on fixed planes of up to 45 degrees; what people sweep off, and when, differs from house to
house. The typical years of open data leave bad winters out: the usual year and the one in ten of \`outlook\` say by how much.
Near full, flooded cells at 2.40 V take C/15 at 80 % here where the trade says C/12 to C/16; capacity in the cold falls half
as fast as the sizes of IEEE 485 allow for.

Not modelled, and so with no line: shading between rows, unequal light on modules of one string, stratification and
sulphation, faults of cells, wind and water turbines. The twelve-means and day-to-hour weather models make days too smooth
where the engine runs seldom: see the engine of Chicago and New York under the hours made from days.
`;

/** The whole page. */
export function validationPage(sections: readonly Section[]): string {
  const named = new Map(sections.map(({ name, held }) => [name, held]));
  const unknown = sections.filter(({ name, held }) => held.length > 0 && name !== doubts && !(name in titles));
  if (unknown.length > 0)
    throw new Error(`tests/validation/page.ts has no title for ${unknown.map(({ name }) => name)}`);
  const parts = Object.entries(titles)
    .filter(([name]) => (named.get(name)?.length ?? 0) > 0)
    .map(([name, title]) => `## ${title}\n\n\`tests/published/${name}.test.ts\`\n\n${table(named.get(name)!)}\n`);
  return [opening, ...parts, certainty(), twin(), closing(named.get(doubts) ?? [])].join('\n');
}

function table(held: readonly Held[]): string {
  const columns = ['what', 'published', 'ours', 'difference', 'allowed', 'source', 'how sure'];
  const rows = held.map((line) => [
    ...[line.what, line.published, line.ours, line.difference, line.allowed],
    ...[line.from, line.sure],
  ]);
  const rule = ['---', '---:', '---:', '---:', '---:', '---', '---'];
  return [columns, rule, ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');
}

function certainty(): string {
  return `## How sure the stated ranges are

\`npm run certainty\`: 500 resampled years of the honey house, drawn from as a user's 25 or 40 are.

${certaintyTable(keptCertainty())}
`;
}

function twin(): string {
  return `## The year stated a second time

\`tests/twin\`: a plain restatement by minutes, from the papers and not from the packages, of random designs; \`npm run twin\`
runs it. What differs is explained in its [README](tests/twin/README.md); \`tests/bound\` gives the least that any engine
rule could do with perfect foresight ([README](tests/bound/README.md)).

${placesTable(keptFigures())}
`;
}
