import type { ComponentChildren, VNode } from 'preact';

/** A wide table in a narrow window: it scrolls sideways by itself, by keyboard too, and the page does not. */
export function Scroll({ label, children }: { label: string; children: ComponentChildren }): VNode {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard (WCAG 2.1.1)
    <section class="scroll" aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
