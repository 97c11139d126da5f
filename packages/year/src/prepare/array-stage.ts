import {
  type ArrayYearInput,
  type Controller,
  type ControllerYear,
  cableOhm,
  cellTemperatureYear,
  controllerYear,
  type DcYear,
  dcYear,
  type ModuleSheet,
  solveModule,
} from '@wintergap/array';
import { hoursPerYear } from '@wintergap/ground';
import { type CompiledSkyline, compileSkyline, type PlaneYear, planeYear, usualLeaves } from '@wintergap/irradiance';
import { driveLoadW, hourlyTiltDeg, type Motor, type Mount, pointing, snowCover } from '@wintergap/mounts';
import type { Site, SiteArray, SiteMount } from '@wintergap/site';
import type { WeatherYear } from '@wintergap/weather';
import type { Outdoors } from './outdoors-stage.js';

/** One array's year up to its controller, before the bank has a say. */
export interface ArrayStage {
  name: string;
  ratedW: number;
  plane: PlaneYear;
  /** Share of the plane covered by snow; `null` when snow is left out or unknown. */
  snowShare: Float64Array | null;
  input: ArrayYearInput;
  dc: DcYear;
  controller: ControllerYear;
  maxCurrentA: number;
  /** Tracker drive and the controller's night draw, W. */
  ownUseW: Float64Array;
}

/** Temperature the cable is counted at: copper in the sun and the cold averages about this, common practice, no source. */
const conductorC = 25;

/** Runs one array from the sky to its controller. */
export function arrayStage(
  array: SiteArray,
  site: Site,
  weather: WeatherYear,
  outdoors: Outdoors,
  bankRangeV: readonly [lowest: number, highest: number],
): ArrayStage {
  const { sun, albedo } = outdoors;
  const mount = mountOf(array.mount);
  const where = pointing(mount, sun, weather.windMs);
  const behindGlass = planeYear(sun, weather, where, {
    skyModel: site.sky,
    albedo,
    ...((site.skyline.length > 0 || site.horizon) && { skyline: skylineOf(site, array.height) }),
  });
  const plane = array.losses.glass ? behindGlass : withoutGlass(behindGlass);
  const cellC = cellTemperatureYear(
    array.cellModel === 'noct' && array.module.noct !== undefined
      ? { kind: 'noct', noctC: array.module.noct }
      : { kind: 'wind' },
    weather.airC,
    plane.planeWm2,
    weather.windMs,
  );
  const snowShare =
    site.snow.onArray && outdoors.snowDepthM
      ? snowCover({
          snowDepthM: outdoors.snowDepthM,
          planeWm2: plane.planeWm2,
          tiltDeg: hourlyTiltDeg(where),
          airC: weather.airC,
          ...(site.snow.clearing && { clearing: { withinH: site.snow.clearing.within } }),
        })
      : null;
  const { losses, cable } = array;
  const input: ArrayYearInput = {
    parameters: solveModule(moduleSheet(array.module)),
    inSeries: array.inSeries,
    strings: array.strings,
    cableOhm: cable ? cableOhm({ lengthM: cable.length, areaMm2: cable.size, conductorC }) : 0,
    effectiveWm2: plane.effectiveWm2,
    cellC,
    soiling: losses.soiling,
    mismatch: losses.mismatch,
    age: Math.min(1, (losses.age / hoursPerYear) * losses.ageing),
    ...(snowShare && { snowShare }),
  };
  const dc = dcYear(input);
  const controller = controllerOf(array.controller);
  const ownUseW = driveLoadW(mount, sun, where) ?? new Float64Array(8760);
  for (let h = 0; h < 8760; h++) if (dc.powerW[h] === 0) ownUseW[h]! += controller.nightDrawW;
  return {
    name: array.name,
    ratedW: array.inSeries * array.strings * array.module.vmp * array.module.imp,
    plane,
    snowShare,
    input,
    dc,
    controller: controllerYear(input, controller, bankRangeV[0], bankRangeV[1], dc),
    maxCurrentA: controller.maxCurrentA ?? Number.POSITIVE_INFINITY,
    ownUseW,
  };
}

/** The same light as if the glass let all of it through. */
function withoutGlass(plane: PlaneYear): PlaneYear {
  const { effectiveWm2, glassLossWm2 } = plane;
  return {
    ...plane,
    effectiveWm2: effectiveWm2.map((wm2, h) => wm2 + glassLossWm2[h]!),
    glassLossWm2: new Float64Array(glassLossWm2.length),
  };
}

