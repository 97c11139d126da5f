import { dateOfDay } from '@wintergap/ground';
import { formatQuantity, type UnitSystem } from '@wintergap/quantity';
import { bankStands, type SiteArray, type SiteBank, type SiteGenerator, type SiteMount } from '@wintergap/site';
import type { YearResult } from '@wintergap/year';
import { count, dateText, figure, percent } from './figures.js';
import { temperatureText } from './shown-units.js';

/** A part of a design as it was taken into the year. */
export interface DesignPart {
  name: string;
  text: string;
}

/** Everything that a design is built of, in the order of the energy: arrays, bank, inverter, engine. */
export function designParts({ site, plant }: Pick<YearResult, 'site' | 'plant'>, units: UnitSystem): DesignPart[] {
  const { bank, inverter, converter, generator } = site;
  const cells = plant.bank.settings.defaults.inWords;
  return [
    ...site.arrays.flatMap((array) => arrayParts(array, units)),
    { name: 'bank', text: bankText(bank, cells, plant.bank.floor) },
    ...(bank.cabinet ? [{ name: 'bank stands', text: cabinetText(bank, plant.cabinet.insulationWPerK, units) }] : []),
    ...(inverter
      ? [
          {
            name: 'inverter',
            text: `${power(inverter.power)}${inverter.surge === undefined ? '' : `, ${power(inverter.surge)} for a moment`}, ${percent(inverter.efficiency)} at its best, ${power(inverter.idle)} idle`,
          },
        ]
      : []),
    ...(converter
      ? [{ name: 'DC converter', text: `${percent(converter.efficiency)}, ${power(converter.idle)} idle` }]
      : []),
    ...(generator ? [{ name: 'engine', text: engineText(generator) }] : []),
  ];
}

/** What stands in a design that the base has otherwise, or not at all; what it has not is named so. */
export function partsApart(base: readonly DesignPart[], design: readonly DesignPart[]): DesignPart[] {
  const without = base.filter(({ name }) => !design.some((part) => part.name === name));
  return [
    ...design.filter(({ name, text }) => base.find((part) => part.name === name)?.text !== text),
    ...without.map(({ name }) => ({ name, text: 'none' })),
  ];
}

const power = (watts: number) => formatQuantity(watts, 'power', 'metric');

function arrayParts(array: SiteArray, units: UnitSystem): DesignPart[] {
  const { name, module, inSeries, strings, mount, height, cable, controller } = array;
  const watts = module.power ?? module.vmp * module.imp;
  const modules = inSeries * strings;
  const length = (metres: number) => formatQuantity(metres, 'length', units);
  const limits = [controller.maxCurrent, controller.maxVoltage]
    .map((limit, i) => (limit === undefined ? '' : `, ${figure(limit, 0)} ${i === 0 ? 'A' : 'V'}`))
    .join('');
  return [
    {
      name: `array ${name}`,
      text:
        modules === 0
          ? 'none'
          : `${count(modules, 'module')} of ${figure(watts, 0)} W, ${figure((modules * watts) / 1000)} kW: ${count(strings, 'string')} of ${inSeries} in series`,
    },
    { name: `mount of ${name}`, text: `${mountInWords(mount)}${height > 0 ? `, ${length(height)} up` : ''}` },
    ...(cable
      ? [
          {
            name: `cable of ${name}`,
            text: `${length(cable.length)} of ${formatQuantity(cable.size, 'conductorArea', units)}`,
          },
        ]
      : []),
    {
      name: `controller of ${name}`,
      text: `${controller.kind === 'direct' ? 'direct connection' : 'maximum power'}${limits}`,
    },
  ];
}

/** A mount as a person would describe it: `fixed at 60° facing south (180°)`. */
function mountInWords(mount: SiteMount): string {
  switch (mount.kind) {
    case 'fixed':
      return `fixed at ${mount.tilt}°, facing ${facing(mount.azimuth)}`;
    case 'seasonal':
      return `tilted by the season, ${tiltsInWords(mount.tilts)}, facing ${facing(mount.azimuth)}`;
    case 'pole':
      return `turns with the sun on a pole, ${mount.turn}° in all, ${mount.tilts ? tiltsInWords(mount.tilts) : `tilt ${mount.tilt}°`}`;
    case 'one-axis':
      return `turns about one axis, ${mount.axisTilt}° steep, towards ${facing(mount.axisAzimuth)}, ${mount.limit}° to either side`;
    case 'two-axis':
      return 'follows the sun about two axes';
  }
}

const tiltsInWords = (tilts: readonly { from: number; tilt: number }[]) =>
  tilts.map(({ from, tilt }) => `${tilt}° from ${dateText(dateOfDay(from))}`).join(', ');

const points = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];

/** `south` where it is that to the degree, otherwise the azimuth. */
const facing = (azimuth: number) => (azimuth % 45 === 0 ? points[(azimuth % 360) / 45]! : `azimuth ${azimuth}°`);

function bankText({ voltage, capacity, atRate, age }: SiteBank, cells: string, floor: number): string {
  const years = age / 8760;
  const kWh = (voltage * capacity) / 1000;
  return `${cells}, ${figure(voltage, voltage % 1 === 0 ? 0 : 1)} V, ${figure(capacity, 0)} Ah at ${figure(atRate, 0)} h (${figure(kWh)} kWh), used down to ${percent(floor)}${years > 0 ? `, ${count(years, 'year')} old` : ''}`;
}

function cabinetText(bank: SiteBank, insulationWPerK: number, units: UnitSystem): string {
  const { heatedBy } = bank.cabinet!;
  const place = { rooms: 'in the heated rooms', unheated: 'in a hut without heat', outdoors: 'outdoors' }[
    bankStands(bank)
  ];
  const heat =
    heatedBy === 'none'
      ? 'not heated'
      : heatedBy.kind === 'heater'
        ? `a heater of ${power(heatedBy.power)} keeps it above ${temperatureText(heatedBy.keepAbove, units)}`
        : `warmed by a room of ${temperatureText(heatedBy.temperature, units)}`;
  return `in a cabinet ${place} that loses ${figure(insulationWPerK)} W/K, ${heat}`;
}

function engineText({ output, fuel, start, stop }: SiteGenerator): string {
  const charger = output.bus === 'ac' ? `, charger ${power(output.charger.power)}` : '';
  const starts = [
    start.below !== undefined && `below ${percent(start.below)}`,
    start.voltageBelow !== undefined && `below ${figure(start.voltageBelow)} V`,
    start.byHand && `by hand below ${percent(start.byHand.below)}`,
    start.beforeDullDay && `below ${percent(start.beforeDullDay.below)} before a dull day`,
  ].filter((way) => typeof way === 'string');
  const hours = start.between ? ` between ${start.between[0]} and ${start.between[1]} o'clock` : '';
  const stops = [
    stop.above !== undefined && `above ${percent(stop.above)}`,
    stop.atBulkEnd && 'when the bank takes less than it gives',
  ].filter((way) => typeof way === 'string');
  return [
    `${power(output.power)} ${output.bus.toUpperCase()}, ${fuel.kind}${charger}`,
    ...(starts.length > 0 ? [`starts ${starts.join(' or ')}${hours}`] : []),
    ...(stops.length > 0 ? [`stops ${stops.join(' or ')}`] : []),
  ].join('; ');
}
