import type { ChangePick, EnterPick, PickHistory } from '../../hub/contract/index.ts';
import { ask, Refusal } from '../ask.ts';
import { refresh } from '../live.ts';
import { signInNeeded } from '../state.ts';

// What a tap on the pages of pickings asks the hub to do. Nothing changes before it has answered.

async function sent(path: string, command: unknown, method: 'POST' | 'PATCH') {
  try {
    const pick = await ask<PickHistory>(path, command, method);
    refresh(); // the planner of a patch goes by its pickings
    return pick;
  } catch (error) {
    if (error instanceof Refusal && error.status === 401) signInNeeded.value = true;
    throw error;
  }
}

/** @throws Refusal with a sentence for the screen */
export const enterPick = (pick: EnterPick) => sent('/api/picks', pick, 'POST');

/** @throws Refusal with a sentence for the screen */
export const changePick = (id: string, change: ChangePick) =>
  sent(`/api/picks/${encodeURIComponent(id)}`, change, 'PATCH');
