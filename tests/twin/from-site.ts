import type { Bank } from '@wintergap/battery';
import { groundAlbedo } from '@wintergap/mounts';
import { bankStands, mountOf, type Site, type SiteArray, type SiteLoad } from '@wintergap/site';
import { snowDepthFrom } from '@wintergap/weather';
import type { YearResult } from '@wintergap/year';
import { sealedFullCell, ventedFullCell } from '../../packages/battery/src/lead-acid/full-cell.js';
import {
  capacityByTemp,
  chargeLimitByTemp,
  coulombicEfficiency,
  dischargeLimitByTemp,
  resistanceByTemp,
  restByState,
} from '../../packages/battery/src/lithium/cell.js';
import { moduleSheet } from '../../packages/year/src/prepare/module-of-site.js';
import type { BankSettings } from './bank.js';
import type { EngineSettings } from './engine.js';
import { leadAcidCells } from './lead-acid.js';
import { lithiumCells } from './lithium.js';
import { type Appliance, hourlyLoads, inverterOf } from './loads.js';
import { fiveParameters } from './module.js';
import { type Hold, type HourlyLight, lightOnPlane, type PlaneLight } from './sky.js';
import { minutesPerYear, type Sun } from './sun.js';
import type { ArraySettings, YearSettings } from './year.js';

/**
 * Whether arrays see the light of each minute, or the mean of its hour in every minute of it, as the packages do; or the
 * packages' own light of the hour, so that what comes after it is compared alone.
 */
export type Grain = 'minutes' | 'hours' | 'given';

/**
 * A site and its finished year in the twin's words: its parameters, with what the site leaves open filled in, the hourly
 * weather, and as given columns what the twin does not reckon: snow on ground and plane, and the skyline's share.
 *
 * @throws Error where the site uses what the twin does not know
 */
export function twinOf(year: YearResult, sun: Sun, grain: Grain): YearSettings {
  const { site, weather } = year;
  const { airC, windMs } = weather;
  if (site.sky !== 'perez' || site.measuredLoad || site.events.length > 0) throw new Error('not in the twin');
  const albedo = groundAlbedo(snowDepthFrom(weather), site.ground.albedo, site.ground.snowAlbedo, weather.albedo);
  const light = { ghiWm2: weather.ghiWm2, dniWm2: weather.dniWm2, dhiWm2: weather.dhiWm2, albedo };
  const bank = bankOf(year.plant.bank, year);
  return {
    arrays: site.arrays.map((array, i) => arrayOf(array, i, year, light, sun, grain)),
    airC,
    windMs,
    ...hourlyLoads(site.loads.map(applianceOf), sun, airC, site.calendarYear),
    inverter: site.inverter ? inverterOf(site.inverter.power, site.inverter.idle, site.inverter.efficiency) : null,
    converter: site.converter
      ? { efficiency: site.converter.efficiency, idleW: site.converter.idle }
      : { efficiency: 1, idleW: 0 },
    bank,
    cabinet: cabinetOf(year),
    engine: engineOf(site),
  };
}

