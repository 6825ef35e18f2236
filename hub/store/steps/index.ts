import { first } from './first.ts';
import { inbox } from './inbox.ts';

/**
 * Every change of the store's shape, in order. Steps are only ever added at the end: a store of any
 * age is brought up to date by those it has not had. `user_version` counts them.
 */
export const steps: readonly string[] = [first, inbox];
