import type { EventData } from '../hub/contract/index.ts';
import { setClock } from './clock.ts';
import { store } from './state.ts';

/** The hub is there: what time it is for it, and whether it can keep things. */
export function takePulse({ now, speed, store: trouble }: EventData['pulse']): void {
  setClock(Date.parse(now), speed);
  store.value = trouble;
}
