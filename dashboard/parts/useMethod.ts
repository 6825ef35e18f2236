import { useCallback, useEffect, useState } from 'preact/hooks';
import type { Method } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';
import { returns } from '../state.ts';

/** What the hub has to say of a formula; asked for again for another one. null asks for nothing. */
export function useMethod(name: string | null) {
  const [method, setMethod] = useState<Method | null>(null);
  const [fault, setFault] = useState<string | undefined>();
  const [tries, setTries] = useState(0);
  const again = useCallback(() => setTries((before) => before + 1), []);
  const back = returns.value;
  useEffect(() => {
    setMethod(null);
    setFault(undefined);
    if (name === null) return;
    let wanted = true;
    ask<Method>(`/api/methods/${encodeURIComponent(name)}`).then(
      (got) => wanted && setMethod(got),
      (error: unknown) => wanted && setFault(error instanceof Error ? error.message : `${error}`),
    );
    return () => {
      wanted = false;
    };
  }, [name, tries, back]);
  return { method, fault, again };
}
