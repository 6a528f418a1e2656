import { type ReactNode, useRef } from 'react';

/** A summary that opens a small panel over the page; leaving it or Escape closes it. */
export function Popout({
  words,
  className,
  children,
}: Readonly<{ words: string; className: string; children: ReactNode }>) {
  const details = useRef<HTMLDetailsElement>(null);
  const close = () => {
    if (details.current !== null) details.current.open = false;
  };
  return (
    <details
      ref={details}
      className={className}
      onBlur={event => {
        if (!event.currentTarget.contains(event.relatedTarget)) close();
      }}
      onKeyDown={event => {
        if (event.key !== 'Escape') return;
        close();
        details.current?.querySelector('summary')?.focus();
      }}
    >
      <summary>{words}</summary>
      {children}
    </details>
  );
}
