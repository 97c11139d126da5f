import type { LossChain } from '@wintergap/report/in-page';
import type { Change, NamedChange } from '../design/change.js';
import type { Answer, Question } from '../engine/messages.js';
import type { YearView } from '../engine/year-view.js';
import type { YearsAnswer } from '../engine/years-runner.js';
import { buffersOf } from '../hand-over/column-text.js';
import type { HandOver } from '../hand-over/hand-over.js';

/** The design cannot be run; the message says why. */
export class Refused extends Error {
  override readonly name = 'Refused';
}

/** A worker, as functions that answer. */
export interface Asking {
  /** The chain of its losses is told later, and not at all when another year is asked for meanwhile. */
  year(change: Change, chain?: (chain: LossChain | null) => void): Promise<{ view: YearView; tookMs: number }>;
  saved(name: string, change: Change): Promise<string>;
  /** Tells after every year, or why they cannot be run; only the latest question is answered. */
  years(setUps: NamedChange[], tell: (answer: YearsAnswer) => void, refused: (why: string) => void): void;
  /** What it does for the latest question is not wanted any more. */
  drop(): void;
  /** Runs designs while it has nothing else to do, so that it is fast afterwards. */
  practise(changes: Change[]): void;
}

type Waiting = (answer: Answer) => void;

/** As much of a worker as is used. */
export interface Port {
  onmessage: ((event: { data: Answer }) => void) | null;
  postMessage(question: Question, handedOver: ArrayBuffer[]): void;
}

/** Hands the site over to a worker that was just started: columns change hands and are not copied once more. */
export function askingOf(worker: Port, handOver: HandOver): Asking {
  const own = structuredClone(handOver);
  worker.postMessage({ kind: 'begin', handOver: own } satisfies Question, [...buffersOf(own)]);
  const waiting = new Map<number, Waiting>();
  let asked = 0;
  let years: { ask: number; tell: (answer: YearsAnswer) => void; refused: (why: string) => void } | null = null;
  let chain: { ask: number; tell: (chain: LossChain | null) => void } | null = null;
  worker.onmessage = ({ data }) => {
    if (data.ask === years?.ask) {
      if (data.kind === 'years') years.tell(data.answer);
      else if (data.kind === 'refused') years.refused(data.why);
      return;
    }
    if (data.kind === 'chain') {
      if (data.ask === chain?.ask) chain.tell(data.chain);
      return;
    }
    waiting.get(data.ask)?.(data);
    waiting.delete(data.ask);
  };
  const send = (question: Question) => worker.postMessage(question, []);
  const answered = <Value>(question: (ask: number) => Question, taken: (answer: Answer) => Value): Promise<Value> =>
    new Promise((resolve, reject) => {
      const ask = ++asked;
      waiting.set(ask, (answer) => {
        if (answer.kind === 'refused') reject(new Refused(answer.why));
        else resolve(taken(answer));
      });
      send(question(ask));
    });
  return {
    year: (change, tellChain) =>
      answered(
        (ask) => {
          if (tellChain) chain = { ask, tell: tellChain };
          return { kind: 'year', ask, change };
        },
        (answer) => answer as Extract<Answer, { kind: 'year' }>,
      ),
    saved: (name, change) =>
      answered(
        (ask) => ({ kind: 'save', ask, name, change }),
        (answer) => (answer as Extract<Answer, { kind: 'saved' }>).text,
      ),
    years: (setUps, tell, refused) => {
      years = { ask: ++asked, tell, refused };
      send({ kind: 'years', ask: asked, setUps });
    },
    drop: () => {
      years = null;
      send({ kind: 'drop', ask: ++asked });
    },
    practise: (changes) => send({ kind: 'practise', changes }),
  };
}
