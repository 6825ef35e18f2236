import type { Mapping } from '../../../hub/contract/index.ts';
import { readMessage } from '../../../hub/intake/forms/index.ts';
import type { Message } from '../../../hub/intake/index.ts';

export const RECEIVED = Date.UTC(2026, 4, 10, 9);

export const message = (topic: string, payload: string | Uint8Array): Message => ({
  topic,
  payload: typeof payload === 'string' ? Buffer.from(payload) : payload,
  receivedAt: RECEIVED,
  again: false,
});

/** What a message comes to. Anything but text and bytes is sent as JSON. */
export const read = (topic: string, payload: unknown, mappings: readonly Mapping[] = []) =>
  readMessage(
    message(
      topic,
      typeof payload === 'string' || payload instanceof Uint8Array
        ? payload
        : JSON.stringify(payload),
    ),
    mappings,
  );

/** Why a message, or the first bad part of it, was refused. */
export const refusalOf = (...given: Parameters<typeof read>) => {
  const { readings, refused } = read(...given);
  return { readings: readings.length, ...refused[0] };
};
