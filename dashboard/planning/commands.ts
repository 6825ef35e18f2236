import type {
  CalendarFeed,
  ChangeWant,
  PlannedSowing,
  SowingPlanShown,
} from '../../hub/contract/index.ts';
import { ask, Refusal } from '../ask.ts';
import { refresh } from '../live.ts';
import { signInNeeded } from '../state.ts';

// What a tap on the sowing plan asks the hub to do. Nothing changes before it has answered.

async function sent<Shape>(path: string, command: unknown) {
  try {
    return await ask<Shape>(path, command);
  } catch (error) {
    if (error instanceof Refusal && error.status === 401) signInNeeded.value = true;
    throw error;
  }
}

/** @throws Refusal with a sentence for the screen */
export async function changeWant(change: ChangeWant): Promise<void> {
  await sent<SowingPlanShown>('/api/wants', change);
  refresh();
}

/** @throws Refusal with a sentence for the screen */
export const setCalendar = (to: 'renew' | 'stop') => sent<CalendarFeed>('/api/calendar', { to });

/** The trays are sown: they go on as a batch, meant for their delivery. @throws as the others */
export async function enterBatch(sowing: PlannedSowing): Promise<void> {
  const { crop, trays, place, delivery } = sowing;
  await sent('/api/batches', { crop, trays, place, meantFor: delivery });
  refresh();
}
