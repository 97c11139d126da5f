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
  year(change: Change): Promise<YearView>;
  saved(name: string, change: Change): Promise<string>;
  /** Tells after every year; only the latest question is answered. */
  years(setUps: NamedChange[], tell: (answer: YearsAnswer) => void): void;
}

type Waiting = (answer: Answer) => void;

/** Starts a worker and hands the site over to it: columns change hands and are not copied once more. */
export function startWorker(url: string, handOver: HandOver): Asking {
  const worker = new Worker(url);
  const own = structuredClone(handOver);
  worker.postMessage({ kind: 'begin', handOver: own } satisfies Question, [...buffersOf(own)]);
  const waiting = new Map<number, Waiting>();
  let asked = 0;
  let years: { ask: number; tell: (answer: YearsAnswer) => void } | null = null;
  worker.onmessage = ({ data }: MessageEvent<Answer>) => {
    if (data.kind === 'years') {
      if (data.ask === years?.ask) years.tell(data.answer);
      return;
    }
    waiting.get(data.ask)?.(data);
    waiting.delete(data.ask);
  };
  const send = (question: Question) => worker.postMessage(question);
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
    year: (change) =>
      answered(
        (ask) => ({ kind: 'year', ask, change }),
        (answer) => (answer as Extract<Answer, { kind: 'year' }>).view,
      ),
    saved: (name, change) =>
      answered(
        (ask) => ({ kind: 'save', ask, name, change }),
        (answer) => (answer as Extract<Answer, { kind: 'saved' }>).text,
      ),
    years: (setUps, tell) => {
      years = { ask: ++asked, tell };
      send({ kind: 'years', ask: asked, setUps });
    },
  };
}
