import type { First } from '../hub/contract/index.ts';
import { ask } from './ask.ts';

declare global {
  interface Window {
    /** The hub's answer to `/api/first`, asked for by early.ts before the page was here; used once. */
    early?: Promise<Response> | undefined;
  }
}

/** Who we are and what is to do, in one answer: the one that early.ts asked for, or a new one. */
export async function askFirst(): Promise<First> {
  const { early } = window;
  window.early = undefined;
  const response = await early?.catch(() => undefined);
  if (response?.ok) {
    const first: First | undefined = await response.json().catch(() => undefined);
    if (first !== undefined) return first;
  }
  return ask<First>('/api/first');
}
