import { useState } from 'preact/hooks';
import { words } from '../words.ts';

/** One command at a time, and the hub's sentence when it was refused. */
export function useSending() {
  const [sending, setSending] = useState(false);
  const [failed, setFailed] = useState('');
  const send = async (work: () => Promise<unknown>) => {
    if (sending) return;
    setSending(true);
    setFailed('');
    try {
      await work();
    } catch (error) {
      setFailed(words.setUp.failed(error instanceof Error ? error.message : String(error)));
    } finally {
      setSending(false);
    }
  };
  return { sending, failed, send };
}
