import { dateInWords } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import type { SiteArray } from '@wintergap/site';
import { type Step, withValue } from './change.js';
import type { Control, Slider } from './control.js';
import { type MountKind, mountKinds, otherMount, type TiltFrom, tiltsOf, writtenTilts } from './mount-change.js';

const metresPerFoot = 0.3048;

/** Mount, tilts, strings and height of one array. */
export function arrayControls(array: SiteArray, base: SiteArray, latitude: number, units: UnitSystem): Control[] {
  const { name, strings, height, mount } = array;
  const group = `Array ${name}`;
  const path: Step[] = ['arrays', { item: name }];
  const inFeet = units === 'us';
  const unit = inFeet ? 'ft' : 'm';
  const heightShown = inFeet ? height / metresPerFoot : height;
  return [
    {
      kind: 'choice',
      id: `${name} mount`,
      group,
      label: 'Mount',
      value: mount.kind,
      options: Object.entries(mountKinds).map(([value, text]) => ({ value, text })),
      set: (change, kind) =>
        withValue(
          change,
          [...path, 'mount'],
          // The mount of the file is the file's, whole.
          kind === base.mount.kind ? undefined : otherMount(mount, kind as MountKind, latitude),
        ),
    },
    ...tiltControls(array, group, path, latitude),
    ...facingControl(array, group, path),
    {
      kind: 'slider',
      id: `${name} strings`,
      group,
      label: 'Strings',
      value: strings,
      min: 0,
      max: Math.max(8, 2 * base.strings),
      step: 1,
      said: (count) => `${count} × ${array.inSeries} modules`,
      set: (change, count) => withValue(change, [...path, 'strings'], count),
    },
    {
      kind: 'slider',
      id: `${name} height`,
      group,
      label: 'Height',
      value: heightShown,
      min: 0,
      max: Math.max(inFeet ? 50 : 15, Math.ceil(2 * heightShown)),
      step: inFeet ? 1 : 0.5,
      said: (value) => `${Number(value.toFixed(1))} ${unit}`,
      set: (change, value) => withValue(change, [...path, 'height'], `${value} ${unit}`),
    },
  ];
}

const degrees = (value: number) => `${Number(value.toFixed(1))}°`;

function tiltControls({ name, mount }: SiteArray, group: string, path: readonly Step[], latitude: number): Control[] {
  const most = 'maxTilt' in mount && mount.kind !== 'two-axis' ? (mount.maxTilt ?? 90) : 90;
  const slider = (rest: Pick<Slider, 'id' | 'label' | 'value' | 'set'>): Slider => ({
    kind: 'slider',
    group,
    min: 0,
    max: most,
    step: 1,
    said: degrees,
    ...rest,
  });
  if (mount.kind === 'one-axis') {
    const axis = slider({
      id: `${name} axis`,
      label: 'Tilt of the axis',
      value: mount.axisTilt,
      set: (change, tilt) => withValue(change, [...path, 'mount', 'axisTilt'], tilt),
    });
    return [axis];
  }
  const tilts = tiltsOf(mount);
  const isSingle = mount.kind === 'fixed' || (mount.kind === 'pole' && !mount.tilts);
  return tilts.map(({ from, tilt }, at) =>
    slider({
      id: `${name} tilt ${at}`,
      label: isSingle ? 'Tilt' : tiltLabel(tilts, at, latitude),
      value: tilt,
      set: (change, value) =>
        isSingle
          ? withValue(change, [...path, 'mount', 'tilt'], value)
          : withValue(
              change,
              [...path, 'mount', 'tilts'],
              writtenTilts(tilts.map((one, i) => (i === at ? { from, tilt: value } : one))),
            ),
    }),
  );
}

/** `Tilt in winter, from 1 October`: of two tilts the one that holds when the sun is lowest is that of the winter. */
function tiltLabel(tilts: readonly TiltFrom[], at: number, latitude: number): string {
  const since = `from ${dateInWords(tilts[at]!.from)}`;
  if (tilts.length !== 2) return `Tilt ${since}`;
  return `Tilt in ${at === winterTilt(tilts, latitude) ? 'winter' : 'summer'}, ${since}`;
}

/** Days of the year of the solstices. */
const solstices = { december: 354, june: 171 };

function winterTilt(tilts: readonly TiltFrom[], latitude: number): number {
  const day = latitude < 0 ? solstices.june : solstices.december;
  const since = (from: number) => (day - from + 365) % 365;
  return since(tilts[0]!.from) < since(tilts[1]!.from) ? 0 : 1;
}

function facingControl({ name, mount }: SiteArray, group: string, path: readonly Step[]): Control[] {
  if (mount.kind !== 'fixed' && mount.kind !== 'seasonal') return [];
  return [
    {
      kind: 'slider',
      id: `${name} facing`,
      group,
      label: 'Faces',
      value: mount.azimuth,
      min: 0,
      max: 355,
      step: 5,
      said: (azimuth) => `${degrees(azimuth)} ${compass(azimuth)}`,
      set: (change, azimuth) => withValue(change, [...path, 'mount', 'azimuth'], azimuth),
    },
  ];
}

const points = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];

const compass = (azimuth: number): string => points[Math.round(azimuth / 45) % 8]!;
