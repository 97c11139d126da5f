import { parseSite, type SiteFile } from '@wintergap/site';

/**
 * An invented site with weather written as monthly means, so that tests need no file.
 *
 * @param around keys around the design, as YAML
 */
export function inventedSite(around = '', generator: string = engine): SiteFile {
  return parseSite(`${design}${generator}${around}`, 'invented.yaml');
}

export const engine = `
generator:
  output: { bus: dc, power: 2 kW }
  fuel: { kind: petrol, atFull: 1.2 L/h, idle: 0.4 L/h, price: 1.6 /L }
  start: { below: 45 % }
  stop: { above: 80 % }
`;

const design = `
name: Invented cabin
place: { latitude: 47, longitude: -92, elevation: 400 m, utcOffset: -6 h }
weather:
  months:
    irradiation: [1.4 kWh/m2, 2.4 kWh/m2, 3.7 kWh/m2, 4.7 kWh/m2, 5.5 kWh/m2, 6 kWh/m2,
                  6 kWh/m2, 5 kWh/m2, 3.6 kWh/m2, 2.3 kWh/m2, 1.3 kWh/m2, 1 kWh/m2]
    air: [-12 degC, -9 degC, -3 degC, 5 degC, 11 degC, 16 degC, 19 degC, 18 degC, 13 degC, 7 degC, -1 degC, -9 degC]
arrays:
  - name: roof
    module: { power: 300 W, vmp: 32.5 V, imp: 9.24 A, voc: 39.9 V, isc: 9.82 A, cells: 60 }
    inSeries: 2
    strings: 2
    mount: { kind: fixed, tilt: 45, azimuth: 180 }
    cable: { length: 12 m, size: 6 AWG }
    controller: { kind: maximum-power, maxVoltage: 150 V, maxCurrent: 60 A, nightDraw: 2 W }
bank:
  chemistry: flooded-lead-acid
  voltage: 24 V
  capacity: 600 Ah
  floor: 40 %
  cabinet: { insulation: 1.2 W/K }
inverter: { power: 2 kW, idle: 12 W, efficiency: 93 % }
loads:
  - { name: freezer, power: 90 W, runs: 40 %, bus: ac }
  - { name: lights, power: 60 W, bus: dc, when: { dark: true, hours: [[6, 8], [16, 23]] } }
  - { name: radio, power: 20 W, bus: dc }
`;
