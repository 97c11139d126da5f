import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { PageState } from './session.js';

/** Readers of the screen hear the answer once things are at rest, and not at every step of a drag. */
const restMs = 700;

/** The first sentences of the program's own answer, seen and heard. */
export function Spoken({ state }: { state: PageState }): VNode {
  const { sentences } = state.view;
  const [heard, setHeard] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => setHeard(sentences), restMs);
    return () => clearTimeout(timer);
  }, [sentences]);
  return (
    <>
      <p class="sentences">{sentences}</p>
      <p class="heard" role="status">
        {heard}
      </p>
    </>
  );
}
