import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** Readers of the screen hear the answer once things are at rest, and not at every step of a drag. */
const restMs = 700;

/** The first sentences of the program's own answer, seen and heard. */
export function Spoken({ sentences }: { sentences: string }): VNode {
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
