import { expect, test, vi } from 'vitest';
import type { Answer, Question } from '../engine/messages.js';
import type { HandOver } from '../hand-over/hand-over.js';
import { askingOf, type Port } from './worker-asking.js';

/** A worker that answers what it is told to. */
function started() {
  const asked: Question[] = [];
  const port: Port = { onmessage: null, postMessage: (question) => asked.push(question) };
  return {
    asking: askingOf(port, {} as HandOver),
    asked,
    lastAsk: () => (asked.at(-1) as { ask: number }).ask,
    answers: (data: Answer) => port.onmessage!({ data }),
  };
}

test('common years that cannot be run say why, instead of being awaited for ever', () => {
  const { asking, answers, lastAsk } = started();
  const [tell, refused] = [vi.fn(), vi.fn()];
  asking.years([], tell, refused);
  answers({ kind: 'refused', ask: lastAsk(), why: 'no balance' });
  expect(refused.mock.calls).toEqual([['no balance']]);
  expect(tell).not.toHaveBeenCalled();
});

test('what was dropped tells nothing more, neither years nor a refusal', () => {
  const { asking, asked, answers, lastAsk } = started();
  const [tell, refused] = [vi.fn(), vi.fn()];
  asking.years([], tell, refused);
  const ask = lastAsk();
  asking.drop();
  expect(asked.at(-1)).toEqual({ kind: 'drop', ask: ask + 1 });
  answers({ kind: 'years', ask, answer: {} as never });
  answers({ kind: 'refused', ask, why: 'late' });
  expect([tell.mock.calls, refused.mock.calls]).toEqual([[], []]);
});

test('a chain of losses is that of the latest year, or is not told', async () => {
  const { asking, answers, lastAsk } = started();
  const told: string[] = [];
  const first = asking.year({}, () => told.push('first'));
  const firstAsk = lastAsk();
  answers({ kind: 'year', ask: firstAsk, view: {} as never, tookMs: 1 });
  expect((await first).tookMs).toBe(1);
  void asking.year({}, () => told.push('second'));
  answers({ kind: 'chain', ask: firstAsk, chain: null });
  answers({ kind: 'chain', ask: lastAsk(), chain: null });
  expect(told).toEqual(['second']);
});
