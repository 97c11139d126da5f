import { resolve } from 'node:path';
import { parseQuantity } from '@wintergap/quantity';
import { examineWeather, readWeatherFile } from '@wintergap/weather';
import { type Answers, chemistries, dailyWh, mounts, nominalV, type WeatherAnswer } from './answers.js';
import { type Asker, answerTo, type Question } from './asker.js';
import { type PlaceAnswer, readPlace, readTwelve, readUtcOffset, readWord, sizeAndWord } from './read-answer.js';
import { readLoads, typicalLoads } from './typical-loads.js';
import { bankVoltageFor } from './typical-parts.js';

/** The place of the demo's weather. */
const demoPlace = { latitude: 46.9, longitude: -92.2 };

/**
 * Puts eight questions about a place and its power system.
 *
 * @throws InputError when the answers end before the questions do
 */
export async function askSite(asker: Asker): Promise<Answers> {
  asker.say(
    'Eight questions. Enter takes what stands in brackets; Ctrl-C leaves, and nothing is written.\nAll of it can be changed in the file afterwards.\n',
  );
  const put = <Answer>(text: string, usual: string, read: Question<Answer>['read']) =>
    answerTo(asker, { text, usual, read });
  const units = await put('1  Units, metric or us', 'metric', (answer) => readWord(answer, ['metric', 'us'] as const));
  const us = units === 'us';
  const place = await put(
    '2  Latitude, longitude and elevation, south and west negative',
    `${demoPlace.latitude}, ${demoPlace.longitude}, ${us ? '1410 ft' : '430 m'}`,
    readPlace,
  );
  const utcOffsetH = await put(
    '3  Hours that the clock is ahead of UTC, without summer time',
    String(Math.round(place.longitude / 15)),
    readUtcOffset,
  );
  const weather = await askWeather(asker, place, utcOffsetH, us);
  asker.say('\nWhat runs, in Wh a day:');
  for (let i = 0; i < typicalLoads.length; i += 2) {
    asker.say(
      [i, i + 1]
        .flatMap((at) => {
          const { name, whADay } = typicalLoads[at] ?? {};
          return name ? `  ${String(at + 1).padStart(2)}  ${name.padEnd(22)} ${String(whADay).padStart(5)}` : [];
        })
        .join('   '),
    );
  }
  const loads = await put('5  Numbers of these, and your own such as radio 40 Wh', '1, 3-6', readLoads);
  const wh = dailyWh({ loads });
  asker.say(`  That is ${Math.round(wh)} Wh a day.`);
  const usualArray = `${roundUp(wh / 2.2, 100)} W, fixed`;
  const array = await put(`6  Array: rated power, and ${mounts.join(', ')}`, usualArray, (answer) => {
    const { size, word } = sizeAndWord(answer, usualArray);
    return {
      watts: sized(parseQuantity(size, 'power'), 50, 50_000, '50 W to 50 kW', size),
      mount: readWord(word, mounts),
    };
  });
  const bank = await askBank(asker, wh, array.watts);
  const usualEngine = `${Math.max(2, Math.round(wh / 2000))} kW, petrol`;
  const engine = await put('8  Engine: power, and petrol, diesel or propane; or none', usualEngine, (answer) => {
    if (/^(none|no|0)\b/i.test(answer)) return null;
    const { size, word } = sizeAndWord(answer, usualEngine);
    const watts = sized(parseQuantity(size, 'power'), 500, 50_000, '0.5 kW to 50 kW, or none', size);
    return { kW: watts / 1000, fuel: readWord(word, ['petrol', 'diesel', 'propane'] as const) };
  });
  return { units, place, utcOffsetH, weather, loads, array, bank, engine };
}

async function askWeather(asker: Asker, place: PlaceAnswer, utcOffsetH: number, us: boolean): Promise<WeatherAnswer> {
  const isDemoPlace =
    Math.abs(place.latitude - demoPlace.latitude) < 0.5 && Math.abs(place.longitude - demoPlace.longitude) < 0.5;
  const answer = await answerTo<WeatherAnswer | { kind: 'asked' }>(asker, {
    text: `4  Weather: a file (EPW, TMY3, POWER, CSV), means, ${isDemoPlace ? 'demo' : 'or guess from the latitude'}`,
    usual: isDemoPlace ? 'demo' : 'guess',
    read: (written) => {
      if (written === 'demo') {
        if (isDemoPlace) return { kind: 'demo' };
        throw new Error(
          `the demo's weather is that of ${demoPlace.latitude}, ${demoPlace.longitude}; name a file, or means for twelve monthly means, or guess`,
        );
      }
      if (written === 'guess') return { kind: 'guess' };
      return written === 'means' ? { kind: 'asked' } : { kind: 'file', path: weatherFile(written, place, utcOffsetH) };
    },
  });
  if (answer.kind !== 'asked') return answer;
  const irradiation = await answerTo(asker, {
    text: '   Sun on the horizontal, kWh/m2 a day, twelve means from January',
    usual: '1.5 2.5 3.6 4.6 5.3 5.8 5.8 4.9 3.6 2.4 1.5 1.2',
    read: (written) => readTwelve(written, 0, 12),
  });
  const airC = await answerTo(asker, {
    text: `   Air, ${us ? 'degF' : 'degC'}, twelve means from January`,
    usual: us ? '11 16 27 41 52 61 67 65 56 44 29 17' : '-12 -9 -3 5 11 16 19 18 13 7 -2 -9',
    read: (written) =>
      us
        ? readTwelve(written, -94, 122).map((fahrenheit) => Number(((fahrenheit - 32) / 1.8).toFixed(1)))
        : readTwelve(written, -70, 50),
  });
  return { kind: 'means', irradiation, airC };
}

/** The path of a weather file that can be used at the place. */
function weatherFile(written: string, { latitude, longitude }: PlaceAnswer, utcOffsetH: number): string {
  const path = resolve(written);
  const place = { latitudeDeg: latitude, longitudeDeg: longitude, utcOffsetH };
  const { verdict } = examineWeather(readWeatherFile(path, { place }), place);
  if (verdict !== 'rejected') return path;
  throw new Error(
    `${written} cannot be trusted at this place: wintergap weather ${written} --latitude ${latitude} --longitude ${longitude} --utc-offset ${utcOffsetH} says why; name another file, or means, or guess`,
  );
}

async function askBank(asker: Asker, wh: number, arrayW: number): Promise<Answers['bank']> {
  const usual = `lithium, ${roundUp((2 * wh) / 1000, 1)} kWh`;
  const voltageV = bankVoltageFor(arrayW);
  return answerTo(asker, {
    text: `7  Bank, wired for ${voltageV} V: flooded, agm, gel or lithium, and kWh or Ah`,
    usual,
    read: (answer) => {
      const { size, word } = sizeAndWord(answer, usual);
      const chemistry = readWord(word === 'lead-acid' ? 'flooded' : word, [...chemistries]);
      const isEnergy = /w/i.test(size);
      const kWh = isEnergy
        ? parseQuantity(size, 'energy') / 1000
        : (parseQuantity(size, 'charge') * nominalV(chemistry, voltageV)) / 1000;
      sized(kWh, 0.2, 1000, '0.2 kWh to 1000 kWh', size);
      return { chemistry, voltageV, capacity: size, kWh };
    },
  });
}

function sized(value: number, min: number, max: number, say: string, written: string): number {
  if (value >= min && value <= max) return value;
  throw new Error(`found ${written}, expected ${say}`);
}

const roundUp = (value: number, step: number): number => Math.max(step, Math.ceil(value / step) * step);