/** What stands between the sun and an array at a height above the ground, m. */
function skylineOf({ skyline, horizon, leaves, place }: Site, heightM: number): CompiledSkyline {
  return compileSkyline(
    skyline.map(({ from, to, top, distance, clear }) => ({
      fromDeg: from,
      toDeg: to,
      topM: top,
      distanceM: distance,
      clear,
    })),
    horizon?.map(({ azimuth, elevation }) => ({ azimuthDeg: azimuth, elevationDeg: elevation })),
    heightM,
    leaves ? { onDay: leaves.on, offDay: leaves.off } : usualLeaves(place.latitude),
  );
}

/** Coefficients of crystalline silicon where the sheet has none: common practice, no source. */
const usualVocPerK = -0.003;
const usualIscPerK = 0.0005;

/** The site file's data sheet in the words of the array package. */
export function moduleSheet({
  power,
  vmp,
  imp,
  voc,
  isc,
  cells,
  powerPerK,
  vocPerK,
  iscPerK,
  noct,
  area,
  technology,
}: SiteArray['module']): ModuleSheet {
  return {
    vmpV: vmp,
    impA: imp,
    vocV: voc,
    iscA: isc,
    cells,
    vocPerK: vocPerK ?? usualVocPerK,
    iscPerK: iscPerK ?? usualIscPerK,
    technology,
    ...(power !== undefined && { powerW: power }),
    ...(powerPerK !== undefined && { powerPerK }),
    ...(noct !== undefined && { noctC: noct }),
    ...(area !== undefined && { areaM2: area }),
  };
}

/** The site file's controller in the words of the array package. */
export function controllerOf(site: SiteArray['controller']): Controller {
  if (site.kind === 'direct') {
    return {
      kind: 'direct',
      nightDrawW: site.nightDraw,
      ...(site.maxCurrent !== undefined && { maxCurrentA: site.maxCurrent }),
      ...(site.maxVoltage !== undefined && { maxVoltageV: site.maxVoltage }),
    };
  }
  const { efficiency } = site;
  return {
    kind: 'maximum-power',
    maxVoltageV: site.maxVoltage,
    maxCurrentA: site.maxCurrent,
    efficiency:
      typeof efficiency === 'number' ? efficiency : { loadFraction: efficiency.at, efficiency: efficiency.is },
    nightDrawW: site.nightDraw,
  };
}

/** The site file's mount in the words of the mounts package. */
function mountOf(site: SiteMount): Mount {
  switch (site.kind) {
    case 'fixed':
      return { kind: 'fixed', tiltDeg: site.tilt, azimuthDeg: site.azimuth };
    case 'seasonal':
      return { kind: 'seasonal', azimuthDeg: site.azimuth, tilts: tiltPeriods(site.tilts) };
    case 'pole':
      return {
        kind: 'pole',
        tilts: tiltPeriods(site.tilts ?? [{ from: 0, tilt: site.tilt ?? 0 }]),
        turnDeg: site.turn,
        ...(site.facing !== undefined && { facingDeg: site.facing }),
        ...motorOf(site),
      };
    case 'one-axis':
      return {
        kind: 'one-axis',
        axisTiltDeg: site.axisTilt,
        axisAzimuthDeg: site.axisAzimuth,
        limitDeg: site.limit,
        ...motorOf(site),
      };
    case 'two-axis':
      return {
        kind: 'two-axis',
        minTiltDeg: site.minTilt,
        maxTiltDeg: site.maxTilt,
        turnDeg: site.turn,
        ...motorOf(site),
      };
  }
}

function motorOf({ drive, stowAbove, stuck }: Extract<SiteMount, { kind: 'pole' | 'one-axis' | 'two-axis' }>): Motor {
  return {
    ...(drive !== undefined && { drive: { kind: 'while-turning' as const, powerW: drive } }),
    ...(stowAbove !== undefined && { stowAboveMs: stowAbove }),
    ...(stuck && {
      stuck: stuck.map(({ from, to, azimuth, tilt }) => ({
        fromDay: from,
        toDay: to,
        azimuthDeg: azimuth,
        ...(tilt !== undefined && { tiltDeg: tilt }),
      })),
    }),
  };
}

const tiltPeriods = (tilts: readonly { from: number; tilt: number }[]) =>
  tilts.map(({ from, tilt }) => ({ fromDay: from, tiltDeg: tilt }));
