import type { Pick } from '../picks/index.ts';
import { csv } from '../record/index.ts';
import { pickColumns } from '../words/index.ts';
import { iso } from './present.ts';

/** Pickings as a file, the oldest first: what `dewpost import` takes in again. */
export const pickCsv = (picks: readonly Pick[]): string =>
  csv(
    Object.values(pickColumns),
    picks.map(({ at, place, crop, kg, lostKg, minutes, walkMinutes, pickers, price, note }) => [
      iso(at),
      ...[place, crop, kg, lostKg, minutes, walkMinutes, pickers, price, note],
    ]),
  );
