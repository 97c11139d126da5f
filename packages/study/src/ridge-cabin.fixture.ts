import { parseSite, type Site } from '@wintergap/site';

/**
 * An invented cabin under weather made of monthly means, with a roof array and a bank.
 *
 * @param rest its loads, and what else it has
 */
export const ridgeCabin = (rest: string): Site =>
  parseSite(
    `
name: Stony Ridge cabin
place: { latitude: 45.3, longitude: -84.6, utcOffset: -5 h }
weather: { seed: 5, months: { irradiation: [1.5 kWh/m2, 2.5 kWh/m2, 3.8 kWh/m2, 4.9 kWh/m2, 5.7 kWh/m2, 6.2 kWh/m2,
                                            6.1 kWh/m2, 5.2 kWh/m2, 3.9 kWh/m2, 2.5 kWh/m2, 1.5 kWh/m2, 1.2 kWh/m2],
                              air: [-8 degC, -7 degC, -2 degC, 6 degC, 13 degC, 18 degC,
                                    21 degC, 20 degC, 15 degC, 8 degC, 2 degC, -5 degC] } }
arrays:
  - name: roof
    module: { power: 400 W, vmp: 31 V, imp: 12.9 A, voc: 37.2 V, isc: 13.7 A, cells: 54 }
    inSeries: 3
    strings: 1
    mount: { kind: fixed, tilt: 60, azimuth: south }
    controller: { kind: maximum-power, maxVoltage: 150 V, maxCurrent: 60 A }
bank: { chemistry: flooded-lead-acid, voltage: 24 V, capacity: 300 Ah, floor: 50 % }
${rest}
`,
    'ridge.yaml',
  ).base;
