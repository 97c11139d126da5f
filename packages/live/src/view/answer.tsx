import { yearsInWords } from '@wintergap/report/in-page';
import type { VNode } from 'preact';
import type { PageState } from './session.js';
import { type Figured, Shown } from './shown.js';

/** What the reader came for: the engine's hours, and the few figures that go with them. */
export function Answer({ state }: { state: PageState }): VNode {
  const own = state.present?.figures ?? null;
  const answer = state.present?.isNew === true ? state.years!.answer : null;
  const dark = state.years?.answer.common.merit === 'darkKWh';
  const ranked = own && (dark ? own.ranked.darkKWh : own.ranked.generatorHours);
  const unit = dark ? 'kWh dark' : 'h';
  const refused = !state.running && (state.refused !== null || state.yearsRefused !== null);
  const settled = answer?.settled === true && !state.running && !refused;
  // Grey either way; but nothing more is coming where something was refused.
  const standing = settled ? '' : refused ? ' not-run' : ' settling';
  return (
    <section class={`answer${standing}`} aria-label="Answer">
      <div class="big">
        <Big
          name={dark ? 'Load left dark, usual year' : 'Engine, usual year'}
          id="usual"
          unit={unit}
          value={ranked?.usual.value}
        />
        <Big name="One year in ten" id="one-in-ten" unit={`${unit} or more`} value={ranked?.oneInTen.value} />
      </div>
      <Progress
        done={answer?.done ?? 0}
        total={answer?.total ?? state.years?.answer.total ?? 1}
        settled={settled}
        words={answer ? yearsInWords(answer.common.weather) : ''}
        refused={refused}
      />
    </section>
  );
}

function Big({ name, id, value, unit }: Figured): VNode {
  return (
    <p>
      <span class="name">{name}</span>
      <span class="number">
        <Shown id={id} value={value} />
        <span class="unit"> {unit}</span>
      </span>
    </p>
  );
}

function Progress({
  done,
  total,
  settled,
  words,
  refused,
}: {
  done: number;
  total: number;
  settled: boolean;
  words: string;
  refused: boolean;
}): VNode {
  return (
    <div class="progress">
      <progress max={total} value={settled ? total : done} aria-label="Common years run" />
      <span id="years-said">
        {refused ? 'not run' : settled ? words : `year ${Math.min(done + 1, total)} of ${total} …`}
      </span>
    </div>
  );
}
