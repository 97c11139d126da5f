import { createLedger } from '@wintergap/tally';
import { expect, test } from 'vitest';
import { type BusFlow, createBusFlow, createMoment, type Moment } from './bus-flow.js';
import { plantOf } from './plant.fixture.js';
import { type Piece, postPiece } from './post-piece.js';

const h = 5;
/** 600 W of AC, 300 W of DC behind a converter that draws 330 W, 10 W of the controllers. */
const plant = {
  ...plantOf({ acW: () => 600, dcW: () => 300 }),
  converterInputW: new Float64Array(8760).fill(330),
  ownUseW: new Float64Array(8760).fill(10),
};

/** What one piece puts into hour 5: every column that is not zero. */
function posted(flow: Partial<BusFlow>, piece: Partial<Piece>, moment: Partial<Moment> = {}, times = 1) {
  const ledger = createLedger();
  const buses = { ...createBusFlow(25), acByInverterW: 600, inverterW: 660, ...flow };
  for (let k = 0; k < times; k++) {
    const of = { hours: 0.25, storedWh: 0, engineDcInW: 0, ...piece };
    postPiece(ledger, plant, buses, { ...createMoment(), h, ...moment }, of);
  }
  const hour: Record<string, number> = {};
  for (const [name, column] of Object.entries(ledger)) {
    if (!(column instanceof Float64Array)) continue;
    if (column[h] !== 0) hour[name] = Number(column[h]!.toFixed(9));
    if (column.some((value, at) => at !== h && value !== 0)) throw new Error(`${name} beside the hour`);
  }
  return hour;
}

// A quarter of an hour, each figure its power times 0.25 h: sun 2000 - 100 = AC 660 + DC 330 + own 50 + bank 860.
const sunny = {
  sunW: 2000,
  thrownW: 100,
  clippedW: 50,
  spareW: 30,
  demandW: 1040,
  chargeW: 860,
  amps: 34.4,
  storedShare: 0.9,
};
const quarter = {
  arrayAvailableWh: 500,
  arrayUsedWh: 475,
  throttledWh: 25,
  clippedWh: 12.5,
  spareWh: 7.5,
  acServedWh: 150,
  dcServedWh: 75,
  ownUseWh: 12.5,
  inverterLossWh: 15,
  converterLossWh: 7.5,
  bankV: 6.25,
  bankChargeWh: 215,
  bankLossWh: 35,
  gassingAh: 0.86,
};

test('a sunny piece is posted power by power times its length, and the bank loses what it does not hold more', () => {
  expect(posted(sunny, { storedWh: 180 }, { heaterW: 40 })).toEqual(quarter);
  const twice = Object.fromEntries(Object.entries(quarter).map(([name, value]) => [name, 2 * value]));
  expect(posted(sunny, { storedWh: 180 }, { heaterW: 40 }, 2)).toEqual(twice);
});

test('in discharge the bank loses what it gave up and the terminals did not see', () => {
  const hour = posted({ dischargeW: 1000, amps: -41, demandW: 1000 }, { storedWh: -262 });
  expect(hour).toMatchObject({ bankDischargeWh: 250, bankLossWh: 12 });
  expect(hour).not.toHaveProperty('bankChargeWh');
  expect(hour).not.toHaveProperty('gassingAh');
  expect(hour).not.toHaveProperty('darkWh');
  expect(hour).not.toHaveProperty('shortfallWh');
});

test('load that is shed is dark and shortfall for as long as the piece lasts, with its losses shed too', () => {
  const hour = posted({ dischargeW: 500, amps: -20, servedShare: 0.4 }, { storedWh: -125 });
  // 60 % of 900 W for a quarter of an hour.
  expect(hour).toMatchObject({ darkWh: 135, darkH: 0.25, shortfallWh: 135, acServedWh: 60, dcServedWh: 30 });
  expect(hour).toMatchObject({ inverterLossWh: 6, converterLossWh: 3, ownUseWh: 1 });
  // Less than a thousand-millionth of the load is rounding.
  const rounding = posted({ dischargeW: 1000, amps: -41, servedShare: 1 - 1e-10 }, { storedWh: -250 });
  expect(rounding).not.toHaveProperty('darkH');
  expect(rounding).not.toHaveProperty('shortfallWh');
});

test('of a loaded engine the charger loses its share, and what the sun did not carry is shortfall', () => {
  const engine = { engineToAcW: 600, acByInverterW: 0, inverterW: 0, engineToDcW: 450, demandW: 400 };
  const hour = posted(
    { ...engine, sunW: 250, chargeW: 300, amps: 12 },
    { storedWh: 70, engineDcInW: 500 },
    { engineLoaded: true },
  );
  expect(hour).toMatchObject({ generatorWh: 275, generatorToBusWh: 262.5, chargerLossWh: 12.5, acServedWh: 150 });
  // 250 W of sun for 1000 W asked: three quarters of 900 W for a quarter of an hour.
  expect(hour.shortfallWh).toBe(168.75);
  expect(hour).not.toHaveProperty('darkWh');
  const bright = posted({ ...engine, sunW: 1500 }, { engineDcInW: 500 }, { engineLoaded: true });
  expect(bright).not.toHaveProperty('shortfallWh');
  const unasked = posted({ ...engine, engineToAcW: 0, demandW: 0 }, { engineDcInW: 500 }, { engineLoaded: true });
  expect(unasked).not.toHaveProperty('shortfallWh');
  // A warming engine gives nothing, whatever the buses would take of it.
  expect(posted({ sunW: 1000 }, {})).not.toHaveProperty('generatorWh');
});

test('without load no time is dark', () => {
  const ledger = createLedger();
  const flow = { ...createBusFlow(25), sunW: 100, thrownW: 100, servedShare: 0 };
  postPiece(ledger, plantOf({}), flow, { ...createMoment(), h }, { hours: 1, storedWh: 0, engineDcInW: 0 });
  expect([ledger.darkH[h], ledger.darkWh[h], ledger.throttledWh[h]]).toEqual([0, 0, 100]);
});
