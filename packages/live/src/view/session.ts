import type { LossChain } from '@wintergap/report/in-page';
import type { DesignCost } from '@wintergap/seasonal';
import type { CommonFigures } from '@wintergap/study';
import type { Change, NamedChange } from '../design/change.js';
import type { Control } from '../design/control.js';
import { controlsOf, type DesignValues } from '../design/controls-of.js';
import type { YearView } from '../engine/year-view.js';
import type { YearsAnswer } from '../engine/years-runner.js';
import type { HandOver } from '../hand-over/hand-over.js';
import { type Asking, askingOf, type Port, Refused } from './worker-asking.js';

/** A set-up that is kept beside the present one. */
export interface Pin {
  name: string;
  change: Change;
  view: YearView;
}

/** What the page shows at a moment; a new object after every change. */
export interface PageState {
  change: Change;
  /** The file's year of the present set-up, or of the last one that could be run. */
  view: YearView;
  /** Where the light of that year goes; it comes a little after it. */
  chain: LossChain | null;
  /** Why the present set-up cannot be run. */
  refused: string | null;
  /** Why common years cannot be run. */
  yearsRefused: string | null;
  /** Controls that were moved and whose year is not shown: it is being run, or cannot be. */
  moved: ReadonlyMap<string, number | string | boolean>;
  /** The year of what was moved or taken is being run. */
  running: boolean;
  /** What common years say, of the rows below in their order; `null` before the first. */
  years: { rows: readonly string[]; answer: YearsAnswer } | null;
  /** What they say of the present set-up; that of the one before until they say more. */
  present: { figures: CommonFigures; cost: DesignCost | null; isNew: boolean } | null;
  /** The base first. */
  pins: readonly Pin[];
  /** Name of the pin that the others are held against. */
  against: string;
}

/** What the parts of the page are drawn from. */
export interface OfPage {
  session: Session;
  state: PageState;
}

/** The name that the present set-up goes by. */
export const presentName = 'present';
/** And the design of the site file, as everywhere in the program. */
export const baseName = 'base';

/** Everything that happens on the page, without anything that is seen. */
export class Session {
  readonly handOver: HandOver;
  readonly base: DesignValues;
  state: PageState;
  /** Called after every change of the state. */
  onChange: () => void = () => {};

  readonly #drawer: Asking;
  readonly #runner: Asking;
  #running = false;
  #controls: { view: YearView; list: Control[] } | null = null;
  readonly #fileControls: ReadonlyMap<string, Control>;
  /** Moves that wait for the year before them, by control: of each only the latest. */
  readonly #queue = new Map<string, { value: number | string | boolean; began: number }>();
  /** Another set-up was taken and its year not run yet. */
  #taken = false;

