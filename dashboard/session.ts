import { batch } from '@preact/signals';
import type { Who } from '../hub/contract/index.ts';
import { ask } from './ask.ts';
import { forget, kept } from './keep.ts';
import { forgetKnown } from './queue/index.ts';
import * as state from './state.ts';

// Whose browser this is. What was kept of the farm is only for whom it was told to; what waits to be sent
// stays, out of sight, until the same person is here again.

const WANTED = 'dewpost sign out';

/** Nothing of the farm stays readable here, on the screen or behind it. */
export async function forgetAll(): Promise<void> {
  batch(() => {
    state.farm.value = null;
    state.today.value = null;
    state.strips.value = null;
    state.ended.value = [];
    state.probes.value = null;
    state.strangers.value = [];
    state.answered.value = null;
    state.signInNeeded.value = true;
  });
  forget();
  await forgetKnown();
}

/** What was kept for somebody else goes. */
export async function onlyFor({ name, open }: Who): Promise<void> {
  if (kept()?.who.name !== name || (name === null && !open)) forget();
  await forgetKnown(open || name !== null ? { name } : undefined);
}

/** Somebody signed out while the hub was out of reach: it is told as soon as it is back. */
export const wantsOut = (): boolean => localStorage.getItem(WANTED) !== null;
export const wantOut = (how: string) => localStorage.setItem(WANTED, how);

/** @throws Refusal while the hub does not answer */
export async function endSession(): Promise<void> {
  const how = localStorage.getItem(WANTED) ?? '/api/sign-out';
  await ask(how, {}).catch((error: { readonly status?: number | null }) => {
    if (error.status !== 401) throw error; // 401: it had ended already
  });
  localStorage.removeItem(WANTED);
}
