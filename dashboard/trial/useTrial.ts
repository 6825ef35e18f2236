import { useCallback, useEffect, useState } from 'preact/hooks';
import type { Trial } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';

const BETWEEN = 400; // ms; ours: a trial takes some seconds

/** A trial as it goes on, asked for until it is over. */
export function useTrial() {
  const [id, setId] = useState<string | null>(null);
  const [trial, setTrial] = useState<Trial | null>(null);
  const [failed, setFailed] = useState('');
  const follow = useCallback((next: string | null, known: Trial | null = null) => {
    setId(next);
    setTrial(known);
    setFailed('');
  }, []);
  useEffect(() => {
    if (id === null) return;
    let wanted = true;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const get = async () => {
      try {
        const now = await ask<Trial>(`/api/trials/${id}`);
        if (!wanted) return;
        setTrial(now);
        if (now.state === 'running') timer = setTimeout(get, BETWEEN);
      } catch (error) {
        if (wanted) setFailed(error instanceof Error ? error.message : String(error));
      }
    };
    get();
    return () => {
      wanted = false;
      clearTimeout(timer);
    };
  }, [id]);
  return { trial, follow, failed };
}
