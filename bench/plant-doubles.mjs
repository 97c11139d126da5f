// A plant as the doubles that bench/balance.c reads.
import { capacityByRate, tenHourAh } from '../packages/battery/dist/lead-acid/capacity.js';
import { restCellV } from '../packages/battery/dist/lead-acid/discharge.js';
import { sealedFullCell, ventedFullCell } from '../packages/battery/dist/lead-acid/full-cell.js';
import { compensatedCellV } from '../packages/battery/dist/lead-acid/set-voltage.js';
import { leadAcidTables, powerPosition } from '../packages/battery/dist/lead-acid/tables.js';
import { selfDischargeTable } from '../packages/battery/dist/self-discharge.js';

/** The tables of a lead-acid bank, made as the battery's room makes them. */
function bankTables({ settings, lowestState }) {
  const { rateWeight, absorptionCellV, floatCellV, equaliseCellV, compensationVPerCellK, cutoffCellV, defaults } =
    settings;
  const setV = [absorptionCellV, floatCellV, equaliseCellV];
  const labelDepth = settings.capacityAh / tenHourAh(settings.capacityAh, settings.atRateH, rateWeight);
  const tables = leadAcidTables({
    resistanceFactor: defaults.resistance,
    efficiencyFactor: defaults.efficiencyFactor,
    full: defaults.traits.gas === 'vented' ? ventedFullCell : sealedFullCell,
    rateWeight,
    deepest: labelDepth * (1 - lowestState),
    cutoffV: cutoffCellV,
    setCellV: (stage, tempC) => compensatedCellV(setV[stage], compensationVPerCellK, tempC),
  });
  return { ...tables, labelDepth, setV };
}

/** Numbers, tables and hourly columns in the order in which balance.c takes them. */
export function plantAsDoubles({ bank, cabinet, generator, sources, chargeRules, ...plant }) {
  const { settings } = bank;
  const { labelDepth, setV, ...tables } = bankTables(bank);
  const c10 = tenHourAh(bank.refAh, settings.atRateH, settings.rateWeight);
  const restFallV = restCellV(1) - restCellV(1 - labelDepth);
  const perSpan = 1 / (1 - bank.lowestState);
  const bankNumbers = [
    ...[bank.cells, bank.refAh, c10, bank.floor, bank.lowestState, bank.chargeLimitA, bank.dischargeLimitA],
    ...[powerPosition(1 / (bank.cells * c10)) ** 2, 10 / c10, perSpan],
    ...[64 * 20.73 * labelDepth * settings.defaults.efficiencyFactor, restCellV(1), restFallV],
    ...[...setV, settings.compensationVPerCellK, bank.gasEnergyWh(1), chargeRules.tailAmps, chargeRules.absorptionH],
  ];
  const plantNumbers = [
    ...[cabinet.insulationWPerK + (cabinet.ventilationWPerK ?? 0), cabinet.heatCapacityWhPerK],
    ...[sources.length, plant.inverterLimitW],
    ...[1, generator.chargerEfficiency, generator.fuelIdleLPerH, generator.fuelLPerWh],
    ...[generator.stopAbove, generator.minimumRunH, generator.warmUpH, generator.coolDownH],
  ];
  const limits = Array.from({ length: 8 }, (_, i) => sources[i]?.maxCurrentA ?? 0);
  return [
    [...bankNumbers, ...plantNumbers],
    limits,
    ...[tables.chargeV, tables.dischargeV, ...tables.acceptance, tables.dischargeLimit],
    Array.from({ length: 2049 }, (_, k) => -Math.expm1(-k / 64)),
    Array.from({ length: 65 }, (_, k) => capacityByRate((k / 16) ** 2, settings.rateWeight) / labelDepth),
    selfDischargeTable(settings.selfDischargePerMonth),
    ...[plant.acW, plant.dcW, plant.inverterInputW, plant.converterInputW, plant.ownUseW, plant.aroundC],
    ...[generator.ratedW, generator.startBelow, generator.startAllowed, generator.runAllowed],
    ...sources.map(({ controller }) => controller.dc.powerW.map((w) => w * controller.efficiency[0])),
  ].flatMap((part) => Array.from(part));
}
