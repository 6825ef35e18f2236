import type { LotUse } from '../contract/index.ts';
import type { Lot } from '../lots/index.ts';
import type { Loss } from './loss.ts';

/** Part of a lot that was thrown out: a loss of the cool room, kept with the lot. */
export type ThrownOut = {
  readonly id: string;
  readonly lot: string;
  readonly place: string;
  readonly crop: string;
  readonly kg: number;
  readonly of: number;
  readonly at: number;
  readonly day: string;
  readonly entry: number;
  readonly by: string;
  readonly note: string | null;
};

const LOST: LotUse = 'thrown-out';

/** What lots were thrown out, each part once. */
export function thrownOut(lots: readonly Lot[], dayOf: (t: number) => string): ThrownOut[] {
  return lots
    .filter(({ state }) => state !== 'withdrawn')
    .flatMap((lot) =>
      lot.taken
        .filter(({ how }) => how === LOST)
        .map(({ entry, kg, at, by, who, note }) => ({
          ...{ id: `${lot.id}-${entry}`, lot: lot.id, place: placeAt(lot, at), crop: lot.crop },
          ...{ kg, of: lot.kg, at, day: dayOf(at), entry, by: by ?? who, note },
        })),
    );
}

/** The room it lay in then. */
const placeAt = ({ stays, place }: Lot, at: number) =>
  stays.findLast(({ from }) => from <= at)?.place ?? place;

const NEAR = 86_400_000; // ms: entered a day later is still the same. Ours

/**
 * The part of a lot that tells the same as a loss somebody entered in a cool room: the same crop in
 * the same room within a day. It is then counted once, with the lot.
 */
export function sameAs(
  loss: Pick<Loss, 'place' | 'crop' | 'day'>,
  parts: readonly ThrownOut[],
): ThrownOut | undefined {
  return parts.find(
    ({ place, crop, day }) =>
      place === loss.place &&
      crop === loss.crop &&
      Math.abs(Date.parse(day) - Date.parse(loss.day)) <= NEAR,
  );
}
