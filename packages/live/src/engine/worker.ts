// biome-ignore-all assist/source/organizeImports: this comes before what makes schemas
import { withoutEval } from './no-eval.js';
import { lossChain } from '@wintergap/report/in-page';
import { SiteError, withVariant } from '@wintergap/site';
import { PreparedCache, simulateInputs, type YearResult } from '@wintergap/year';
import { buffersOf } from '../hand-over/column-text.js';
import type { Change } from '../design/change.js';
import type { HandOver } from '../hand-over/hand-over.js';
import { designOfChange } from './design-of-change.js';
import type { Answer, Question } from './messages.js';
import { practise } from './practice.js';
import { type YearView, yearView } from './year-view.js';
import { createYearsRunner, type Settle, Superseded } from './years-runner.js';

// The page starts two of these: one draws the year of a design the moment a control moves, one runs common years behind.

/** As much of a worker's own scope as is used. */
interface Scope {
  onmessage: ((event: { data: Question }) => void) | null;
  postMessage(message: Answer, handedOver: ArrayBuffer[]): void;
}
const scope = globalThis as unknown as Scope;

const tell = (answer: Answer): void => scope.postMessage(answer, [...buffersOf(answer)]);

if (!withoutEval) throw new Error('the schemas would make code out of text');

let latestAsk = 0;
let lastAsked = 0;
let handOver: HandOver;
let prepared: PreparedCache;
let settle: Settle;

scope.onmessage = ({ data }) => {
  if (data.kind === 'begin') {
    handOver = data.handOver;
    prepared = new PreparedCache();
    settle = createYearsRunner(handOver);
    return;
  }
  if (data.kind === 'practise') {
    const own = new PreparedCache();
    const run = (change: Change) => lossChain(yearOf(change, own).result);
    void practise(data.changes, () => lastAsked, run);
    return;
  }
  latestAsk = data.ask;
  lastAsked = performance.now();
  if (data.kind !== 'drop') void answer(data);
};

function yearOf(change: Change, prepared: PreparedCache): { result: YearResult; view: YearView } {
  const { years, measured } = handOver;
  const design = designOfChange(handOver, change);
  const result = simulateInputs(design, { weather: years[0]!, measured }, prepared);
  return { result, view: yearView(result, handOver) };
}

async function answer(question: Exclude<Question, { kind: 'begin' | 'drop' | 'practise' }>): Promise<void> {
  const { ask } = question;
  try {
    switch (question.kind) {
      case 'year': {
        const began = performance.now();
        const { result, view } = yearOf(question.change, prepared);
        tell({ kind: 'year', ask, view, tookMs: performance.now() - began });
        tell({ kind: 'chain', ask, chain: lossChain(result) });
        return;
      }
      case 'years':
        await settle(
          question.setUps,
          (yearsAnswer) => tell({ kind: 'years', ask, answer: yearsAnswer }),
          () => pause(ask),
        );
        return;
      case 'save':
        tell({ kind: 'saved', ask, text: withVariant(handOver.text, question.name, question.change) });
    }
  } catch (error) {
    if (!(error instanceof Superseded)) tell({ kind: 'refused', ask, why: reasonOf(error) });
  }
}

/** Lets messages in that have come meanwhile. */
async function pause(ask: number): Promise<void> {
  await new Promise<void>((resolve) => {
    setTimeout(resolve, 0);
  });
  if (ask !== latestAsk) throw new Superseded();
}

function reasonOf(error: unknown): string {
  if (error instanceof SiteError) return error.problems.map(({ path, message }) => `${path}: ${message}`).join('\n');
  return error instanceof Error ? error.message : String(error);
}
