import { signal } from '@preact/signals';
import type {
  ChangeLot,
  CorrectiveAction,
  EnterAction,
  EnterCheck,
  FoodClocks,
  LotClass,
  LotHistory,
  ProbeCheck,
  PutAway,
  SetFoodClock,
} from '../../hub/contract/index.ts';
import { ask, Refusal } from '../ask.ts';
import { refresh } from '../live.ts';
import { signInNeeded, who } from '../state.ts';

// What a tap on the cool room's page asks the hub to do. Nothing changes before it has answered.

/** The name somebody gave on this screen, so that it is typed once. */
const given = signal('');
export const myName = () => given.value || (who.value?.name ?? '');
export const nameMe = (name: string) => {
  given.value = name;
};

async function sent<Shape>(path: string, command: unknown, method: 'POST' | 'PATCH' = 'POST') {
  try {
    return await ask<Shape>(path, command, method);
  } catch (error) {
    if (error instanceof Refusal && error.status === 401) signInNeeded.value = true;
    throw error;
  }
}

/** @throws Refusal with a sentence for the screen; of status 409 where a warning has to be heeded */
export async function putAway(lot: PutAway): Promise<LotHistory> {
  const stored = await sent<LotHistory>('/api/lots', lot);
  refresh();
  return stored;
}

/** @throws Refusal with a sentence for the screen */
export async function changeLot(id: string, change: ChangeLot): Promise<LotHistory> {
  const changed = await sent<LotHistory>(`/api/lots/${encodeURIComponent(id)}`, change, 'PATCH');
  refresh();
  return changed;
}

/** @throws Refusal with a sentence for the screen */
export const enterAction = (room: string, action: EnterAction) =>
  sent<CorrectiveAction[]>(`/api/cool-rooms/${encodeURIComponent(room)}/actions`, action);

/** @throws Refusal with a sentence for the screen */
export const enterCheck = (probe: string, check: EnterCheck) =>
  sent<ProbeCheck[]>(`/api/probes/${encodeURIComponent(probe)}/checks`, check);

/** @throws Refusal with a sentence for the screen */
export const setFoodClock = (of: LotClass, clock: SetFoodClock) =>
  sent<FoodClocks>(`/api/food-clocks/${of}`, clock);
