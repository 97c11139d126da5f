import { hoursPerYear } from '@wintergap/ground';
import type { PriceByEnergy, PriceByPower, Site } from '@wintergap/site';
import { type Costs, type EngineCosts, usualEngineYears } from './costs-section.js';

type SiteArray = Site['arrays'][number];

/** Rated power of all arrays at standard test conditions, kW. */
export const ratedKW = ({ arrays }: Pick<Site, 'arrays'>): number =>
  arrays.reduce((sum, array) => sum + arrayKW(array), 0);

/** Labelled capacity of the bank at its nominal voltage, kWh. */
export const labelledKWh = ({ bank }: Pick<Site, 'bank'>): number => (bank.voltage * bank.capacity) / 1000;

const arrayKW = ({ inSeries, strings, module }: SiteArray): number =>
  (inSeries * strings * module.vmp * module.imp) / 1000;

/** One line of what a design is bought with. */
export interface BillLine {
  part: 'array' | 'mount' | 'controller' | 'bank' | 'cabinet' | 'inverter' | 'engine' | 'extra';
  /** In words, such as `pole mount of "garden"`. */
  name: string;
  /** As bought today; `null` where the site file has no price for it. */
  price: number | null;
  upkeepPerYear: number;
  /** Years after which it is bought again; `null` when it lasts as long as the comparison, or as its use says. */
  livesYears: number | null;
  /** What it is, as far as that settles its price: equal things without a price cost the same in two designs. */
  thing: string;
}

interface Priced {
  upkeep?: number | undefined;
  lives?: number | undefined;
}

const keptOf = ({ upkeep = 0, lives }: Priced): Pick<BillLine, 'upkeepPerYear' | 'livesYears'> => ({
  upkeepPerYear: upkeep * hoursPerYear,
  livesYears: lives === undefined ? null : lives / hoursPerYear,
});

const byPower = (price: PriceByPower | undefined, kW: number): number | null =>
  price === undefined ? null : typeof price === 'number' ? price : price.perKW * kW;

const byEnergy = (price: PriceByEnergy | undefined, kWh: number): number | null =>
  price === undefined ? null : typeof price === 'number' ? price : price.perKWh * kWh;

/** Mounts that move by motor. */
const moves = ({ kind }: SiteArray['mount']): boolean => kind !== 'fixed' && kind !== 'seasonal';

/**
 * Everything a design is bought with, each with its price.
 *
 * A price on a thing comes first. `costs.array` stands for modules, cable, and as far as they have no price of their own
 * for a mount that does not move by motor and the controller; `costs.bank` for a bank, `costs.engine` for an engine without
 * one. What the design does not have is not on the bill.
 */
export function billOf(site: Site, costs: Costs): BillLine[] {
  return [
    ...site.arrays.filter(({ strings }) => strings > 0).flatMap((array) => arrayLines(array, costs)),
    bankLine(site, costs),
    ...cabinetLine(site),
    ...inverterLine(site),
    ...engineLine(site, costs),
    ...(site.costs?.extra ?? []).map(
      ({ name, price, ...kept }): BillLine => ({ part: 'extra', name, price, ...keptOf(kept), thing: name }),
    ),
  ];
}

function arrayLines(array: SiteArray, { arrayPerKW }: Costs): BillLine[] {
  const { name, module, mount, controller, inSeries, strings } = array;
  const kW = arrayKW(array);
  const modules = typeof module.price === 'number' ? module.price * inSeries * strings : byPower(module.price, kW);
  const wholesale = modules === null && arrayPerKW !== null;
  const perModule = keptOf(module);
  const lines: BillLine[] = [
    {
      part: 'array',
      name: `array "${name}"`,
      price: modules ?? (arrayPerKW === null ? null : kW * arrayPerKW),
      ...perModule,
      upkeepPerYear: perModule.upkeepPerYear * inSeries * strings,
      thing: `${inSeries} x ${strings} of ${JSON.stringify(module)}`,
    },
  ];
  const mountPrice = byPower(mount.price, kW);
  if (mountPrice !== null || moves(mount) || !wholesale) {
    lines.push({
      part: 'mount',
      name: `${mount.kind} mount of "${name}"`,
      price: mountPrice,
      ...keptOf(mount),
      thing: mount.kind,
    });
  }
  if (controller.price !== undefined || !wholesale) {
    lines.push({
      part: 'controller',
      name: `controller of "${name}"`,
      price: controller.price ?? null,
      ...keptOf(controller),
      thing: `${controller.kind} ${controller.maxCurrent} A ${controller.maxVoltage} V`,
    });
  }
  return lines;
}

