import type { DesignCost } from '@wintergap/seasonal';
import type { CommonFigures } from '@wintergap/study';
import type { Change, NamedChange } from '../design/change.js';
import type { Control } from '../design/control.js';
import { controlsOf, type DesignValues } from '../design/controls-of.js';
import type { YearView } from '../engine/year-view.js';
import type { YearsAnswer } from '../engine/years-runner.js';
import type { HandOver } from '../hand-over/hand-over.js';
import { type Asking, Refused, startWorker } from './worker-asking.js';

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
  /** Why the present set-up cannot be run. */
  refused: string | null;
  /** Controls that were moved and whose year is being run. */
  moved: ReadonlyMap<string, number | string | boolean>;
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
  /** Moves that wait for the year before them, by control: of each only the latest. */
  readonly #queue = new Map<string, { value: number | string | boolean; began: number }>();
  /** Another set-up was taken and its year not run yet. */
  #taken = false;

  private constructor(handOver: HandOver, drawer: Asking, runner: Asking, base: YearView) {
    this.handOver = handOver;
    this.base = base.design;
    this.#drawer = drawer;
    this.#runner = runner;
    this.state = {
      change: {},
      view: base,
      refused: null,
      moved: new Map(),
      years: null,
      present: null,
      pins: [{ name: baseName, change: {}, view: base }],
      against: baseName,
    };
  }

  /** Starts the workers and runs the first year. */
  static async begin(handOver: HandOver, workerUrl: string): Promise<Session> {
    const [drawer, runner] = [startWorker(workerUrl, handOver), startWorker(workerUrl, handOver)];
    const base = await drawer.year({});
    const session = new Session(handOver, drawer, runner, base);
    const { begin } = handOver;
    if (begin !== null && handOver.variants[begin]) await session.pinVariant(begin, true);
    session.#settle();
    return session;
  }

  get controls(): Control[] {
    return controlsOf(this.state.view.design, this.base, this.handOver.units);
  }

  /** The value of a control in the site file; `undefined` where the file's design has no such control. */
  fileControl(id: string): Control | undefined {
    return this.#fileControls.find((control) => control.id === id);
  }

  get #fileControls(): Control[] {
    return controlsOf(this.base, this.base, this.handOver.units);
  }

  move(control: Control, value: number | string | boolean): void {
    this.#queue.delete(control.id);
    this.#queue.set(control.id, { value, began: performance.now() });
    this.#show({ moved: new Map(this.state.moved).set(control.id, value) });
    void this.#run();
  }

  /** Goes on from another set-up. */
  take(change: Change): void {
    this.#queue.clear();
    const { present } = this.state;
    this.#show({ change, moved: new Map(), present: present && { ...present, isNew: false } });
    this.#taken = true;
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
    const view = await this.#drawer.year(change);
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

  /** Rows of the comparison: the one held against first, the present set-up last unless it is one of them. */
  get rows(): NamedChange[] {
    const { pins, against, change } = this.state;
    const first = pins.filter(({ name }) => name === against);
    const rows = [...first, ...pins.filter(({ name }) => name !== against)].map(({ name, change }) => ({
      name,
      change,
    }));
    return this.presentPin === null ? [...rows, { name: presentName, change }] : rows;
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
    while (this.#queue.size > 0 || this.#taken) {
      this.#taken = false;
      const { change, began } = this.#nextChange();
      try {
        const view = await this.#drawer.year(change);
        const isLatest = this.#queue.size === 0 && !this.#taken;
        if (!this.#taken) this.#show({ change, view, refused: null, ...(isLatest && { moved: new Map() }) });
      } catch (error) {
        if (!(error instanceof Refused)) throw error;
        if (!this.#taken) this.#show({ change, refused: error.message });
      }
      markRedraw(began, this.state.view.tookMs);
    }
    this.#running = false;
    if (this.state.refused === null) this.#settle();
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
    const { present } = this.state;
    this.#show({ present: present && { ...present, isNew: false } });
    this.#runner.years(rows, (answer) => {
      const figures = answer.common.designs.find((design) => design.name === name)!;
      const cost = answer.costs?.find((design) => design.name === name)?.cost ?? null;
      this.#show({
        years: { rows: rows.map((row) => row.name), answer },
        present: { figures, cost, isNew: true },
      });
    });
  }
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

/** Notes how long a redraw took, from the move to the next picture, where a browser's tools and tests look for it. */
function markRedraw(began: number, yearMs: number): void {
  const end = performance.now();
  performance.clearMeasures('redraw');
  performance.measure('redraw', { start: began, end, detail: { yearMs } });
}
