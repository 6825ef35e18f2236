import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { today } from '../state.ts';
import { words } from '../words.ts';

/** The page's title. Takes the focus when the page is entered, so that a reader hears where it is. */
export function Heading({ title, children }: { title: string; children?: ComponentChildren }) {
  const ref = useRef<HTMLHeadingElement>(null);
  const alarm = today.value?.tasks.some((task) => task.alarm) ?? false;
  useEffect(() => {
    // In a row of tabs the title is all that is seen.
    const first = alarm ? `${words.frame.alarm}: ` : '';
    document.title = `${first}${title} · ${words.product}`;
  }, [title, alarm]);
  useEffect(() => {
    // Not at the first page: a browser starts at the top by itself, with the skip link before all;
    // nor when the same page is drawn anew because its facts have come.
    if (entered !== null && entered !== location.pathname)
      ref.current?.focus({ preventScroll: location.hash !== '' });
    entered = location.pathname;
  }, []);
  return (
    <h1 ref={ref} tabIndex={-1}>
      {children ?? title}
    </h1>
  );
}

/** The page entered last. */
let entered: string | null = null;
