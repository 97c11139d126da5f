import type { VNode } from 'preact';

const entries = [
  ['sun, used', 'var(--used)'],
  ['engine', 'url(#engine-dots)'],
  ['sun, thrown away', 'url(#thrown-hatch)'],
] as const;

/** What the fills of the energy charts mean, and the bar across. */
export const Key = ({ hasEngine }: { hasEngine: boolean }): VNode => (
  <ul class="key">
    {entries
      .filter(([text]) => hasEngine || text !== 'engine')
      .map(([text, fill]) => (
        <li key={text}>
          <svg viewBox="0 0 22 12" width="22" height="12" aria-hidden="true">
            <rect x="1" y="1" width="20" height="10" style={{ fill }} stroke="var(--quiet)" stroke-width="0.5" />
          </svg>{' '}
          {text}
        </li>
      ))}
    <li>
      <svg viewBox="0 0 22 12" width="22" height="12" aria-hidden="true">
        <line x1="0" x2="22" y1="6" y2="6" stroke="var(--ink)" stroke-width="2.5" />
      </svg>{' '}
      load
    </li>
  </ul>
);
