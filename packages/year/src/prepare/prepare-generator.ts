import {
  type CompiledGenerator,
  compileGenerator,
  type GeneratorSettings,
  type StartRule,
  type StopRule,
} from '@wintergap/generator';
import { daysPerYear } from '@wintergap/ground';
import type { Site, SiteGenerator } from '@wintergap/site';
import { firstWeekday } from '@wintergap/site';
import type { WeatherYear } from '@wintergap/weather';
import { identityOf, type PreparedCache } from './prepared-cache.js';

const weekdays = { all: [0, 1, 2, 3, 4, 5, 6], weekdays: [1, 2, 3, 4, 5], weekends: [0, 6] };

/** The site file's generator in the words of the generator package. */
function generatorSettings(site: SiteGenerator): GeneratorSettings {
  const { output, fuel, start, exercise, failsToStart, oil, overhaul } = site;
  return {
    output:
      output.bus === 'ac'
        ? {
            bus: 'ac',
            powerW: output.power,
            charger: { powerW: output.charger.power, efficiency: output.charger.efficiency },
          }
        : { bus: 'dc', powerW: output.power, efficiency: output.efficiency },
    fuel: {
      kind: fuel.kind,
      atFullLPerH: fuel.atFull,
      idleLPerH: fuel.idle,
      ...(fuel.price !== undefined && { pricePerL: fuel.price }),
    },
    start: startRules(site),
    stop: stopRules(site),
    accepted: {
      ...(start.between && { hours: [start.between] }),
      ...(start.months && { months: start.months }),
      weekdays: weekdays[start.days],
      endsRun: start.endsRun,
    },
    ...(site.stop.fullEvery !== undefined && { fullEveryDays: site.stop.fullEvery }),
    minimumRunH: site.minimumRun,
    warmUpMin: site.warmUp * 60,
    coolDownMin: site.coolDown * 60,
    ...(exercise && {
      exercise: { everyDays: exercise.every, minutes: exercise.lasts * 60, atHour: exercise.at },
    }),
    ...(failsToStart && {
      startFailure: { chance: failsToStart.chance, seed: failsToStart.seed, retryAfterH: failsToStart.retryAfter },
    }),
    ...(oil && { oil: { everyH: oil.every, ...(oil.price !== undefined && { cost: oil.price }) } }),
    ...(overhaul && {
      overhaul: { everyH: overhaul.every, ...(overhaul.price !== undefined && { cost: overhaul.price }) },
    }),
    ...(site.minimumLoad !== undefined && { minimumLoad: site.minimumLoad }),
    ...(!site.derate && { derating: { kind: 'none' as const } }),
  };
}

function startRules({ start }: SiteGenerator): StartRule[] {
  const rules: StartRule[] = [];
  if (start.below !== undefined) rules.push({ kind: 'charge', below: start.below });
  if (start.voltageBelow !== undefined) {
    rules.push({ kind: 'voltage', belowV: start.voltageBelow, forMin: start.heldFor * 60 });
  }
  if (start.byHand) rules.push({ kind: 'hand', below: start.byHand.below, looksAt: start.byHand.at });
  if (start.beforeDullDay) {
    const { below, dullBelow, forecast, at } = start.beforeDullDay;
    rules.push({
      kind: 'dull-tomorrow',
      below,
      dullBelowWhM2: dullBelow * 1000,
      honesty: forecast,
      ...(at && { looksAt: at }),
    });
  }
  return rules;
}

function stopRules({ stop }: SiteGenerator): StopRule[] {
  const rules: StopRule[] = [];
  if (stop.above !== undefined) rules.push({ kind: 'charge', above: stop.above });
  if (stop.atBulkEnd) rules.push({ kind: 'bulk-end' });
  return rules;
}

/** The engine as plain numbers for the loop; `null` for a place without one. */
export function prepareGenerator(site: Site, weather: WeatherYear, prepared: PreparedCache): CompiledGenerator | null {
  const { generator, place } = site;
  if (!generator) return null;
  const weekday = firstWeekday(site);
  const inputs = [identityOf(weather), generator, place.elevation, weekday];
  return prepared.get('generator', inputs, () =>
    compileGenerator(generatorSettings(generator), {
      elevationM: place.elevation,
      airC: weather.airC,
      firstWeekday: weekday,
      dailySunWhM2: dailySums(weather.ghiWm2),
    }),
  );
}

function dailySums(hourly: Float64Array): Float64Array {
  const sums = new Float64Array(daysPerYear);
  for (let h = 0; h < hourly.length; h++) sums[Math.floor(h / 24)]! += hourly[h]!;
  return sums;
}
