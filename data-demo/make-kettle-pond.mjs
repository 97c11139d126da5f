// Makes kettle-pond.csv, the weather of the Kettle Pond honey house. INVENTED: there is no such place, and no
// measurement went into it. The twelve monthly means below were made up to be believable for a clearing in the
// woods of a northern, inland place: sunny late winter, dull November and December, deep cold, snow on the ground
// from November to April.
//
// Run after `npm run build`, from anywhere: node data-demo/make-kettle-pond.mjs

import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { makeYear, writeTable } from '@wintergap/weather';

export const place = {
  name: 'Kettle Pond honey house (invented)',
  latitudeDeg: 46.9,
  longitudeDeg: -92.2,
  utcOffsetH: -6,
  elevationM: 430,
};

// January first. Invented.
export const means = {
  sun: { kind: 'irradiation', kWhPerM2Day: [1.55, 2.6, 3.85, 4.75, 5.35, 5.85, 5.95, 5.05, 3.65, 2.25, 1.25, 1.05] },
  airC: [-12, -9.5, -3.5, 4, 11, 16, 19, 18, 13, 6, -2, -9],
  dailyExtremes: {
    minC: [-17, -15, -9, -1.5, 4.5, 10, 13, 12, 7.5, 1, -6, -13.5],
    maxC: [-7, -4, 2, 9.5, 17, 22, 25, 24, 18.5, 10.5, 1.5, -4.5],
  },
  windMs: [2.8, 2.8, 3, 3.2, 3, 2.6, 2.3, 2.3, 2.5, 2.8, 2.9, 2.8],
  snow: {
    fallDays: [12, 9, 8, 4, 0, 0, 0, 0, 0, 2, 8, 12],
    fallM: [0.38, 0.28, 0.3, 0.12, 0, 0, 0, 0, 0, 0.03, 0.28, 0.36],
  },
};

export const seed = 3;

/** The whole file as text. Values are rounded as an instrument would give them, which also keeps the file small. */
export function kettlePondTable() {
  const year = makeYear(means, place, { seed });
  const rounded = (values, perUnit) => values.map((value) => Math.round(value * perUnit) / perUnit);
  const table = writeTable({
    ...year,
    source: 'INVENTED data, made by data-demo/make-kettle-pond.mjs',
    ghiWm2: rounded(year.ghiWm2, 10),
    dniWm2: rounded(year.dniWm2, 10),
    dhiWm2: rounded(year.dhiWm2, 10),
    airC: rounded(year.airC, 10),
    windMs: rounded(year.windMs, 10),
    snowDepthM: rounded(year.snowDepthM, 1000),
  });
  return `# INVENTED data: no such place exists, nothing here was measured\n${table}`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(new URL('kettle-pond.csv', import.meta.url), kettlePondTable());
}
