import { useCallback, useEffect, useState } from 'preact/hooks';
import { ask } from '../ask.ts';
import { returns } from '../state.ts';

/**
 * What one address of the hub answers; asked for again when `when` changes, and what was there stays
 * on the screen until the new answer is in. null asks for nothing.
 */
export function useAnswer<Shape>(path: string | null, when: unknown = null) {
  const [answer, setAnswer] = useState<Shape | null>(null);
  const [fault, setFault] = useState<string | undefined>();
  const [tries, setTries] = useState(0);
  const again = useCallback(() => setTries((before) => before + 1), []);
  const back = returns.value;
  useEffect(() => {
    if (path === null) return;
    let wanted = true;
    ask<Shape>(path).then(
      (got) => {
        if (!wanted) return;
        setAnswer(got);
        setFault(undefined);
      },
      (error: unknown) => wanted && setFault(error instanceof Error ? error.message : `${error}`),
    );
    return () => {
      wanted = false;
    };
  }, [path, when, tries, back]);
  return { answer, fault, again, put: setAnswer };
}
