// A site written in code instead of YAML: its year, its columns, and two designs over the same weather years.
// Run after the build:  node examples/library/in-code.mjs
import { buildSite } from '@wintergap/site';
import { compareDesigns, designsOf } from '@wintergap/study';
import { ledgerColumn } from '@wintergap/tally';
import { simulateSite } from '@wintergap/year';

// The keys of docs/site-file.md, with the same units. Invented.
const site = buildSite({
  name: 'Alder Bay workshop',
  place: { latitude: 49.1, longitude: -123.8, elevation: '60 m', utcOffset: '-8 h' },
  weather: {
    months: {
      irradiation: [0.9, 1.7, 2.9, 4.3, 5.5, 6.0, 6.3, 5.4, 3.9, 2.1, 1.1, 0.7].map((kWh) => `${kWh} kWh/m2`),
      air: [3, 4, 6, 9, 13, 16, 18, 18, 15, 10, 6, 3].map((degC) => `${degC} degC`),
    },
  },
  arrays: [
    {
      name: 'roof',
      module: { vmp: '32.5 V', imp: '9.24 A', voc: '39.9 V', isc: '9.82 A', cells: 60 },
      inSeries: 2,
      strings: 2,
      mount: { kind: 'fixed', tilt: 40, azimuth: 'south' },
      controller: { kind: 'maximum-power', maxVoltage: '150 V', maxCurrent: '60 A' },
    },
  ],
  bank: { chemistry: 'lithium-iron-phosphate', voltage: '25.6 V', capacity: '280 Ah' },
  inverter: { power: '2 kW', idle: '8 W', efficiency: '92 %' },
  loads: [{ name: 'tools and light', power: '600 W', bus: 'ac', perDay: '3 h', when: { hours: [9, 16] } }],
  generator: {
    output: { bus: 'ac', power: '2 kW', charger: { power: '1 kW' } },
    fuel: { kind: 'petrol', atFull: '1.2 L/h', idle: '0.4 L/h' },
    start: { below: '25 %' },
    stop: { above: '80 %' },
  },
  variants: { steep: { arrays: [{ name: 'roof', mount: { tilt: 65 } }] } },
});

const { summary, ledger } = simulateSite(site.base);
const { generator, array } = summary;
console.log(`${site.base.name}: ${generator.hours.toFixed(0)} h of engine, ${array.usedKWh.toFixed(0)} kWh of sun used`);

const { values, unit } = ledgerColumn(ledger, 'bankStoredWh');
console.log(`the bank holds at least ${Math.min(...values).toFixed(0)} ${unit}`);

const { designs, leaders } = await compareDesigns(designsOf(site), { years: 10 });
for (const { name, generatorHours, againstBase } of designs) {
  const less = againstBase?.generatorHours;
  const difference = less ? `, ${less.mean.toFixed(1)} +- ${less.standardError.toFixed(1)} h against the base` : '';
  console.log(`${name}: ${generatorHours.mean.toFixed(1)} h a year${difference}`);
}
console.log(`best: ${leaders.join(', or chance cannot tell it from ')}`);
