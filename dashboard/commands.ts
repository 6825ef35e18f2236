import type {
  AnswerTask,
  MadeCode,
  People,
  PlaceProbe,
  Role,
  Task,
} from '../hub/contract/index.ts';
import { ask, Refusal } from './ask.ts';
import { connect, refreshProbes, takeAnswer } from './live.ts';
import * as state from './state.ts';

// What a tap asks the hub to do. Nothing on the screen changes before the hub has answered.

/** @throws Refusal with a sentence for the screen */
export async function answerTask(id: string, answer: AnswerTask): Promise<void> {
  takeAnswer(await sent<Task>(`/api/tasks/${encodeURIComponent(id)}/answer`, answer));
}

/** @throws Refusal with a sentence for the screen */
export async function placeProbe(id: string, where: PlaceProbe): Promise<void> {
  await sent(`/api/probes/${encodeURIComponent(id)}/place`, where);
  await refreshProbes();
}

/** @throws Refusal with a sentence for the screen */
export async function tellVents(place: string, state: 'open' | 'shut'): Promise<void> {
  await sent(`/api/places/${encodeURIComponent(place)}/vents`, { state });
}

/** @throws Refusal with a sentence for the screen */
export async function undoVents(place: string): Promise<void> {
  await sent(`/api/places/${encodeURIComponent(place)}/vents/undo`, {});
}

/** @throws Refusal with a sentence for the screen */
export async function signIn(name: string, password: string): Promise<void> {
  await ask('/api/sign-in', { name, password });
  await connect();
}

/** @throws Refusal with a sentence for the screen */
export async function claim(code: string, name: string, password: string): Promise<void> {
  await ask('/api/claim', { code, name, password });
  await connect();
}

/** @throws Refusal with a sentence for the screen */
export async function join(code: string, name: string, password: string): Promise<void> {
  await ask('/api/join', { code, name, password });
  await connect();
}

// People: each @throws Refusal with a sentence for the screen.
const person = (name: string, what: string) => `/api/people/${encodeURIComponent(name)}/${what}`;
export const inviteSomebody = (role: Role) => sent<MadeCode>('/api/people/codes', { role });
export const newPasswordCode = (name: string) => sent<MadeCode>(person(name, 'code'), {});
export const removePerson = (name: string) => sent<People>(person(name, 'remove'), {});
export const takeCodeBack = (id: string) => sent<People>(`/api/people/codes/${id}/drop`, {});
export const changePassword = (password: string, newPassword: string) =>
  sent<void>('/api/password', { password, newPassword });

async function sent<Shape>(path: string, command: unknown): Promise<Shape> {
  try {
    return await ask<Shape>(path, command);
  } catch (error) {
    if (error instanceof Refusal && error.status === 401) state.signInNeeded.value = true;
    throw error;
  }
}
