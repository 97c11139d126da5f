import { type MutableRef, useLayoutEffect, useRef } from 'preact/hooks';

/** What is drawn out of sight waits so long, ms: while somebody drags, only what they see is drawn. */
const outOfSightMs = 150;

/**
 * Draws into a place: at once what is in sight, or stood empty, and a little later what is not.
 *
 * @param draw what is to be done; `of` is what it is drawn from, and it is drawn anew when one of these is another
 */
export function useDrawing(place: MutableRef<HTMLElement | null>, draw: () => void, of: readonly unknown[]): void {
  const inSight = useInSight(place);
  useLayoutEffect(() => {
    if (inSight.current) return draw();
    const timer = setTimeout(draw, outOfSightMs);
    return () => clearTimeout(timer);
  }, of);
}

/** Whether an element is in sight, as far as is known; told by the browser, since asking would lay the page out anew. */
function useInSight(place: MutableRef<HTMLElement | null>): MutableRef<boolean> {
  const inSight = useRef(true);
  useLayoutEffect(() => {
    const observer = new IntersectionObserver((entries) => {
      inSight.current = entries.at(-1)!.isIntersecting;
    });
    observer.observe(place.current!);
    return () => observer.disconnect();
  }, []);
  return inSight;
}
