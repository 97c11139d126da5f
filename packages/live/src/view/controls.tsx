import type { VNode } from 'preact';
import { type Choice, type Control, type Slider, type Switch, saidOf } from '../design/control.js';
import type { OfPage } from './session.js';

/** Everything that can be moved, under its headings; what differs from the site file says so. */
export function Controls({ session, state }: OfPage): VNode {
  const { controls } = session;
  const groups = [...new Set(controls.map(({ group }) => group))];
  const untouched = Object.keys(state.change).length === 0;
  return (
    <form class="controls" aria-label="The design" onSubmit={(event) => event.preventDefault()}>
      {groups.map((group) => (
        <fieldset key={group}>
          <legend>{group}</legend>
          {controls
            .filter((control) => control.group === group)
            .map((control) => (
              <Row key={control.id} session={session} state={state} control={control} />
            ))}
        </fieldset>
      ))}
      <button type="button" class="reset" disabled={untouched} onClick={() => session.take({})}>
        Back to the site file
      </button>
    </form>
  );
}

interface OfControl<Kind extends Control> extends OfPage {
  control: Kind;
}

const idOf = ({ id }: Control) => `control-${id.replace(/[^\p{L}\p{N}]+/gu, '-')}`;

function Row({ session, state, control }: OfControl<Control>): VNode {
  switch (control.kind) {
    case 'slider':
      return <SliderRow session={session} state={state} control={control} />;
    case 'choice':
      return <ChoiceRow session={session} state={state} control={control} />;
    case 'switch':
      return <SwitchRow session={session} state={state} control={control} />;
  }
}

function SliderRow({ session, state, control }: OfControl<Slider>): VNode {
  const value = Number(state.moved.get(control.id) ?? control.value);
  const { min, max, step, said, label } = control;
  const file = session.fileControl(control.id);
  const differs = file?.kind === 'slider' && Math.abs(file.value - value) > step / 100;
  return (
    <div class="row">
      <label for={idOf(control)}>{label}</label>
      <output for={idOf(control)}>{said(value)}</output>
      <input
        type="range"
        id={idOf(control)}
        data-control={control.id}
        min={min}
        max={max}
        step={step}
        value={value}
        aria-valuetext={said(value)}
        onInput={(event) => session.move(control, Number(event.currentTarget.value))}
      />
      {differs && <small class="file">site file: {said(file.value)}</small>}
    </div>
  );
}

function ChoiceRow({ session, state, control }: OfControl<Choice>): VNode {
  const value = String(state.moved.get(control.id) ?? control.value);
  const file = session.fileControl(control.id);
  const differs = file?.kind === 'choice' && file.value !== value;
  return (
    <div class="row">
      <label for={idOf(control)}>{control.label}</label>
      <select
        id={idOf(control)}
        data-control={control.id}
        value={value}
        onChange={(event) => session.move(control, event.currentTarget.value)}
      >
        {control.options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.text}
          </option>
        ))}
      </select>
      {differs && <small class="file">site file: {saidOf(file)}</small>}
    </div>
  );
}

function SwitchRow({ session, state, control }: OfControl<Switch>): VNode {
  const on = Boolean(state.moved.get(control.id) ?? control.on);
  const file = session.fileControl(control.id);
  const differs = file?.kind === 'switch' && file.on !== on;
  return (
    <div class="row switch">
      <label>
        <input
          type="checkbox"
          data-control={control.id}
          checked={on}
          onChange={(event) => session.move(control, event.currentTarget.checked)}
        />
        <span>{control.label}</span>
      </label>
      {differs && <small class="file">site file: {saidOf(file)}</small>}
    </div>
  );
}
