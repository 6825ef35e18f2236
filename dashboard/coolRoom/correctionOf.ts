import type { ChangeLot, Cooling, Lot, LotClass } from '../../hub/contract/index.ts';
import { fromTheWall, onTheWall } from '../onTheWall.ts';
import { keptOf, typedOf } from '../typed.ts';

/** What a lot is said to be, as the fields of a form show it; '' is not told. */
export type SaidOfLot = {
  readonly crop: string;
  readonly kg: string;
  readonly place: string;
  readonly from: string;
  readonly harvested: string;
  readonly stored: string;
  readonly cooled: Cooling | '';
  readonly of: LotClass | '';
  readonly price: string;
};

export const saidOf = (lot: Lot, zone: string): SaidOfLot => ({
  crop: lot.crop,
  kg: typedOf(lot.kg, 'kg'),
  place: lot.firstPlace,
  from: lot.from ?? '',
  harvested: onTheWall(lot.harvestedAt, zone),
  stored: onTheWall(lot.storedAt, zone),
  cooled: lot.cooled ?? '',
  of: lot.saidClass ?? '',
  price: typedOf(lot.price, '/kg'),
});

const toldOr = <Value>(text: Value | ''): Value | null => (text === '' ? null : text);

/** Only what differs; a number that cannot be read is left as it was. */
export function correctionOf(
  before: SaidOfLot,
  said: SaidOfLot,
  zone: string,
): NonNullable<ChangeLot['correct']> {
  const differs = (name: keyof SaidOfLot) => said[name] !== before[name];
  const kg = keptOf(said.kg, 'kg');
  const price = keptOf(said.price, '/kg');
  return {
    ...(differs('crop') ? { crop: said.crop } : {}),
    ...(differs('kg') && kg !== null ? { kg } : {}),
    ...(differs('place') ? { place: said.place } : {}),
    ...(differs('from') ? { from: toldOr(said.from) } : {}),
    ...(differs('harvested')
      ? { harvestedAt: said.harvested === '' ? null : fromTheWall(said.harvested, zone) }
      : {}),
    ...(differs('stored') && said.stored !== ''
      ? { storedAt: fromTheWall(said.stored, zone) }
      : {}),
    ...(differs('cooled') ? { cooled: toldOr(said.cooled) } : {}),
    ...(differs('of') ? { class: toldOr(said.of) } : {}),
    ...(differs('price') && (price !== null || said.price === '') ? { price } : {}),
  };
}
