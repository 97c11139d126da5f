import { type Chart, plotted } from '@wintergap/report/in-page';
import type { VNode } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { useDrawing } from './in-sight.js';

const narrowBelow = '(max-width: 719px)';

/** Whether the window is a phone's: charts are then drawn with fewer units across, so that letters stay readable. */
export function useNarrow(): boolean {
  const [narrow, setNarrow] = useState(() => matchMedia(narrowBelow).matches);
  useLayoutEffect(() => {
    const query = matchMedia(narrowBelow);
    const follow = () => setNarrow(query.matches);
    query.addEventListener('change', follow);
    return () => query.removeEventListener('change', follow);
  }, []);
  return narrow;
}

/**
 * A chart of the report, drawn into the page.
 *
 * @param of what it is drawn from: drawn anew when one of these is another
 */
export function DrawnChart({ chart, of }: { chart: () => Chart; of: readonly unknown[] }): VNode {
  const place = useRef<HTMLDivElement>(null);
  useDrawing(place, () => place.current!.replaceChildren(plotted<SVGSVGElement>(chart())), of);
  return <div ref={place} />;
}
