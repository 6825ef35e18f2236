import type { EnterLoss, LossLook, LossOffers, LossUnit } from '../../hub/contract/index.ts';

export type Amount = { readonly amount: number; readonly unit: LossUnit };
export type OfferedPlace = LossOffers['places'][number];

/** What somebody may say besides the three taps, as it is typed. */
export type MoreSaid = {
  readonly day: string;
  readonly ofAmount: string;
  readonly ofUnit: 'kg' | 'trays';
  readonly batch: string;
  readonly note: string;
};
export const noMore: MoreSaid = { day: '', ofAmount: '', ofUnit: 'kg', batch: '', note: '' };

const SHARES = [5, 10, 25, 50, 100]; // %
const TRAYS = [1, 2, 5]; // the smallest counts first, as far as they stand there

/** Big buttons for how much: trays where trays stand, and shares of what stood there. */
export const amountsFor = ({ trays, kind }: Pick<OfferedPlace, 'trays' | 'kind'>): Amount[] => [
  ...(kind === 'tunnel' && trays !== null
    ? TRAYS.filter((amount) => amount < trays).map((amount) => ({ amount, unit: 'trays' as const }))
    : []),
  ...SHARES.map((amount) => ({ amount, unit: 'share' as const })),
];

/** The entry that is sent; of how many trays it is a part comes from the farm file where nobody says. */
export function entryOf(
  place: OfferedPlace,
  crop: string,
  how: Amount,
  look: LossLook,
  more: MoreSaid,
  ofAmount: number | null,
): EnterLoss {
  const standing = place.crops.find((one) => one.crop === crop)?.standing ?? false;
  const told = ofAmount === null ? null : { amount: ofAmount, unit: more.ofUnit };
  const ofTrays =
    how.unit !== 'kg' && standing && place.trays !== null && place.trays > 0
      ? { amount: place.trays, unit: 'trays' as const }
      : null;
  const of =
    told ?? (how.unit === 'trays' && ofTrays && how.amount > ofTrays.amount ? null : ofTrays);
  return {
    ...{ place: place.place, crop, ...how, look },
    ...(of === null ? {} : { of }),
    ...(more.day === '' ? {} : { day: more.day }),
    ...(more.batch.trim() === '' ? {} : { batch: more.batch.trim() }),
    ...(more.note.trim() === '' ? {} : { note: more.note.trim() }),
  };
}
