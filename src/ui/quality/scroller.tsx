import type { ReactNode } from 'react';

/** A scroll area for a long table. */
export function Scroller({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="book__scroll" aria-label={name} tabIndex={0}>
      {children}
    </section>
  );
}
