import type { GeneratorSettings } from '@wintergap/generator';
import type { LoadYear } from '@wintergap/loads';
import type { Site } from '@wintergap/site';
import { describe, expect, test } from 'vitest';
import type { PlantParts } from '../loop/plant.fixture.js';
import type { ArrayLimit } from '../prepare/site-limits.js';
import type { BareYear } from '../year-result.js';
import { yearCautions } from './cautions.js';
import { exampleSite, exampleYear } from './example.fixture.js';
import { weatherOf } from './year.fixture.js';

/** Code -> text of what the owner of a year must know. */
function cautionsOf(year: BareYear, limits: readonly ArrayLimit[] = [], settled = true): Record<string, string> {
  const { site, weather, plant, load, ledger } = year;
  const cautions = yearCautions(site, weather, plant, load, ledger, limits, settled);
  return Object.fromEntries(cautions.map(({ code, text }) => [code, text]));
}

const lithium = { chemistry: 'lithium-iron-phosphate' as const, voltageV: 25.6, capacityAh: 400, atRateH: 5 };
const agm = { chemistry: 'agm' as const, voltageV: 24, capacityAh: 400, atRateH: 20 };
const petrol: GeneratorSettings = {
  output: { bus: 'dc', powerW: 3000 },
  fuel: { kind: 'petrol', atFullLPerH: 1.6, idleLPerH: 0.5 },
  start: [{ kind: 'charge', below: 0.45 }],
  stop: [{ kind: 'charge', above: 0.8 }],
};

test('a quiet year asks for no caution', () => {
  expect(cautionsOf(exampleYear({ generator: petrol }))).toEqual({});
});

