import type {
  ChangeLoss,
  EnterLoss,
  LossHistory,
  LossOffers,
  SayQuiet,
} from '../../hub/contract/index.ts';
import { ask, Refusal } from '../ask.ts';
import { signInNeeded } from '../state.ts';

// What a tap on the page of losses asks the hub to do. Nothing changes before it has answered.

async function sent<Shape>(path: string, command: unknown, method: 'POST' | 'PATCH' = 'POST') {
  try {
    return await ask<Shape>(path, command, method);
  } catch (error) {
    if (error instanceof Refusal && error.status === 401) signInNeeded.value = true;
    throw error;
  }
}

/** @throws Refusal with a sentence for the screen; of status 409 where a lot may tell the same */
export const enterLoss = (loss: EnterLoss) => sent<LossHistory>('/api/losses', loss);

/** @throws Refusal with a sentence for the screen */
export const changeLoss = (id: string, change: ChangeLoss) =>
  sent<LossHistory>(`/api/losses/${encodeURIComponent(id)}`, change, 'PATCH');

/** @throws Refusal with a sentence for the screen */
export const sayQuiet = (said: SayQuiet) => sent<LossOffers>('/api/losses/quiet-weeks', said);
