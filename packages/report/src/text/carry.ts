import { dateOfDay } from '@wintergap/ground';
import { formatQuantity, type UnitSystem } from '@wintergap/quantity';
import {
  type ArrayCase,
  type CarryStudy,
  carryCautions,
  carryVerdict,
  type NamedTechnology,
  type StoreFigures,
  storeFigures,
  unlikeThings,
} from '@wintergap/seasonal';
import { dateText, figure, percent, wrap } from '../words/figures.js';
import { inMassUnit, inShownUnits, inVolumeUnit, massUnit, volumeUnit } from '../words/shown-units.js';
import { plainTable } from './parts/plain-table.js';

/** Whether seasonal storage is worth it, as a page of text: 80 columns, verdict first, cautions last. */
export function carryText(study: CarryStudy, units: UnitSystem): string {
  const nothing = study.judged.judgement.verdict === 'nothing to retire';
  return [
    wrap(`${study.asItIs.site.name}. ${carryVerdict(study, units)}`),
    balanceText(study, units),
    nothing ? '' : arraysTable(study, units),
    nothing ? '' : technologiesTable(study, units),
    rivalsTable(study, units),
    cautionsText(study, units),
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

/** Energies below this are left out, Wh a year. */
const leastShownWh = 50;

function balanceText(study: CarryStudy, units: UnitSystem): string {
  const { asItIs, judged, surplusKWh, demandKWh } = study;
  const { generator, load } = asItIs.summary;
  const fuel = formatQuantity(generator.fuelLitres, 'volume', units);
  const dark = load.darkKWh > 0.5 ? `, ${figure(load.darkKWh)} kWh of load dark` : '';
  const asked = asItIs.site.generator
    ? `engine gives ${figure(demandKWh)} kWh in ${figure(generator.hours)} h on ${fuel}${dark}`
    : `no engine${dark}`;
  const lines = [`As it is    ${figure(surplusKWh)} kWh thrown away by a full bank; ${asked}`];
  if (judged.judgement.verdict !== 'nothing to retire') {
    const { size } = judged.judgement;
    const { totals } = judged.storeYear;
    const converter = `${power(judged.judgement.store.converterOut.powerW / 1000)} kW`;
    const holds = asItIs.site.generator
      ? `${converter} in the engine's place hold the bank, at any hour, where the engine would start`
      : `${converter} hold the bank a little above its floor`;
    lines.push(
      `With store  ${figure(size.surplusWh / 1000)} kWh to take, ${figure(size.demandWh / 1000)} kWh needed: ${holds}`,
    );
    if (totals.fullestWh > 0 && totals.fullestWh > totals.emptiestWh) {
      const on = (hour: number) => dateText(dateOfDay(Math.floor(hour / 24)));
      const idle = totals.standbyWh > leastShownWh ? `, ${figure(totals.standbyWh / 1000)} kWh standby` : '';
      const leak =
        totals.standingLossWh > leastShownWh ? `, ${figure(totals.standingLossWh / 1000)} kWh loss while stored` : '';
      lines.push(
        `Its year    takes ${figure(totals.takenWh / 1000)} kWh, gives ${figure(totals.givenWh / 1000)} kWh${idle}${leak}; fullest on ${on(totals.fullestHour)}, emptiest on ${on(totals.emptiestHour)}`,
      );
    }
  }
  return lines.map((line) => wrap(line, 80, '            ')).join('\n');
}

/** Columns that describe a store, and their units. */
function storeHead(study: CarryStudy, units: UnitSystem): { names: string[]; units: string[] } {
  const hydrogen = study.technology.technology.kind === 'hydrogen';
  return {
    names: ['need met', 'in', 'store', ...(hydrogen ? ['hydrogen'] : []), 'out'],
    units: ['', 'kW', 'kWh', ...(hydrogen ? [massUnit(units)] : []), 'kW'],
  };
}

function storeCells(store: StoreFigures, units: UnitSystem): string[] {
  const { closes, met, converterInKW, storeKWh, hydrogenKg, converterOutKW } = store;
  const mass = hydrogenKg === null ? [] : [figure(inMassUnit(hydrogenKg, units))];
  return [
    closes ? 'all' : percent(Math.min(met, 0.994)),
    power(converterInKW),
    figure(storeKWh),
    ...mass,
    power(converterOutKW),
  ];
}

const power = (kW: number) => figure(kW, kW < 10 ? 2 : 0);

function arraysTable(study: CarryStudy, units: UnitSystem): string {
  const { arrays, closing, judged } = study;
  const priced = arrays.some(({ judgement }) => judgement.cost?.store);
  const head = storeHead(study, units);
  const row = (one: ArrayCase) => {
    const { size, store, cost } = one.judgement;
    return [
      `${one.scale.toFixed(2)}${one === judged ? ' *' : ''}`,
      figure(one.ratedKW),
      figure(size.surplusWh / 1000),
      figure(size.demandWh / 1000),
      ...storeCells(storeFigures(size, store), units),
      ...(priced ? [cost?.store ? figure(cost.store.total, 0) : '-'] : []),
    ];
  };
  const years = judged.judgement.cost?.years ?? arrays.find(({ judgement }) => judgement.cost)?.judgement.cost?.years;
  const table = plainTable(
    ['Array', '', 'surplus', 'needed', ...head.names, ...(priced ? ['cost over'] : [])],
    [['times', 'kW', 'kWh', 'kWh', ...head.units, ...(priced ? [`${years} years`] : [])], ...arrays.map(row)],
  );
  const note = closing?.closes
    ? `* judged above. The smallest array that covers the year${closing.needsStore ? '' : ' (without any store)'} is ${closing.scale.toFixed(2)} times this one; ${closing.scaleWithAllowance.toFixed(2)} leaves the usual 20 % for losses nobody knows yet (common practice).`
    : closing
      ? `* judged above. No array up to ${figure(closing.largestTried)} times this one covers the year.`
      : '* judged above.';
  return `${table}\n${wrap(note)}`;
}

function technologiesTable(study: CarryStudy, units: UnitSystem): string {
  const { technologies, judged, settings } = study;
  const head = storeHead(study, units);
  const table = plainTable(
    ['Store', 'in', 'out', 'round trip', ...head.names],
    [
      ['', 'efficiency', '', '', ...head.units],
      ...technologies.map(({ tried, size }) => [
        tried.name,
        percent(tried.technology.converterIn.efficiency),
        percent(tried.technology.converterOut.efficiency),
        percent(size.roundTrip),
        ...storeCells(storeFigures(size), units),
      ]),
    ],
  );
  return `${table}\n${wrap(
    technologyNote(
      technologies.map(({ tried }) => tried),
      settings.store.kind === 'hydrogen' ? settings.store.keeping : '',
      judged.scale,
      units,
    ),
  )}`;
}

function technologyNote(tried: readonly NamedTechnology[], keeping: string, scale: number, units: UnitSystem): string {
  const array = scale === 1 ? 'with this array' : `with ${scale.toFixed(2)} times this array`;
  const { converterIn } = tried[0]!.technology;
  const least =
    converterIn.minimumLoad > 0 ? `; converter in stops below ${percent(converterIn.minimumLoad)} load` : '';
  const chain = (pick: (one: NamedTechnology) => number | undefined, digits = 0) =>
    tried
      .map(pick)
      .map((perKg) => (perKg === undefined ? '' : (perKg / inMassUnit(1, units)).toFixed(digits)))
      .join(', ');
  if (tried[0]!.chain === null) return `The store of the site file ${array}${least}.`;
  const compression =
    keeping === '200 bar' ? ` plus ${chain((one) => one.chain?.compressionKWhPerKg, 1)} to 200 bar` : '';
  return (
    `Hydrogen by published ranges ${array}: electrolysis ${chain((one) => one.chain?.electrolysisKWhPerKg)} kWh/${massUnit(units)}${compression}; ` +
    `store in kWh of lower heat${least}. The smallest store is shown; a smaller electrolyser needs a larger one.`
  );
}

/** Names longer than this are cut, so that the table keeps to 80 columns. */
const longestName = 38;

const rivalsTitle = ({ asItIs }: CarryStudy) => (asItIs.site.generator ? 'Other ways, engine kept' : 'Other ways');

function rivalsTable(study: CarryStudy, units: UnitSystem): string {
  const { rivals, asItIs, costs, asItIsCost, withStoreCost } = study;
  if (rivals.length === 0) return '';
  const perLitre = inVolumeUnit(1, units);
  const priced = asItIsCost?.lifeCycle != null;
  const dark = (kWh: number) => (kWh < 0.05 ? '-' : figure(kWh));
  const money = (total: number | null | undefined) => (priced ? [total == null ? '-' : figure(total, 0)] : []);
  const { generator, load } = asItIs.summary;
  const store =
    withStoreCost === null || !priced
      ? []
      : [
          [
            'the store judged, no engine',
            '0',
            ...saved(generator.hours, generator.fuelLitres),
            '-',
            ...money(withStoreCost),
          ],
        ];
  const table = plainTable(
    [rivalsTitle(study), 'engine', 'saves', 'saves', 'dark', ...(priced ? ['cost over'] : [])],
    [
      ['', 'h', 'h', volumeUnit(units), 'kWh', ...(priced ? [`${costs?.years} years`] : [])],
      ['as it is', figure(generator.hours), '', '', dark(load.darkKWh), ...money(asItIsCost?.lifeCycle?.total)],
      ...store,
      ...rivals.map(({ name, generatorHours, hoursSaved, fuelSavedLitres, darkKWh, cost }) => [
        name.length > longestName ? `${name.slice(0, longestName - 3)}...` : name,
        figure(generatorHours),
        ...saved(hoursSaved, fuelSavedLitres),
        dark(darkKWh),
        ...money(cost?.lifeCycle?.total).map((cell) => (lacksPrice(cost) ? `${cell} +` : cell)),
      ]),
    ],
  );
  if (!priced) return table;
  const unpriced = [
    ...new Set([asItIsCost, ...rivals.map(({ cost }) => cost)].flatMap((cost) => cost?.unpriced ?? [])),
  ];
  const names = [...new Set(unpriced.map(({ name }) => name))];
  const without = names.length > 0 ? ` Without ${names.join(', ')}, which has no price.` : '';
  const plus = rivals.some(({ cost }) => lacksPrice(cost))
    ? ' +: and what has no price there, and is not as it is.'
    : '';
  const currency = asItIs.site.costs?.currency;
  return `${table}\n${wrap(`Cost: all that has a price, the bank with its wear, engine or store and fuel, in present value${currency ? `, ${currency}` : ''}.${without}${plus}`)}`;

  function lacksPrice(cost: (typeof rivals)[number]['cost']): boolean {
    return priced && cost !== null && unlikeThings(cost, asItIsCost!).here.length > 0;
  }

  function saved(hours: number, litres: number): string[] {
    return [figure(hours), figure(litres * perLitre)];
  }
}

function cautionsText(study: CarryStudy, units: UnitSystem): string {
  const cautions = carryCautions(study);
  if (cautions.length === 0) return '';
  return ['Cautions', ...cautions.map(({ text }) => wrap(`  ${inShownUnits(text, units)}`, 80, '    '))].join('\n');
}
