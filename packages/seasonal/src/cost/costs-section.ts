import { hoursPerYear } from '@wintergap/ground';
import { readSection, type SiteFile } from '@wintergap/site';
import {
  between,
  fraction,
  mapping,
  number,
  quantity,
  readElsewhere,
  type Schema,
  wholeNumber,
  word,
} from '@wintergap/site/fields';

/**
 * Prices of the site file's `costs` key, in one money of today. Nothing has a default price: what the file does not
 * say is `null`, and what hangs on it stays unanswered. The price of fuel is the generator's own.
 */
export interface Costs {
  /** Length of the comparison; `null` leaves life-cycle costs out. */
  years: number | null;
  /** Per year, beyond the general rise of prices; 0 when not given, which is no discounting. */
  discountRate: number;
  /** Yearly rise of the fuel price beyond other prices; 0 when not given. */
  fuelEscalation: number;
  /** Array with mount, cable and controller, per kW rated. */
  arrayPerKW: number | null;
  /** Per kWh of labelled capacity. */
  bankPerKWh: number | null;
  engine: EngineCosts | null;
  store: StoreCosts | null;
}

export interface EngineCosts {
  price: number;
  /** Running hours until it is replaced; `null` when it lasts as long as the comparison. */
  lifeH: number | null;
  /** Years after which it is replaced however little it ran. */
  lifeYears: number;
  /** Oil, filters and service; `null` when not given: then by the prices of the generator's oil and overhaul. */
  servicePerH: number | null;
  /** It stands there already and is not bought at the start. */
  alreadyThere: boolean;
}

export interface StoreCosts {
  inPerKW: number;
  /** Per kWh at the store; `null` asks for the price at which store and engine cost the same. */
  keptPerKWh: number | null;
  outPerKW: number;
  /** Lives in years; `null` when it lasts as long as the comparison. */
  inYears: number | null;
  keptYears: number | null;
  outYears: number | null;
  upkeepPerYear: number;
  /** Design, shed, permits: bought once. */
  other: number;
}

const price = number(0, 1e9, 'a price');
const upToBillion = (of: string) => between(0, 1e9, `/${of}`);
const mostYears = 200;
const life = quantity('duration', {
  min: 24,
  max: mostYears * hoursPerYear,
  say: `a life such as 12 years, up to ${mostYears} years`,
}).optional();
const change = fraction({ min: -0.2, max: 0.5, say: 'a change per year from -20 % to 50 %' });

/** An engine that hardly runs rusts, its seals and hoses harden and its parts go out of sale: common practice, no source. */
export const usualEngineYears = 20;

const schema = mapping({
  // Read with each design.
  currency: readElsewhere,
  extra: readElsewhere,
  years: wholeNumber(1, mostYears, 'years').optional(),
  discount: change.optional(),
  fuelEscalation: change.optional(),
  array: quantity('pricePerPower', upToBillion('kW')).optional(),
  bank: quantity('pricePerEnergy', upToBillion('kWh')).optional(),
  engine: mapping({
    price,
    life: quantity('duration', {
      min: 10,
      max: 1e6,
      say: 'running hours such as 2000 h, 10 h to 1000000 h',
    }).optional(),
    lifeYears: quantity('duration', {
      min: hoursPerYear,
      max: 100 * hoursPerYear,
      say: 'a life such as 20 years, 1 to 100 years',
    }).optional(),
    service: quantity('pricePerTime', between(0, 1e6, '/h')).optional(),
    alreadyThere: word(['yes', 'no']).default('no'),
  }).optional(),
  store: mapping({
    in: quantity('pricePerPower', upToBillion('kW')),
    kept: quantity('pricePerEnergy', upToBillion('kWh')).optional(),
    out: quantity('pricePerPower', upToBillion('kW')),
    lives: mapping({ in: life, kept: life, out: life }).optional(),
    upkeep: quantity('pricePerTime', between(0, 1e6, '/h')).optional(),
    other: price.optional(),
  }).optional(),
});

/** How the `costs` key of a site file is written. */
export const costsSection: Schema = schema;

const inYears = (hours: number | undefined): number | null => (hours === undefined ? null : hours / hoursPerYear);

const withoutPrices: Costs = {
  years: null,
  discountRate: 0,
  fuelEscalation: 0,
  arrayPerKW: null,
  bankPerKWh: null,
  engine: null,
  store: null,
};

/** Whether any thing of a design has a price of its own. */
const hasPrices = ({ arrays, bank, inverter, generator }: SiteFile['base']): boolean =>
  [
    ...arrays.flatMap(({ module, mount, controller }) => [module, mount, controller]),
    bank,
    bank.cabinet,
    inverter,
    generator,
  ].some((thing) => thing?.price !== undefined);

/**
 * Reads the `costs` key of a site file; `null` when it has none and no thing in any design has a price.
 *
 * @throws SiteError with line, column and path of every problem in it
 */
export function readCosts(site: SiteFile): Costs | null {
  const written = readSection(site, 'costs', schema);
  if (!written) return [site.base, ...site.variants.values()].some(hasPrices) ? withoutPrices : null;
  const { engine, store } = written;
  return {
    years: written.years ?? null,
    discountRate: written.discount ?? 0,
    fuelEscalation: written.fuelEscalation ?? 0,
    arrayPerKW: written.array ?? null,
    bankPerKWh: written.bank ?? null,
    engine: engine
      ? {
          price: engine.price,
          lifeH: engine.life ?? null,
          lifeYears: inYears(engine.lifeYears) ?? usualEngineYears,
          servicePerH: engine.service ?? null,
          alreadyThere: engine.alreadyThere === 'yes',
        }
      : null,
    store: store
      ? {
          inPerKW: store.in,
          keptPerKWh: store.kept ?? null,
          outPerKW: store.out,
          inYears: inYears(store.lives?.in),
          keptYears: inYears(store.lives?.kept),
          outYears: inYears(store.lives?.out),
          upkeepPerYear: (store.upkeep ?? 0) * hoursPerYear,
          other: store.other ?? 0,
        }
      : null,
  };
}
