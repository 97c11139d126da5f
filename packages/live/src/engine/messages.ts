import type { LossChain } from '@wintergap/report/in-page';
import type { Change, NamedChange } from '../design/change.js';
import type { HandOver } from '../hand-over/hand-over.js';
import type { YearView } from './year-view.js';
import type { YearsAnswer } from './years-runner.js';

/** What the page asks of a worker; `ask` numbers what is asked, and an answer bears the number of its question. */
export type Question =
  | { kind: 'begin'; handOver: HandOver }
  | { kind: 'year'; ask: number; change: Change }
  | { kind: 'years'; ask: number; setUps: NamedChange[] }
  /** Nothing: common years that are being run are not wanted any more. */
  | { kind: 'drop'; ask: number }
  /** Designs to be run while nothing is asked, and nobody sees them: the code is then fast when somebody moves a control. */
  | { kind: 'practise'; changes: Change[] }
  | { kind: 'save'; ask: number; name: string; change: Change };

export type Answer =
  /** With the time that the year took, ms. */
  | { kind: 'year'; ask: number; view: YearView; tookMs: number }
  /** Comes after the year, which does not wait for it. */
  | { kind: 'chain'; ask: number; chain: LossChain | null }
  | { kind: 'years'; ask: number; answer: YearsAnswer }
  | { kind: 'saved'; ask: number; text: string }
  /** The design is not right, or nothing can be made of it: why. */
  | { kind: 'refused'; ask: number; why: string };
