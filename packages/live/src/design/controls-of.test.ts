import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { designAsWritten, loadSite, mergeVariant, partsWrittenOut, SiteError, writtenDesign } from '@wintergap/site';
import { expect, test } from 'vitest';
import type { Change } from './change.js';
import type { Control } from './control.js';
import { controlsOf } from './controls-of.js';

const examples = join(import.meta.dirname, '../../../../examples');
const sites = readdirSync(examples)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => loadSite(join(examples, name)));

/** Where a control can be put. */
function placesOf(control: Control): (number | string | boolean)[] {
  switch (control.kind) {
    case 'slider':
      return [control.min, control.min + control.step, control.max];
    case 'choice':
      return control.options.map(({ value }) => value);
    case 'switch':
      return [true, false];
  }
}

const put = (control: Control, place: number | string | boolean): Change =>
  (control.set as (change: Change, place: number | string | boolean) => Change)({}, place);

/** The value of the control of the same name in a design. */
const valueIn = (controls: readonly Control[], id: string) => {
  const control = controls.find((one) => one.id === id);
  if (!control) return undefined;
  return control.kind === 'switch' ? control.on : control.value;
};

test.each(sites)(
  '$base.name: wherever a control is put, the design stands there, or the site file says why not',
  (site) => {
    const written = partsWrittenOut(writtenDesign(site.document), site.document.lists);
    let stood = 0;
    for (const units of ['metric', 'us'] as const) {
      const controls = controlsOf(site.base, site.base, units);
      expect(new Set(controls.map(({ id }) => id)).size).toBe(controls.length);
      for (const control of controls) {
        for (const place of placesOf(control)) {
          let moved: ReturnType<typeof controlsOf>;
          try {
            const design = designAsWritten(mergeVariant(written, put(control, place)), site.file);
            moved = controlsOf(design, site.base, units);
          } catch (error) {
            // Such as an engine that stops below where it starts; never a key or a unit that the file does not know.
            if (!(error instanceof SiteError)) throw error;
            expect(error.message).not.toMatch(/unknown|unit|expected a number/i);
            continue;
          }
          const value = valueIn(moved, control.id);
          if (typeof place === 'number') expect(value, control.id).toBeCloseTo(place, 9);
          else expect(value, control.id).toBe(place);
          stood++;
        }
      }
    }
    expect(stood).toBeGreaterThan(20);
  },
);

test('the mount goes from kind to kind and back to that of the file, to the letter', () => {
  const site = sites.find(({ base }) => base.name.startsWith('Kettle Pond'))!;
  const mount = () => controlsOf(site.base, site.base, 'metric').find(({ label }) => label === 'Mount')!;
  expect(put(mount(), 'fixed')).toEqual({
    arrays: [{ name: 'garden pole', mount: { kind: 'fixed', tilt: 68, azimuth: 180 } }],
  });
  expect(put(mount(), 'pole')).toEqual({});
});

test('of two tilts the winter one is that in which the sun is lowest, north and south', () => {
  const site = sites.find(({ base }) => base.name.startsWith('Kettle Pond'))!;
  const labels = (latitude: number) =>
    controlsOf({ ...site.base, place: { ...site.base.place, latitude } }, site.base, 'metric')
      .map(({ label }) => label)
      .filter((label) => label.startsWith('Tilt'));
  expect(labels(46)).toEqual(['Tilt in winter, from 1 October', 'Tilt in summer, from 1 April']);
  expect(labels(-46)).toEqual(['Tilt in summer, from 1 October', 'Tilt in winter, from 1 April']);
});
