import type { RefObject } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/** The width of an element in CSS pixels, followed as it changes; `before` until it is known. */
export function useWidth<Found extends HTMLElement>(before: number): [RefObject<Found>, number] {
  const ref = useRef<Found>(null);
  const [width, setWidth] = useState(before);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = () => setWidth(Math.max(120, Math.floor(element.clientWidth)));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, width];
}
