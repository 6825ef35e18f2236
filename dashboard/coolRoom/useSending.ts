import { useState } from 'preact/hooks';
import { Refusal } from '../ask.ts';
import { words } from '../words.ts';

/** A command on its way: whether it is, and why it was not stored. */
export function useSending() {
  const [sending, setSending] = useState(false);
  const [failed, setFailed] = useState('');
  /** @returns what the hub answered; undefined when it refused. A tap on a slow link is not sent twice. */
  const send = async <Shape>(
    command: () => Promise<Shape>,
    onRefusal: (refusal: Refusal) => boolean = () => false,
  ): Promise<Shape | undefined> => {
    if (sending) return undefined;
    setSending(true);
    setFailed('');
    try {
      return await command();
    } catch (error) {
      if (!(error instanceof Refusal && onRefusal(error)))
        setFailed(words.lots.failed(error instanceof Error ? error.message : String(error)));
      return undefined;
    } finally {
      setSending(false);
    }
  };
  return { sending, failed, send };
}

/** `1,5` and `1.5` are the same weight; null for what is no number. */
export function numberOf(text: string): number | null {
  const plain = text.trim().replace(',', '.').replace('−', '-');
  const value = Number(plain);
  return plain === '' || !Number.isFinite(value) ? null : value;
}
