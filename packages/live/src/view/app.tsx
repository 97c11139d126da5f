import { inShownUnits } from '@wintergap/report/in-page';
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
import { still } from './still.js';

// What is made of the year alone stays while common years come in or a control is on its way.
const OwnCharge = still(Charge);
const OwnMonths = still(Months);
const OwnChain = still(Chain);

/** The whole page: what is asked on the left, what comes of it on the right; one under the other on a phone. */
export function App({ session, state }: OfPage): VNode {
  const { view, chain, pins } = state;
  const { units, file } = session.handOver;
  const { weather, cautions, site } = view.summary;
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
          {state.yearsRefused !== null && (
            <p class="refused" role="alert">
              The common years cannot be run. {state.yearsRefused}
            </p>
          )}
          {view.exceeded.length > 0 && (
            <div class="refused" role="alert">
              <strong>Not to be built:</strong> {view.exceeded.join('; ')}
            </div>
          )}
          <Spoken sentences={view.sentences} />
          <OwnCharge view={view} units={units} />
          <OwnMonths view={view} file={pins[0]!.view} differs={Object.keys(state.change).length > 0} />
          <Comparison session={session} state={state} />
          <OwnChain chain={chain} />
          {cautions.length > 0 && (
            <section aria-labelledby="cautions-head">
              <h2 id="cautions-head">To know before</h2>
              <ul class="cautions">
                {cautions.map(({ code, text }) => (
                  <li key={code}>{inShownUnits(text, units)}</li>
                ))}
              </ul>
            </section>
          )}
        </div>
      </main>
      <footer>
        <p>
          Figures for planning, from {file} and {weather.source}. Whatever is built is done or checked by licensed
          people.
        </p>
      </footer>
    </>
  );
}
