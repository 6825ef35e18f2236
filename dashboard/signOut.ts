import type { Who } from '../hub/contract/index.ts';
import { ask, Refusal } from './ask.ts';
import { connect, disconnect } from './live.ts';
import { sendWaiting } from './queue/index.ts';
import { endSession, forgetAll, wantOut } from './session.ts';
import * as state from './state.ts';

/**
 * Ends the session here: nothing of the farm stays in this browser. What waits is sent first, where
 * the hub answers; without a link the hub is told as soon as there is one.
 */
export async function signOut(how = '/api/sign-out'): Promise<void> {
  if (state.link.value.state === 'up') await sendWaiting().catch(() => undefined);
  wantOut(how);
  try {
    await endSession();
  } catch (error) {
    if (!(error instanceof Refusal) || error.status !== null) throw error;
    // Nobody who opens this browser now is taken for who was here.
    disconnect();
    await forgetAll();
    state.who.value = null;
    connect();
    return;
  }
  disconnect();
  await forgetAll();
  state.who.value = await ask<Who>('/api/who');
}
