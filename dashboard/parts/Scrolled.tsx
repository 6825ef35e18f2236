import type { ComponentChildren } from 'preact';

/** A wide table that is moved sideways on a narrow screen, by keyboard as well. */
export function Scrolled({ label, children }: { label: string; children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what is moved sideways has to take the focus
    <section class="table-room" aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
