import { monthNames } from '@wintergap/ground';
import { formatQuantity, type UnitSystem } from '@wintergap/quantity';
import type { VariantReasons } from '@wintergap/study';
import { figure, wrap } from '../words/figures.js';

/** Smallest part of a difference that is named, h. */
const worthNamingH = 0.5;
/** Smallest difference of energy that is told, kWh. */
const worthTellingKWh = 1;

/** Why each variant runs the engine longer or shorter than the base: a few sentences each. */
export function whyText(reasons: readonly VariantReasons[], units: UnitSystem): string {
  if (reasons.length === 0) return '';
  return [
    'Why, against the base',
    ...reasons.map((reason) => wrap(`  ${reason.variant}: ${reasonText(reason, units)}`, 80, '    ')),
    wrap(
      'Hours named for an effect are gone when both designs are run without it. Engine hours come in whole runs; the energies are exact.',
    ),
  ].join('\n');
}

function reasonText(reason: VariantReasons, units: UnitSystem): string {
  const { generatorHours, fuelLitres, darkKWh, effects, energy } = reason;
  if (energy.months.length === 0) return 'neither runs the engine.';
  if (Math.abs(generatorHours) < 0.05 && Math.abs(fuelLitres) < 0.05) {
    return Math.abs(darkKWh) < 0.05 ? 'no difference.' : `${signed(darkKWh)} kWh of dark load. ${energyText(energy)}`;
  }
  const fuel = `${fuelLitres < 0 ? '-' : '+'}${formatQuantity(Math.abs(fuelLitres), 'volume', units, 2)}`;
  const named = effects.filter(({ generatorHours: hours }) => Math.abs(hours) >= worthNamingH);
  const rest = named.reduce((left, part) => left - part.generatorHours, generatorHours);
  const parts = named.map(({ name, generatorHours: hours }) => `${name} ${signed(hours)} h`);
  const of =
    parts.length === 0
      ? 'no single effect explains it'
      : `of it ${parts.join(', ')}${Math.abs(rest) >= 0.05 ? `, the rest ${signed(rest)} h` : ''}`;
  return `${signed(generatorHours)} h, ${fuel} of fuel; ${of}. ${energyText(energy)}`;
}

function energyText(energy: VariantReasons['energy']): string {
  const months =
    energy.months.length === 12 ? 'the year' : energy.months.map((month) => monthNames[month - 1]).join(', ');
  const parts = energy.arrayParts
    .filter(({ kWh }) => Math.abs(kWh) >= worthTellingKWh)
    .sort((one, other) => Math.abs(other.kWh) - Math.abs(one.kWh))
    .map(({ name, kWh }) => `${name} ${signed(kWh)}`);
  const changes = [
    changeText('the array offers', energy.arrayOfferedKWh) + (parts.length > 0 ? ` (${parts.join(', ')})` : ''),
    changeText('the loads ask', energy.loadKWh),
    changeText('bank, conversion and own use take', energy.lostKWh),
  ].filter((change) => change !== '');
  return `In ${months} ${changes.length === 0 ? 'array, loads and losses are the same' : changes.join('; ')}.`;
}

const signed = (value: number) => (Math.abs(value) < 0.05 ? '0' : `${value > 0 ? '+' : '-'}${figure(Math.abs(value))}`);

function changeText(who: string, kWh: number): string {
  if (Math.abs(kWh) < worthTellingKWh) return '';
  return `${who} ${figure(Math.abs(kWh))} kWh ${kWh > 0 ? 'more' : 'less'}`;
}