test('limits that are exceeded are cautions, those that are met or near are not', () => {
  const limit = (code: string, level: string) => ({ code, level, text: 'too many volts', array: 'pole' }) as never;
  const limits = [limit('cold-voltage', 'exceeded'), limit('voltage-drop', 'note'), limit('string-fuse', 'ok')];
  const said = cautionsOf(exampleYear(), limits);
  expect(Object.keys(said)).toEqual(['cold-voltage']);
  expect(said['cold-voltage']).toMatch(/^pole: too many volts \(/);
});

// 400 L in January and 281 L in December are 681 L: 181 L more than 500.
test('a fuel store that the year burns empty is told, one that lasts the year is not', () => {
  const burning = (stored?: number) => {
    const year = exampleYear({ generator: petrol });
    year.ledger.fuelL.fill(0);
    year.ledger.fuelL[10] = 400;
    year.ledger.fuelL[8700] = 281;
    const generator = { ...year.site.generator, fuel: { kind: 'propane', stored } };
    return cautionsOf({ ...year, site: { ...year.site, generator } as unknown as Site })['fuel-store'];
  };
  expect(burning(500)).toBe('the fuel store of 500 L, filled once a year, runs out: this year burns 681 L of propane');
  expect(burning(681)).toBeUndefined();
  expect(burning()).toBeUndefined();
});

test('a bank that may freeze is told with its worst hour', () => {
  const year = exampleYear();
  year.ledger.bankC.fill(-24, 59 * 24, 59 * 24 + 2);
  year.ledger.lowestStateOfCharge.fill(0.1, 59 * 24, 59 * 24 + 1);
  year.ledger.lowestStateOfCharge.fill(0.2, 59 * 24 + 1, 59 * 24 + 2);
  expect(cautionsOf(year).freezing).toBe(
    'the electrolyte can freeze in 2 hours, worst on 1 March: -24 degC at 10 % charge',
  );
  year.ledger.bankC[59 * 24 + 1] = 20;
  expect(cautionsOf(year).freezing).toMatch(/^the electrolyte can freeze in 1 hour, /);
});

describe('a lithium bank in the cold', () => {
  /** At -1 degC from the first hour on, in a cabinet of so many W/K. */
  const inCold = (insulationWPerK = 1) => {
    const year = exampleYear({ bank: lithium, airC: () => -10 });
    year.ledger.bankC.fill(-1);
    return { ...year, plant: { ...year.plant, cabinet: { insulationWPerK, heatCapacityWhPerK: 250 } } };
  };

  // 15 K from -10 to 5 degC at 1 W/K, rounded up to tens.
  test('is told by the sun that is thrown away for it, and by the heater that would help', () => {
    const year = inCold();
    year.ledger.throttledWh.set([400, 800], 10);
    const said = cautionsOf(year)['cold-charging'];
    expect(said).toMatch(/^too cold, the bank cannot be charged in 2 hours of sun \(1 kWh thrown away\): stand it/);
    expect(said).toContain('or heat it: a heater of 20 W holds');
    expect(said).not.toContain('insulate');
  });

  test('is told by the hours in which the engine could not charge it, from half an hour on', () => {
    const year = inCold(8);
    year.ledger.generatorH[5] = 0.5;
    expect(cautionsOf(year)).not.toHaveProperty('cold-charging');
    year.ledger.generatorH.fill(1, 5, 8);
    const said = cautionsOf(year)['cold-charging'];
    expect(said).toMatch(/^too cold, the bank cannot be charged in 3 engine hours: stand it/);
    expect(said).toContain('heat it: insulate it first; as it stands a heater of 120 W holds');
  });

  test('is told by the load that it leaves dark below its cutoff, from 50 Wh on', () => {
    const year = inCold(5);
    year.ledger.bankC.fill(-40);
    year.ledger.darkWh[30] = 49;
    expect(cautionsOf(year)).not.toHaveProperty('cold-charging');
    year.ledger.darkWh[30] = 50;
    expect(cautionsOf(year)['cold-charging']).toMatch(
      /^too cold, the bank gives nothing while 0.1 kWh of load stay dark: /,
    );
    year.ledger.generatorH.fill(1, 5, 7);
    year.ledger.throttledWh[10] = 3000;
    expect(cautionsOf(year)['cold-charging']).toContain(
      'cannot be charged in 1 hour of sun (3 kWh thrown away), cannot be charged in 2 engine hours, gives nothing while',
    );
    expect(cautionsOf(year)['cold-charging']).not.toContain('insulate');
  });

  test('that refuses nothing is not told', () => {
    expect(cautionsOf(inCold())).not.toHaveProperty('cold-charging');
  });
});

describe('a bank in the heat', () => {
  test('is told from 50 degC on, with its hottest day', () => {
    const year = exampleYear();
    year.ledger.bankC.set([49.9], 4800);
    expect(cautionsOf(year)).not.toHaveProperty('hot-bank');
    year.ledger.bankC.set([50, 57, 52], 4800);
    const said = cautionsOf(year)['hot-bank'];
    expect(said).toMatch(
      /^the bank is at 50 degC or hotter in 3 hours, at most 57 degC on 20 July, and chargers stop there: /,
    );
  });

  test('is told with the sun and the engine time that it refuses', () => {
    const year = exampleYear();
    year.ledger.bankC.set([50, 57, 52], 4800);
    year.ledger.throttledWh[4802] = 2000;
    expect(cautionsOf(year)['hot-bank']).toContain('stop there; 2 kWh of sun are thrown away for it: less foam');
    year.ledger.generatorH[4803] = 0.5;
    expect(cautionsOf(year)['hot-bank']).not.toContain('the engine runs');
    year.ledger.generatorH[4802] = 1;
    expect(cautionsOf(year)['hot-bank']).toContain('; the engine runs 2 h without charging it: less foam');
  });

  test('can run away where it is sealed and charged at 40 degC', () => {
    const runaway = (bank: PlantParts['bank'], bankC: number, chargeWh: number) => {
      const year = exampleYear(bank ? { bank } : {});
      year.ledger.bankC.fill(bankC, 100, 102);
      year.ledger.bankChargeWh[101] = chargeWh;
      return cautionsOf(year)['thermal-runaway'];
    };
    expect(runaway(agm, 40, 500)).toMatch(/^the sealed bank is charged at 40 degC or hotter in 1 hour: /);
    expect(runaway(agm, 39.9, 500)).toBeUndefined();
    expect(runaway(agm, 40, 0)).toBeUndefined();
    expect(runaway(undefined, 40, 500)).toBeUndefined();
  });
});

test('three weeks without a full charge are too long for lead, not for lithium', () => {
  const seldom = (days: number, bank?: typeof lithium) => {
    const year = exampleYear(bank ? { bank } : {});
    year.ledger.daysSinceFull[59 * 24 + 5] = days;
    return cautionsOf(year)['seldom-full'];
  };
  expect(seldom(22)).toMatch(/^the bank is not charged full for 22 days, until 1 March: /);
  expect(seldom(21)).toBeUndefined();
  expect(seldom(40, lithium)).toBeUndefined();
});

describe('an inverter', () => {
  const inverter = { powerW: 1000, surgeW: 2000, idleW: 0, proportionalLoss: 0, squareLoss: 0 };
  const yearWith = (parts: Partial<LoadYear>, acW: (h: number) => number) => {
    const year = exampleYear({ acW });
    return { ...year, plant: { ...year.plant, inverter }, load: { ...year.load, ...parts } };
  };
  const pump = { powerW: 2600.4, hour: 3, name: 'pump' };

  test('below its load is told by the hours, at its load it is not', () => {
    const said = cautionsOf(yearWith({}, (h) => (h < 3 ? 1001 : 1000)));
    expect(said['inverter-rating']).toBe(
      "the AC load is above the inverter's rating in 3 hours; what is above stays dark",
    );
    expect(cautionsOf(yearWith({}, () => 1000))).toEqual({});
  });

  test('that may not start the largest motor is told by it', () => {
    const year = yearWith({ largestSurge: pump, largestSurgeW: 2600.4 }, () => 0);
    expect(cautionsOf(year)['inverter-surge']).toBe(
      "when the pump starts, the AC load may reach 2600 W, more than the inverter's surge rating of 2000 W",
    );
    expect(cautionsOf(yearWith({ largestSurge: pump, largestSurgeW: 2000 }, () => 0))).toEqual({});
    expect(cautionsOf({ ...year, plant: { ...year.plant, inverter: null } })).toEqual({});
    expect(cautionsOf(yearWith({ largestSurge: null, largestSurgeW: 2600 }, () => 0))).toEqual({});
  });
});

// A diesel of 3 kW that gives 600 W: below 30 % of its load.
test('a diesel that runs light is told, a petrol engine is not', () => {
  const runs = (kind: 'diesel' | 'petrol', site: Site = withFuel(kind)) => {
    const generator: GeneratorSettings = { ...petrol, fuel: { ...petrol.fuel, kind } as GeneratorSettings['fuel'] };
    const year = exampleYear({ generator });
    year.ledger.generatorH.fill(1, 10, 20);
    year.ledger.generatorWh.fill(600, 10, 20);
    return cautionsOf({ ...year, site })['light-running'];
  };
  expect(runs('diesel')).toMatch(/^the diesel runs below its minimum load for 10 h, 100 % of its time/);
  expect(runs('petrol')).toBeUndefined();
});

const withFuel = (kind: 'diesel' | 'petrol'): Site => {
  const generator = exampleSite.generator!;
  return { ...exampleSite, generator: { ...generator, fuel: { ...generator.fuel, kind } } };
};

test('load that stays dark while the engine may not start is told from 50 Wh on', () => {
  const darkAt = (hour: number, wh: number, generator?: GeneratorSettings) => {
    const year = exampleYear(generator ? { generator } : {});
    year.ledger.darkWh[hour] = wh;
    return cautionsOf(year)['dark-beside-engine'];
  };
  const byDay: GeneratorSettings = { ...petrol, accepted: { hours: [[8, 20]] } };
  expect(darkAt(3, 50, byDay)).toMatch(/^0.1 kWh of load stay dark in hours in which the engine may not start: /);
  expect(darkAt(3, 49, byDay)).toBeUndefined();
  expect(darkAt(12, 500, byDay)).toBeUndefined();
  expect(darkAt(3, 500)).toBeUndefined();
});

describe('an array that faces away from the sun', () => {
  const facing = (mount: object, latitude = 47) => {
    const array = { ...exampleSite.arrays[0]!, mount: mount as Site['arrays'][number]['mount'] };
    const site = { ...exampleSite, arrays: [array], place: { ...exampleSite.place, latitude } };
    return cautionsOf({ ...exampleYear(), site: site as Site })['faces-away'];
  };
  const fixed = (azimuth: number, tilt: number) => ({ kind: 'fixed', azimuth, tilt });

  test('is named when it is turned by more than 100 degrees and steeper than 20', () => {
    expect(facing(fixed(0, 30))).toMatch(/^garden pole faces away from the sun: /);
    expect(facing(fixed(281, 30))).toBeDefined();
    expect(facing(fixed(280, 30))).toBeUndefined();
    expect(facing(fixed(0, 20))).toBeUndefined();
    expect(facing(fixed(180, 30))).toBeUndefined();
  });

  test('looks north south of the equator', () => {
    expect(facing(fixed(0, 30), -33)).toBeUndefined();
    expect(facing(fixed(180, 30), -33)).toBeDefined();
    expect(facing(fixed(180, 30), 0)).toBeUndefined();
  });

  test('goes by its steepest tilt where that changes, and does not stand fixed where it follows the sun', () => {
    const tilts = [
      { from: 0, tilt: 10 },
      { from: 100, tilt: 60 },
    ];
    expect(facing({ kind: 'seasonal', azimuth: 0, tilts })).toBeDefined();
    expect(facing({ kind: 'seasonal', azimuth: 0, tilts: tilts.slice(0, 1) })).toBeUndefined();
    expect(facing({ kind: 'pole', turn: 220, azimuth: 0, tilts })).toBeUndefined();
  });
});

describe('weather', () => {
  const notice = (level: string, code: string) => ({ level, code, text: `said of ${code}` }) as never;

  test('is told by its notices, but for mere notes', () => {
    const notices = [notice('note', 'split'), notice('warning', 'gap')];
    expect(cautionsOf(exampleYear({}, weatherOf({ notices })))).toEqual({ 'weather-gap': 'said of gap' });
  });

  test('that was judged is told by the judgement alone', () => {
    const judgement = { verdict: 'usable', line: '', notices: [notice('warning', 'clock')] } as never;
    const weather = weatherOf({ notices: [notice('warning', 'gap')], judgement });
    expect(cautionsOf(exampleYear({}, weather))).toEqual({ 'weather-clock': 'said of clock' });
  });

  test('from some way off is told by its distance', () => {
    const { place } = weatherOf();
    const weather = weatherOf({ place: { ...place, latitudeDeg: place.latitudeDeg! + 2 } });
    expect(Object.keys(cautionsOf(exampleYear({}, weather)))).toEqual(['weather-far-from-site']);
  });
});

test('a year that does not repeat itself is told with what it gains or loses', () => {
  const year = exampleYear();
  const wholeWh = year.plant.bank.storedWh(1);
  const unsettled = (gainWh: number) => {
    year.ledger.bankStoredAtStartWh = 5000;
    year.ledger.bankStoredWh[8759] = 5000 + gainWh;
    return cautionsOf(year, [], false)['not-settled'];
  };
  const share = ((1200 / wholeWh) * 100).toFixed(1);
  expect(unsettled(-1200)).toMatch(new RegExp(`ends it 1.2 kWh, ${share} % of the bank, below where it began`));
  expect(unsettled(1200)).toMatch(new RegExp(`ends it 1.2 kWh, ${share} % of the bank, above where it began`));
});
