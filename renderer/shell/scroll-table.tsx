import type { ReactNode } from 'react';

/** A table that may be wider than its place; the keyboard can scroll it. */
export function ScrollTable({ label, children }: Readonly<{ label: string; children: ReactNode }>) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard (WCAG 2.1.1)
    <section className="table-frame" aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
