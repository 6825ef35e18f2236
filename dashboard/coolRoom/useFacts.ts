import { useCallback, useEffect, useState } from 'preact/hooks';
import { ask } from '../ask.ts';
import { looks, returns } from '../state.ts';

const BETWEEN = 20_000; // ms of a wall clock; ours: a demonstration looks many times a second

/** What the hub says at an address; asked again after looks, now and then. null asks for nothing. */
export function useFacts<Shape>(path: string | null) {
  const [facts, setFacts] = useState<Shape | null>(null);
  const [fault, setFault] = useState<string | undefined>();
  const [tries, setTries] = useState(0);
  const again = useCallback(() => setTries((before) => before + 1), []);
  const back = returns.value;
  useEffect(() => {
    setFacts(null);
    setFault(undefined);
  }, [path]);
  useEffect(() => {
    if (path === null) return;
    let wanted = true;
    const get = () =>
      ask<Shape>(path).then(
        (got) => {
          if (!wanted) return;
          setFacts(got);
          setFault(undefined);
        },
        (error: unknown) => wanted && setFault(error instanceof Error ? error.message : `${error}`),
      );
    get();
    let seen = looks.peek();
    const timer = setInterval(() => {
      if (looks.peek() === seen || document.hidden) return;
      seen = looks.peek();
      get();
    }, BETWEEN);
    return () => {
      wanted = false;
      clearInterval(timer);
    };
  }, [path, tries, back]);
  return { facts, fault, again };
}