function bankLine(site: Site, { bankPerKWh }: Costs): BillLine {
  const { bank } = site;
  const kWh = labelledKWh(site);
  return {
    part: 'bank',
    name: 'bank',
    price: byEnergy(bank.price, kWh) ?? (bankPerKWh === null ? null : kWh * bankPerKWh),
    ...keptOf(bank),
    thing: `${bank.chemistry} ${bank.voltage} V ${bank.capacity} Ah`,
  };
}

function cabinetLine({ bank: { cabinet } }: Site): BillLine[] {
  if (!cabinet) return [];
  const thing = JSON.stringify([cabinet.insulation, cabinet.heatedBy]);
  return [{ part: 'cabinet', name: 'cabinet', price: cabinet.price ?? null, ...keptOf(cabinet), thing }];
}

function inverterLine({ inverter }: Site): BillLine[] {
  if (!inverter) return [];
  const { power } = inverter;
  const price = byPower(inverter.price, power / 1000);
  return [{ part: 'inverter', name: 'inverter', price, ...keptOf(inverter), thing: `${power} W` }];
}

function engineLine(site: Site, costs: Costs): BillLine[] {
  const { generator } = site;
  if (!generator) return [];
  return [
    {
      part: 'engine',
      name: 'engine',
      price: engineOf(site, costs)?.price ?? null,
      ...keptOf({ upkeep: generator.upkeep }),
      thing: `${generator.fuel.kind} ${generator.output.power} W`,
    },
  ];
}

/**
 * What a design's engine costs: `generator.price` and `lives` before `costs.engine`; service from `costs.engine.service`,
 * otherwise from the prices of oil and overhaul. `null` without a price of an engine.
 */
export function engineOf({ generator }: Site, { engine }: Costs): EngineCosts | null {
  const own = generator && byPower(generator.price, generator.output.power / 1000);
  const price = own ?? engine?.price;
  if (price === undefined || price === null) return null;
  const lives = generator?.lives;
  const perRun = ({ every, price: each = 0 }: { every: number; price?: number | undefined }) => each / every;
  const serviced = [generator?.oil, generator?.overhaul].reduce((sum, one) => sum + (one ? perRun(one) : 0), 0);
  return {
    price,
    lifeH: lives?.runningH ?? engine?.lifeH ?? null,
    lifeYears: lives?.years ?? engine?.lifeYears ?? usualEngineYears,
    servicePerH: engine?.servicePerH ?? serviced,
    alreadyThere: engine?.alreadyThere ?? false,
  };
}

/** The prices of a site with those of one design's own engine in their place. */
export const costsFor = (site: Site, costs: Costs): Costs => ({ ...costs, engine: engineOf(site, costs) });

/** Price of all arrays with what of their mounts and controllers has a price; `null` where an array has none. */
export function arraysPrice(site: Site, costs: Costs): number | null {
  const lines = site.arrays.filter(({ strings }) => strings > 0).flatMap((array) => arrayLines(array, costs));
  if (lines.some(({ part, price }) => part === 'array' && price === null)) return null;
  return lines.reduce((sum, { price }) => sum + (price ?? 0), 0);
}

/** Names of the things of a design that have no price. */
export const unpricedNames = (site: Site, costs: Costs): string[] =>
  billOf(site, costs).flatMap(({ name, price }) => (price === null ? [name] : []));
