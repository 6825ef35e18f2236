import { useCallback, useEffect, useState } from 'preact/hooks';
import type { People } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';
import { returns } from '../state.ts';

/** Who may sign in, asked for when the page is entered. */
export function usePeople() {
  const [people, setPeople] = useState<People | null>(null);
  const [fault, setFault] = useState<string | undefined>();
  const refresh = useCallback(async () => {
    try {
      setPeople(await ask<People>('/api/people'));
      setFault(undefined);
    } catch (error) {
      setFault(error instanceof Error ? error.message : String(error));
    }
  }, []);
  const back = returns.value;
  useEffect(() => {
    refresh();
  }, [refresh, back]);
  return { people, fault, refresh, setPeople };
}