function arrayOf(
  array: SiteArray,
  i: number,
  year: YearResult,
  light: HourlyLight,
  sun: Sun,
  grain: Grain,
): YearSettings['arrays'][number] {
  const { module, inSeries, strings, losses, controller } = array;
  if (typeof losses.soiling !== 'number') throw new Error('not in the twin');
  const prepared = year.arrays[i]!;
  const { planeWm2, skylineLossWm2 } = prepared.plane;
  const thinned = (1 - losses.mismatch) * (1 - Math.min(1, (losses.age / 8760) * losses.ageing));
  const settings: ArraySettings = {
    five: fiveParameters(moduleSheet(module)),
    wiring: { inSeries, strings: strings * thinned, cableOhm: prepared.input.cableOhm },
    ratedW: inSeries * strings * module.vmp * module.imp,
    noctC: array.cellModel === 'noct' ? module.noct! : null,
    soiling: losses.soiling,
    skylineShare: planeWm2.map((wm2, h) => (wm2 > 0 ? skylineLossWm2[h]! / wm2 : 0)),
    snowShare: prepared.snowShare ?? new Float64Array(8760),
    controller:
      controller.kind === 'direct'
        ? { kind: 'direct' }
        : { kind: 'maximum-power', efficiency: flatEfficiency(controller.efficiency) },
    maxCurrentA: controller.maxCurrent ?? Number.POSITIVE_INFINITY,
    nightW: controller.nightDraw,
  };
  if (grain === 'given') {
    const { effectiveWm2 } = prepared.plane;
    const seen = (h: number) => 1 - settings.skylineShare[h]!;
    return {
      settings,
      planeWm2: everyMinute(planeWm2),
      behindGlassWm2: everyMinute(effectiveWm2.map((wm2, h) => (wm2 > 0 ? wm2 / seen(h) : 0))),
    };
  }
  const onPlane = lightOnPlane(light, sun, holdOf(array, year.site.place.latitude), losses.glass);
  return { settings, ...(grain === 'hours' ? meansOfHours(onPlane) : onPlane) };
}

function flatEfficiency(efficiency: number | object): number {
  if (typeof efficiency !== 'number') throw new Error('not in the twin');
  return efficiency;
}

function holdOf(array: SiteArray, latitudeDeg: number): Hold {
  const mount = mountOf(array.mount);
  const facingDeg = 'facingDeg' in mount && mount.facingDeg !== undefined ? mount.facingDeg : latitudeDeg < 0 ? 0 : 180;
  if ('drive' in mount || 'stuck' in mount || 'stowAboveMs' in mount) throw new Error('not in the twin');
  switch (mount.kind) {
    case 'fixed':
      return { kind: 'set', azimuthDeg: mount.azimuthDeg, tilts: [{ fromDay: 0, tiltDeg: mount.tiltDeg }] };
    case 'seasonal':
      return { kind: 'set', azimuthDeg: mount.azimuthDeg, tilts: [...mount.tilts] };
    case 'pole':
      return { kind: 'pole', facingDeg, turnDeg: mount.turnDeg, tilts: [...mount.tilts] };
    case 'two-axis':
      return { ...mount, facingDeg, turnDeg: mount.turnDeg ?? 360 };
    case 'one-axis':
      throw new Error('not in the twin');
  }
}

const everyMinute = (hours: Float64Array): Float64Array => {
  const out = new Float64Array(minutesPerYear);
  for (let h = 0; h < 8760; h++) out.fill(hours[h]!, h * 60, h * 60 + 60);
  return out;
};

function meansOfHours({ planeWm2, behindGlassWm2 }: PlaneLight): PlaneLight {
  const means = (minutes: Float64Array) => {
    const out = new Float64Array(minutesPerYear);
    for (let h = 0; h < 8760; h++) {
      let sum = 0;
      for (let m = h * 60; m < h * 60 + 60; m++) sum += minutes[m]!;
      out.fill(sum / 60, h * 60, h * 60 + 60);
    }
    return out;
  };
  return { planeWm2: means(planeWm2), behindGlassWm2: means(behindGlassWm2) };
}

function applianceOf({ power, count, bus, runs, perDay, when, standby }: SiteLoad): Appliance {
  if (when.roomAt !== undefined || when.guests) throw new Error('not in the twin');
  return {
    bus,
    powerW: power,
    standbyW: standby,
    count,
    runs: perDay !== undefined ? { hoursPerDay: perDay } : { share: runs ?? 1 },
    hours: when.hours ?? [[0, 24]],
    days: when.days ?? 'all',
    season: (when.season ?? []).map(({ from, to }) => ({ fromDay: from, toDay: to })),
    only: when.dark
      ? 'dark'
      : when.outdoorBelow !== undefined
        ? { belowC: when.outdoorBelow, fullC: when.fullAt ?? null }
        : 'always',
  };
}

