import type { Evidence } from '../answer.ts';
import { type LotLeft, lotLife } from '../cooler/index.ts';
import { by, type How, put, told, when } from './how.ts';
import { fact } from './say.ts';
import type { LotNow } from './snapshot.ts';
import { ENTERED } from './sources.ts';

// What two rules say of one lot.

export const DAY = 86_400_000; // ms
export const KEEPING =
  'the Q10 rule, USDA Agriculture Handbook 66 (2016); days as in the storage table or told in the farm file';

/** @throws RangeError as lotLife */
export const lifeOf = ({ keeps, history, at, outdoors }: LotNow): LotLeft =>
  lotLife(keeps, history, { at, outdoors });

export const lifeHow = (lot: LotNow, { knownHours, unknownHours }: LotLeft): How =>
  by(
    'lotLife',
    put('keeps-least', lot.keeps.life?.from ?? null, 'd'),
    put('keeps-most', lot.keeps.life?.to ?? null, 'd'),
    put('keeps-at', lot.keeps.reference, '°C'),
    put('q10', lot.keeps.q10),
    put('hours-known', knownHours, 'h'),
    put('lot-hours-not-known', unknownHours, 'h'),
    put('lies-at', lot.at, '°C'),
    put('outdoors-mean', lot.outdoors, '°C'),
    when('stored-at', lot.storedAt),
  );

/** Which lot it is: said first, so that a title can name it. */
export const lotFacts = ({ crop, kilograms }: LotNow): readonly Evidence[] => [
  fact('lot-crop', crop, '', null, ENTERED, told),
  fact('lot-weight', kilograms, 'kg', null, ENTERED, told),
];

/** Its worth, where somebody told a price. */
export const worthOf = ({ kilograms, pricePerKilogram }: LotNow, drop: number) => ({
  amount: kilograms * drop,
  money: pricePerKilogram === null ? null : kilograms * pricePerKilogram * drop,
});
