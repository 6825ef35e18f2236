import { alarmsOut } from './alarmsOut.ts';
import { commandKeys } from './commandKeys.ts';
import { first } from './first.ts';
import { foretold } from './foretold.ts';
import { held } from './held.ts';
import { inbox } from './inbox.ts';
import { journalByKind } from './journalByKind.ts';
import { people } from './people.ts';
import { stations } from './stations.ts';

/**
 * Every change of the store's shape, in order. Steps are only ever added at the end: a store of any
 * age is brought up to date by those it has not had. `user_version` counts them.
 */
export const steps: readonly string[] = [
  first,
  inbox,
  held,
  people,
  alarmsOut,
  foretold,
  journalByKind,
  stations,
  commandKeys,
];
