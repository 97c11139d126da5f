import type { Change } from './change.js';

interface AnyControl {
  /** The same for the same thing whatever the design. */
  id: string;
  /** Heading it stands under. */
  group: string;
  label: string;
}

/** A number that is dragged. */
export interface Slider extends AnyControl {
  kind: 'slider';
  value: number;
  min: number;
  max: number;
  step: number;
  /** The value as people read it, with its unit. */
  said: (value: number) => string;
  set: (change: Change, value: number) => Change;
}

/** One of a few. */
export interface Choice extends AnyControl {
  kind: 'choice';
  value: string;
  options: readonly { value: string; text: string }[];
  set: (change: Change, value: string) => Change;
}

/** There or not. */
export interface Switch extends AnyControl {
  kind: 'switch';
  on: boolean;
  set: (change: Change, on: boolean) => Change;
}

export type Control = Slider | Choice | Switch;

/** The value of a control in words. */
export function saidOf(control: Control): string {
  switch (control.kind) {
    case 'slider':
      return control.said(control.value);
    case 'choice':
      return control.options.find(({ value }) => value === control.value)?.text ?? control.value;
    case 'switch':
      return control.on ? 'on' : 'off';
  }
}
