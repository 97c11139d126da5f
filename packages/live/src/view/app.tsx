import type { VNode } from 'preact';
import { Answer } from './answer.js';
import { Chain } from './chain.js';
import { Charge } from './charge.js';
import { Comparison } from './comparison.js';
import { Controls } from './controls.js';
import { Facts } from './facts.js';
import { Months } from './months.js';
import type { OfPage } from './session.js';
import { Spoken } from './spoken.js';

/** The whole page: what is asked on the left, what comes of it on the right; one under the other on a phone. */
export function App({ session, state }: OfPage): VNode {
  const { handOver } = session;
  const { weather, cautions, site } = state.view.summary;
  return (
    <>
      <header class="top">
        <h1>{site.name}</h1>
        <p class="place">
          {Math.abs(site.latitude)}° {site.latitude < 0 ? 'south' : 'north'}, {weather.source}
          {weather.verdict !== null && weather.verdict !== 'good' && <> · {weather.verdictLine}</>}
        </p>
      </header>
      <main>
        <div class="side">
          <Answer state={state} />
          <Controls session={session} state={state} />
        </div>
        <div class="results">
          <Facts session={session} state={state} />
          {state.refused !== null && (
            <p class="refused" role="alert">
              This design cannot be run. {state.refused}
            </p>
          )}
          {state.view.exceeded.length > 0 && (
            <div class="refused" role="alert">
              <strong>Not to be built:</strong> {state.view.exceeded.join('; ')}
            </div>
          )}
          <Spoken state={state} />
          <Charge state={state} units={handOver.units} />
          <Months state={state} />
          <Comparison session={session} state={state} />
          <Chain state={state} />
          {cautions.length > 0 && (
            <section aria-labelledby="cautions-head">
              <h2 id="cautions-head">To know before</h2>
              <ul class="cautions">
                {cautions.map(({ code, text }) => (
                  <li key={code}>{text}</li>
                ))}
              </ul>
            </section>
          )}
        </div>
      </main>
      <footer>
        <p>
          Figures for planning, from {handOver.file} and {weather.source}. Whatever is built is done or checked by
          licensed people.
        </p>
      </footer>
    </>
  );
}
