import type { UnitSystem } from '@wintergap/quantity';
import type { Site } from '@wintergap/site';
import { arrayControls } from './array-controls.js';
import { type Step, withValue } from './change.js';
import type { Control, Slider } from './control.js';

/** What the controls are made from: the values of a design, without what no control moves. */
export type DesignValues = Pick<
  Site,
  'name' | 'place' | 'arrays' | 'bank' | 'generator' | 'inverter' | 'snow' | 'loads' | 'units'
>;

export const designValues = ({
  name,
  place,
  arrays,
  bank,
  generator,
  inverter,
  snow,
  loads,
  units,
}: DesignValues): DesignValues => ({
  name,
  place,
  arrays,
  bank,
  snow,
  loads,
  units,
  ...(generator && { generator }),
  ...(inverter && { inverter }),
});

const metresPerInch = 0.0254;

/**
 * The controls of a design, in the order of the page.
 *
 * @param base the design of the site file: it says how far sliders go, and which loads can be switched
 */
export function controlsOf(design: DesignValues, base: DesignValues, units: UnitSystem): Control[] {
  return [
    ...design.arrays.flatMap((array) => {
      const ofBase = base.arrays.find(({ name }) => name === array.name) ?? array;
      return arrayControls(array, ofBase, design.place.latitude, units);
    }),
    ...bankControls(design, base, units),
    ...engineControls(design),
    ...inverterControls(design, base),
    ...snowControls(design),
    ...loadControls(design, base),
  ];
}

/** A slider whose value is written with its unit, at one place of the site file. */
function slider(
  path: readonly Step[],
  written: (value: number) => unknown,
  rest: Omit<Slider, 'kind' | 'set'>,
): Slider {
  return { kind: 'slider', ...rest, set: (change, value) => withValue(change, path, written(value)) };
}

function bankControls({ bank }: DesignValues, base: DesignValues, units: UnitSystem): Control[] {
  const group = 'Bank and cabinet';
  const step = stepFor(base.bank.capacity);
  const { otherLabel, atRate } = bank;
  const capacity = slider(
    ['bank', 'capacity'],
    (ah) =>
      otherLabel === undefined
        ? `${ah} Ah`
        : [
            { gives: `${ah} Ah`, in: `${atRate} h` },
            { gives: `${(otherLabel.capacityAh * ah) / bank.capacity} Ah`, in: `${otherLabel.atRateH} h` },
          ],
    {
      id: 'capacity',
      group,
      label: 'Bank',
      value: bank.capacity,
      min: step,
      max: Math.ceil((3 * base.bank.capacity) / step) * step,
      step,
      said: (ah) => `${tidy(ah)} Ah at ${bank.voltage} V`,
    },
  );
  return [capacity, ...cabinetControls({ bank }, base, units, group)];
}

function cabinetControls(
  { bank }: Pick<DesignValues, 'bank'>,
  base: DesignValues,
  units: UnitSystem,
  group: string,
): Control[] {
  const insulation = bank.cabinet?.insulation;
  if (insulation === undefined) return [];
  if (typeof insulation === 'number') {
    const ofBase = base.bank.cabinet?.insulation;
    const most = Math.max(2, 2 * (typeof ofBase === 'number' ? ofBase : insulation));
    return [
      slider(['bank', 'cabinet', 'insulation'], (wPerK) => `${wPerK} W/K`, {
        id: 'insulation',
        group,
        label: 'Cabinet loses',
        value: insulation,
        min: 0.1,
        max: Math.ceil(most),
        step: 0.1,
        said: (wPerK) => `${tidy(wPerK)} W/K`,
      }),
    ];
  }
  const inInches = units === 'us';
  const value = inInches ? insulation.foam / metresPerInch : insulation.foam * 100;
  const unit = inInches ? 'in' : 'cm';
  return [
    slider(['bank', 'cabinet', 'insulation', 'foam'], (thickness) => `${thickness} ${unit}`, {
      id: 'foam',
      group,
      label: 'Cabinet foam',
      value,
      min: 0,
      max: inInches ? 10 : 25,
      step: 0.5,
      said: (thickness) => `${tidy(thickness)} ${unit}`,
    }),
  ];
}

const percent = (share: number) => `${tidy(share)} %`;

function engineControls({ generator }: DesignValues): Control[] {
  if (!generator) return [];
  const { start, stop } = generator;
  const shareOf = (id: string, path: Step[], label: string, share: number | undefined, min: number): Control[] =>
    share === undefined
      ? []
      : [
          slider(['generator', ...path], percent, {
            id,
            group: 'Engine',
            label,
            value: share * 100,
            min,
            max: 100,
            step: 1,
            said: percent,
          }),
        ];
  return [
    ...shareOf('start', ['start', 'below'], 'Starts below', start.below, 5),
    ...shareOf('start-by-hand', ['start', 'byHand', 'below'], 'Started by hand below', start.byHand?.below, 5),
    ...shareOf('stop', ['stop', 'above'], 'Stops above', stop.above, 10),
  ];
}

function inverterControls({ inverter }: DesignValues, base: DesignValues): Control[] {
  if (!inverter) return [];
  return [
    slider(['inverter', 'idle'], (watts) => `${watts} W`, {
      id: 'idle',
      group: 'Inverter',
      label: 'Idle draw',
      value: inverter.idle,
      min: 0,
      max: Math.max(60, Math.ceil(2 * (base.inverter?.idle ?? 0))),
      step: 1,
      said: (watts) => `${tidy(watts)} W`,
    }),
  ];
}

/** Somebody who sweeps comes within a day, where nothing says otherwise: common practice, no source. */
const usualSweeping = '24 h';

function snowControls({ snow }: DesignValues): Control[] {
  const group = 'Snow';
  const within = snow.clearing?.within;
  const sweeps: Control = {
    kind: 'switch',
    id: 'sweeping',
    group,
    label: 'Arrays are swept',
    on: within !== undefined,
    set: (change, on) => withValue(change, ['snow', 'clearing'], on ? { within: usualSweeping } : null),
  };
  if (within === undefined) return [sweeps];
  const hours = (value: number) => `${tidy(value)} h`;
  const after = slider(['snow', 'clearing', 'within'], hours, {
    id: 'sweeping-within',
    group,
    label: 'Swept within',
    value: within,
    min: 1,
    max: 120,
    step: 1,
    said: (value) => `${hours(value)} of snowfall`,
  });
  return [sweeps, after];
}

/** Loads of the site file can be switched off; those that a variant adds are what it is about. */
function loadControls({ loads }: DesignValues, base: DesignValues): Control[] {
  return base.loads.map(({ name }) => ({
    kind: 'switch',
    id: `load ${name}`,
    group: 'Loads',
    label: name,
    on: loads.some((load) => load.name === name),
    set: (change, on) => withValue(change, ['loads', { item: name }, 'remove'], on ? undefined : true),
  }));
}

/** About a fortieth, as a round number. */
function stepFor(value: number): number {
  const rough = value / 40;
  const power = 10 ** Math.floor(Math.log10(rough));
  return [1, 2, 5, 10].find((digit) => digit * power >= rough)! * power;
}

/** Two decimals at most. */
const tidy = (value: number): string => String(Number(value.toFixed(2)));
