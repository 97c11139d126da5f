import { figure, type LossChain, percent } from '@wintergap/report/in-page';
import type { VNode } from 'preact';
import { Scroll } from './scroll.js';

/** Where the light on the arrays goes, step by step, to what load and bank got. */
export function Chain({ chain }: { chain: LossChain | null }): VNode | null {
  if (chain === null || chain.startKWh === 0) return null;
  const { startKWh, losses, usedKWh } = chain;
  const share = (kWh: number) => Math.abs(kWh) / startKWh;
  let left = startKWh;
  const rows = losses
    .filter(({ kWh }) => Math.abs(kWh) >= 0.05)
    .map(({ name, kWh }) => {
      left -= kWh;
      return { name: kWh < 0 ? `${name} (a gain)` : name, kWh, from: Math.min(left, left + kWh) };
    });
  return (
    <section aria-labelledby="chain-head">
      <h2 id="chain-head">What becomes of the light</h2>
      <Scroll label="What becomes of the light, figures">
        <table class="chain">
          <thead>
            <tr>
              <th scope="col">Step</th>
              <th scope="col">kWh</th>
              <th scope="col">Share</th>
              <td />
            </tr>
          </thead>
          <tbody>
            <Step
              name="rated power × light on the plane"
              text={figure(startKWh, 0)}
              share="100 %"
              from={0}
              to={1}
              fill="whole"
            />
            {rows.map(({ name, kWh, from }) => (
              <Step
                key={name}
                name={name}
                text={`${kWh > 0 ? '−' : '+'}${figure(Math.abs(kWh))}`}
                share={percent(share(kWh), 1)}
                from={from / startKWh}
                to={from / startKWh + share(kWh)}
                fill="lost"
              />
            ))}
            <Step
              name="used"
              text={figure(usedKWh, 0)}
              share={percent(share(usedKWh))}
              from={0}
              to={share(usedKWh)}
              fill="used"
            />
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}

interface OfStep {
  name: string;
  text: string;
  share: string;
  /** Of the bar, shares of the start. */
  from: number;
  to: number;
  fill: 'whole' | 'lost' | 'used';
}

const Step = ({ name, text, share, from, to, fill }: OfStep): VNode => (
  <tr>
    <th scope="row">{name}</th>
    <td>{text}</td>
    <td>{share}</td>
    <td class="bar-cell">
      <span class={`bar ${fill}`} style={{ left: `${from * 100}%`, width: `${Math.max(0.3, (to - from) * 100)}%` }} />
    </td>
  </tr>
);
