import { useState } from 'preact/hooks';
import type { ChangeWant } from '../../hub/contract/index.ts';
import { words } from '../words.ts';
import { changeWant } from './commands.ts';

/** A change of what is wanted, on its way: whether it is, and what became of it. */
export function useChange(onStored: (sentence: string) => void) {
  const [sending, setSending] = useState(false);
  const [failed, setFailed] = useState('');
  /** @returns whether the hub has kept it. A tap on a slow link is not sent twice. */
  const send = async (change: ChangeWant, said: string): Promise<boolean> => {
    if (sending) return false;
    setSending(true);
    setFailed('');
    try {
      await changeWant(change);
      onStored(said);
      return true;
    } catch (error) {
      const sentence = error instanceof Error ? error.message : String(error);
      setFailed(words.planning.notStored(sentence));
      return false;
    } finally {
      setSending(false);
    }
  };
  return { sending, failed, send };
}