  private constructor(handOver: HandOver, drawer: Asking, runner: Asking, base: YearView) {
    this.handOver = handOver;
    this.base = base.design;
    this.#drawer = drawer;
    this.#runner = runner;
    this.#fileControls = new Map(
      controlsOf(this.base, this.base, handOver.units).map((control) => [control.id, control]),
    );
    this.state = {
      change: {},
      view: base,
      chain: null,
      refused: null,
      yearsRefused: null,
      moved: new Map(),
      running: false,
      years: null,
      present: null,
      pins: [{ name: baseName, change: {}, view: base }],
      against: baseName,
    };
  }

  /** Starts the workers and runs the first year. */
  static async begin(handOver: HandOver, workerUrl: string): Promise<Session> {
    const started = () => askingOf(new Worker(workerUrl) as Port, handOver);
    const [drawer, runner] = [started(), started()];
    const { view: base } = await drawer.year({}, (chain) => session.#show({ chain }));
    const session: Session = new Session(handOver, drawer, runner, base);
    const { begin } = handOver;
    if (begin !== null && handOver.variants[begin]) await session.pinVariant(begin, true);
    session.#settle();
    drawer.practise(changesToPractise(session.controls));
    return session;
  }

  get controls(): Control[] {
    const { view } = this.state;
    if (this.#controls?.view !== view)
      this.#controls = { view, list: controlsOf(view.design, this.base, this.handOver.units) };
    return this.#controls.list;
  }

  /** The value of a control in the site file; `undefined` where the file's design has no such control. */
  fileControl(id: string): Control | undefined {
    return this.#fileControls.get(id);
  }

  move(control: Control, value: number | string | boolean): void {
    this.#queue.delete(control.id);
    this.#queue.set(control.id, { value, began: performance.now() });
    // The workers first: they are at it while the control is drawn where it was put.
    this.#runner.drop();
    void this.#run();
    this.#show({ moved: new Map(this.state.moved).set(control.id, value), running: true });
  }

  /** Goes on from another set-up. */
  take(change: Change): void {
    this.#queue.clear();
    this.#show({ change, moved: new Map(), running: true, present: this.#olderPresent });
    this.#taken = true;
    this.#runner.drop();
    void this.#run();
  }

  pin(name: string): void {
    const { change, view, pins } = this.state;
    this.#show({ pins: [...pins, { name: this.#freeName(name), change, view }] });
    this.#settle();
  }

  /** A variant of the site file beside the others, or as the present set-up. */
  async pinVariant(name: string, go: boolean): Promise<void> {
    const change = this.handOver.variants[name]!;
    const { view } = await this.#drawer.year(change, go ? (chain) => this.#show({ chain }) : undefined);
    const pins = this.state.pins.some((pin) => pin.name === name)
      ? this.state.pins
      : [...this.state.pins, { name, change, view }];
    this.#show({ pins, ...(go && { change, view }) });
    this.#settle();
  }

  unpin(name: string): void {
    const { pins, against } = this.state;
    this.#show({ pins: pins.filter((pin) => pin.name !== name), against: against === name ? baseName : against });
    this.#settle();
  }

  holdAgainst(name: string): void {
    this.#show({ against: name });
    this.#settle();
  }

  /** The site file with the present set-up as a variant more. */
  saved(name: string): Promise<string> {
    return this.#drawer.saved(name, this.state.change);
  }

  /** Rows of the comparison: the one held against first, the present set-up last unless it is one of them or cannot be run. */
  get rows(): NamedChange[] {
    const { pins, against, change, refused } = this.state;
    const first = pins.filter(({ name }) => name === against);
    const rows = [...first, ...pins.filter(({ name }) => name !== against)].map(({ name, change }) => ({
      name,
      change,
    }));
    return this.presentPin === null && refused === null ? [...rows, { name: presentName, change }] : rows;
  }

  /** The pin that the present set-up is, if it is one. */
  get presentPin(): string | null {
    const present = JSON.stringify(this.state.change);
    return this.state.pins.find(({ change }) => JSON.stringify(change) === present)?.name ?? null;
  }

  #freeName(wish: string): string {
    const taken = new Set([...this.state.pins.map(({ name }) => name), presentName]);
    const name = wish.trim() === '' ? 'set-up' : wish.trim();
    for (let n = 1; ; n++) {
      const candidate = n === 1 ? name : `${name} ${n}`;
      if (!taken.has(candidate)) return candidate;
    }
  }

  #show(part: Partial<PageState>): void {
    this.state = { ...this.state, ...part };
    this.onChange();
  }

  /** Runs the year of the present set-up, again while there are moves that came meanwhile. */
  async #run(): Promise<void> {
    if (this.#running) return;
    this.#running = true;
    try {
      while (this.#queue.size > 0 || this.#taken) {
        this.#taken = false;
        const { change, began } = this.#nextChange();
        const shown = await this.#yearOf(change);
        // What was taken meanwhile is shown in its place.
        if (this.#taken) continue;
        const running = this.#queue.size > 0;
        const moved = running || shown.state.refused !== null ? this.state.moved : new Map();
        this.#show({ change, ...shown.state, moved, running, present: this.#olderPresent });
        markRedraw(began, shown.tookMs);
      }
    } finally {
      this.#running = false;
    }
    this.#settle();
  }

  /** What is to be shown of a set-up: its year, or why it has none. */
  async #yearOf(change: Change): Promise<{ state: Partial<PageState>; tookMs: number }> {
    try {
      const { view, tookMs } = await this.#drawer.year(change, (chain) => this.#show({ chain }));
      return { state: { view, refused: null }, tookMs };
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      return { state: { refused: error.message }, tookMs: 0 };
    }
  }

  /** What common years say of the present set-up, once it is another. */
  get #olderPresent(): PageState['present'] {
    const { present } = this.state;
    return present && { ...present, isNew: false };
  }

  /**
   * The change with the moves that wait, in their order; up to one that gives the design other controls, such as another
   * mount: what was moved after it waits for those.
   */
  #nextChange(): { change: Change; began: number } {
    const { controls } = this;
    let { change } = this.state;
    let began = performance.now();
    for (const [id, move] of this.#queue) {
      this.#queue.delete(id);
      const control = controls.find((one) => one.id === id);
      if (!control) continue;
      change = setTo(control, change, move.value);
      began = Math.min(began, move.began);
      if (control.kind !== 'slider') break;
    }
    return { change, began };
  }

  /** Has common years run for all rows; what was asked for before is dropped. */
  #settle(): void {
    const { rows } = this;
    const name = this.presentPin ?? presentName;
    this.#show({ present: this.#olderPresent, yearsRefused: null });
    const tell = (answer: YearsAnswer) => {
      const figures = answer.common.designs.find((design) => design.name === name);
      const cost = answer.costs?.find((design) => design.name === name)?.cost ?? null;
      this.#show({
        years: { rows: rows.map((row) => row.name), answer },
        ...(figures && { present: { figures, cost, isNew: true } }),
      });
    };
    this.#runner.years(rows, tell, (why) => this.#show({ yearsRefused: why }));
  }
}

/** Every control a little elsewhere, and every other choice: the moves that a reader may make first. */
function changesToPractise(controls: readonly Control[]): Change[] {
  return controls.flatMap((control) => {
    if (control.kind === 'switch') return [setTo(control, {}, !control.on)];
    if (control.kind === 'choice') return control.options.map(({ value }) => setTo(control, {}, value));
    const { value, step, min, max } = control;
    return [value - step, value + step]
      .filter((place) => place >= min && place <= max)
      .map((place) => setTo(control, {}, place));
  });
}

/** The change after a control was moved. */
function setTo(control: Control, change: Change, value: number | string | boolean): Change {
  switch (control.kind) {
    case 'slider':
      return control.set(change, Number(value));
    case 'choice':
      return control.set(change, String(value));
    case 'switch':
      return control.set(change, value === true);
  }
}

/**
 * Notes how long a redraw took, from the move to the finished drawing and to the end of the frame that shows it, where a
 * browser's tools, the tests and the bench look for it.
 */
function markRedraw(began: number, yearMs: number): void {
  const note = (name: string) => {
    performance.clearMeasures(name);
    performance.measure(name, { start: began, end: performance.now(), detail: { yearMs } });
  };
  note('redraw');
  requestAnimationFrame(() => setTimeout(note, 0, 'redraw shown'));
}
