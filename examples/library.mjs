// A library program: how many generator hours does each height of the pole leave?
// Run after the build:  node examples/library.mjs
import { changedDesign, loadSite } from '@wintergap/site';
import { PreparedCache, simulateSite } from '@wintergap/year';

const site = loadSite(new URL('kettle-pond.yaml', import.meta.url).pathname);
const prepared = new PreparedCache(); // what the heights have in common is computed once

for (const height of ['2 m', '4 m', '7 m', '10 m', '14 m']) {
  const design = changedDesign(site, { 'arrays.garden pole.height': height });
  const { summary } = simulateSite(design, prepared);
  const { generator, array } = summary;
  const december = array.months[11].availableKWh;
  console.log(
    `${height.padStart(4)}: ${generator.hours.toFixed(0)} h, ${generator.fuelLitres.toFixed(0)} L, ` +
      `December offers ${december.toFixed(0)} kWh of ${array.availableKWh.toFixed(0)} in the year`,
  );
}
