import { monthNames } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import type { CommonAnswer, CommonFigures, ComparedCost } from '@wintergap/study';
import type { NamedYear } from '../text/compare.js';
import type { CostTerms } from '../text/parts/cost.js';
import { inVolumeUnit, volumeUnit } from '../words/shown-units.js';
import { type Column, spreadsheet } from './spreadsheet.js';

type Row = NamedYear & { common: CommonFigures; priced: ComparedCost | null };

/** Costs of the designs, in their order, and the money they are in. */
export interface PricedDesigns {
  designs: readonly ComparedCost[];
  terms: CostTerms;
}

const differences = { less: 'less', more: 'more', none: 'no difference' };

/**
 * The designs of a comparison as CSV, one row each, the base first: what the common years say, the costs where there are
 * prices, and the file's year.
 */
export function compareCsv(
  designs: readonly NamedYear[],
  answer: CommonAnswer,
  units: UnitSystem,
  priced: PricedDesigns | null = null,
): string {
  const volume = volumeUnit(units);
  const litres = (value: number) => inVolumeUnit(value, units);
  const columns: Column<Row>[] = [
    { head: 'design', of: ({ name }) => name },
    {
      head: 'verdict',
      of: ({ name }) =>
        answer.leftOut.includes(name)
          ? 'over a limit'
          : answer.leaders.includes(name)
            ? answer.leaders.length > 1
              ? 'tied for the best'
              : 'best'
            : `behind ${(answer.beatenBy[name] ?? []).join(', ')}`,
    },
    { head: 'common years', of: ({ common }) => common.hoursOfYears.length },
    { head: 'engine, usual year [h]', of: ({ common }) => common.ranked.generatorHours.usual.value },
    { head: 'engine, one year in ten [h]', of: ({ common }) => common.ranked.generatorHours.oneInTen.value },
    { head: 'engine, mean [h]', of: ({ common }) => common.generatorHours.mean },
    { head: 'engine, standard error of the mean [h]', of: ({ common }) => common.generatorHours.standardError },
    { head: 'engine less base, mean [h]', of: ({ common }) => common.againstBase?.generatorHours.mean ?? null },
    {
      head: 'engine against base',
      of: ({ common }) => (common.againstBase ? differences[common.againstBase.generatorHours.verdict] : null),
    },
    { head: `fuel, usual year [${volume}]`, of: ({ common }) => litres(common.ranked.fuelLitres.usual.value) },
    { head: `fuel, one year in ten [${volume}]`, of: ({ common }) => litres(common.ranked.fuelLitres.oneInTen.value) },
    { head: 'dark load, usual year [kWh]', of: ({ common }) => common.ranked.darkKWh.usual.value },
    { head: 'dark load, one year in ten [kWh]', of: ({ common }) => common.ranked.darkKWh.oneInTen.value },
    ...monthNames.map((name, m) => ({
      head: `engine, mean ${name} [h]`,
      of: ({ common }: Row) => common.monthHours[m] ?? null,
    })),
    ...(priced ? costColumns(priced.terms) : []),
    { head: 'array [kW]', of: ({ result }) => result.summary.array.ratedKW },
    { head: 'bank, usable [kWh]', of: ({ result }) => result.summary.bank.usableKWh },
    { head: 'days without sun from full', of: ({ result }) => result.summary.bank.autonomyDays },
    { head: 'file year: engine [h]', of: ({ result }) => result.summary.generator.hours },
    { head: 'file year: engine starts', of: ({ result }) => result.summary.generator.starts },
    { head: `file year: fuel [${volume}]`, of: ({ result }) => litres(result.summary.generator.fuelLitres) },
    { head: 'file year: fuel cost', of: ({ result }) => result.summary.generator.fuelCost },
    { head: 'file year: array offered [kWh]', of: ({ result }) => result.summary.array.availableKWh },
    { head: 'file year: thrown away [kWh]', of: ({ result }) => result.summary.array.throttledKWh },
    { head: 'file year: dark load [kWh]', of: ({ result }) => result.summary.load.darkKWh },
    { head: 'file year: lowest charge [%]', of: ({ result }) => result.summary.bank.minStateOfCharge * 100 },
  ];
  const rows = designs.map((design, d) => ({
    ...design,
    common: answer.designs[d]!,
    priced: priced?.designs[d] ?? null,
  }));
  return spreadsheet(rows, columns);
}

function costColumns({ years, currency }: CostTerms): Column<Row>[] {
  const money = currency === undefined ? '' : ` [${currency}]`;
  return [
    { head: `to buy${money}`, of: ({ priced }) => priced?.cost.firstCost ?? null },
    { head: `to run a year${money}`, of: ({ priced }) => priced?.cost.runningPerYear ?? null },
    { head: `all a year${money}`, of: ({ priced }) => priced?.cost.perYear ?? null },
    {
      head: `${years === null ? 'life cycle' : `${years} years`}${money}`,
      of: ({ priced }) => priced?.cost.lifeCycle?.total ?? null,
    },
    { head: `priced parts less base${money}`, of: ({ priced }) => priced?.againstBase?.difference.mean ?? null },
    { head: 'bank lasts [years]', of: ({ priced }) => priced?.cost.bankYears ?? null },
  ];
}
