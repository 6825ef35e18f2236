import type { First } from '../hub/contract/index.ts';
import { ask } from './ask.ts';
import { takeEarly } from './earlyAnswer.ts';

/** Who we are and what is to do, in one answer: the one that early.ts asked for, or a new one. */
export const askFirst = async (): Promise<First> =>
  (await takeEarly()) ?? (await ask<First>('/api/first'));
