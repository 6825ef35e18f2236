import { useCallback, useEffect, useState } from 'preact/hooks';
import { ask } from '../ask.ts';

/**
 * What the hub answers at an address; asked anew when `since` changes. What was there before stays
 * on the screen until the new answer is in.
 */
export function useAsked<Shape>(address: string, since: unknown) {
  const [answer, setAnswer] = useState<Shape | null>(null);
  const [fault, setFault] = useState<string | undefined>();
  const [tries, setTries] = useState(0);
  const again = useCallback(() => setTries((before) => before + 1), []);
  useEffect(() => {
    let wanted = true;
    ask<Shape>(address).then(
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
  }, [address, since, tries]);
  return { answer, fault, again };
}