function bankOf({ settings, refAh, floor, ...bank }: Bank, year: YearResult): BankSettings {
  const { defaults } = settings;
  const isLithium = settings.chemistry === 'lithium-iron-phosphate';
  return {
    cells: isLithium
      ? lithiumCells({
          capacityAh: refAh,
          resistance: defaults.resistance,
          coulombicEfficiency,
          restByState,
          resistanceByTemp,
          capacityByTemp,
          chargeLimitByTemp,
          dischargeLimitByTemp,
        })
      : leadAcidCells({
          labelAh: refAh,
          labelH: settings.atRateH,
          rateWeight: settings.rateWeight,
          resistanceFactor: defaults.resistance,
          efficiencyFactor: defaults.efficiencyFactor,
          full: settings.chemistry === 'flooded-lead-acid' ? ventedFullCell : sealedFullCell,
          recombination: defaults.recombination,
        }),
    inSeries: settings.cells,
    labelAh: refAh,
    floor,
    absorptionV: settings.absorptionCellV,
    floatV: settings.floatCellV,
    equaliseV: settings.equaliseCellV,
    compensationVPerK: settings.compensationVPerCellK,
    cutoffV: settings.cutoffCellV,
    chargeLimitA: bank.chargeLimitA,
    dischargeLimitA: bank.dischargeLimitA,
    selfDischargePerMonth: settings.selfDischargePerMonth,
    absorptionH: bank.absorptionHours,
    tailA: bank.tailA,
    equaliseEveryDays: year.plant.chargeRules.equaliseEveryDays,
    equaliseH: year.plant.chargeRules.equaliseH,
  };
}

function cabinetOf({ site, plant, weather }: YearResult): YearSettings['cabinet'] {
  const { cabinet, heater } = plant;
  const { rooms } = site;
  const stands = bankStands(site.bank);
  return {
    lossWPerK: cabinet.insulationWPerK + (cabinet.ventilationWPerK ?? 0),
    heatCapacityWhPerK: cabinet.heatCapacityWhPerK,
    room: cabinet.sharedRoom ?? null,
    heater,
    aroundC: weather.airC.map((airC) =>
      stands === 'outdoors'
        ? airC
        : stands === 'unheated'
          ? airC + rooms.above
          : Math.max(airC + rooms.above, rooms.atLeast),
    ),
  };
}

function engineOf({ generator, place }: Site): EngineSettings | null {
  if (!generator) return null;
  const { output, fuel, start, stop } = generator;
  const isPlain =
    start.voltageBelow === undefined &&
    start.beforeDullDay === undefined &&
    start.months === undefined &&
    start.days === 'all' &&
    generator.exercise === undefined &&
    generator.failsToStart === undefined;
  if (!isPlain) throw new Error('not in the twin');
  const [acceptedFrom, acceptedTo] = start.between ?? [0, 24];
  return {
    bus: output.bus,
    powerW: output.power,
    toBus: output.bus === 'ac' ? output.charger.efficiency : output.efficiency,
    chargerW: output.bus === 'ac' ? output.charger.power : Number.POSITIVE_INFINITY,
    elevationM: place.elevation,
    derate: generator.derate,
    idleLPerH: fuel.idle,
    fullLPerH: fuel.atFull,
    startBelow: start.below ?? 0,
    byHandBelow: start.byHand?.below ?? 0,
    byHandAt: start.byHand?.at ?? [],
    stopAbove: stop.above ?? 1,
    stopAtBulkEnd: stop.atBulkEnd,
    acceptedFrom,
    acceptedTo,
    acceptedEndsRun: start.endsRun,
    fullEveryDays: stop.fullEvery ?? 0,
    minimumRunH: generator.minimumRun,
    warmUpH: generator.warmUp,
    coolDownH: generator.coolDown,
  };
}
