import { type PickingSpeed, pickingSpeed } from '../../rules/money/index.ts';
import type { CutBack, FarmPlace, PatchTerms } from '../contract/index.ts';
import type { Farm } from '../farm/index.ts';
import type { Picked } from '../picks/index.ts';

// Figures to begin with, until the grower tells others. Ours, from no source, but for the rot: the
// shares of the method's worked example.
const USUAL = {
  minutesPerKg: 6, // ten kilograms an hour
  minutesPerPicking: 15, // to walk there, and to weigh
  rotWet: 0.1,
  rotDry: 0.02,
  cleanMinutes: 60,
  cutMinutes: 120,
  hygiene: 0, // money
  nextYear: 0, // money
  lostShare: 0.05,
} as const satisfies Partial<Record<keyof PatchTerms, number>>;

/** Each day somebody looks after what hangs on in autumn, when the patch could be cleared instead. Ours. */
const MINUTES_A_DAY = 5;

const UNITS: Readonly<Record<keyof typeof USUAL, string>> = {
  ...{ minutesPerKg: 'min', minutesPerPicking: 'min' },
  ...{ rotWet: 'probability', rotDry: 'probability', cleanMinutes: 'min' },
  ...{ cutMinutes: 'min', hygiene: 'money', nextYear: 'money', lostShare: 'probability' },
};

export type Figures = Record<keyof typeof USUAL, number> & {
  readonly price: number | null;
  readonly wage: number;
  readonly perDay: number;
  /** The same in autumn, whatever the time of year. */
  readonly perAutumnDay: number;
  /** The same as without cleaning until the grower tells how much less rots then. */
  readonly cleanRotWet: number;
  readonly cleanRotDry: number;
  readonly assumed: CutBack['assumed'];
  /** How fast this patch is picked, by its own pickings; null with too few of them. */
  readonly speed: PickingSpeed | null;
};

/**
 * Every figure a plan rests on, the grower's own first, each with where it is from. How fast it is
 * picked is told by this season's pickings, once there are enough of them.
 */
export function figuresOf(
  terms: PatchTerms,
  farm: Farm,
  place: FarmPlace,
  autumn: boolean,
  picked: readonly Picked[] = [],
): Figures {
  const { wage } = farm.file.farm;
  const filed = farm.crop(place.crop)?.price ?? null;
  const price = terms.price ?? filed;
  const assumed: CutBack['assumed'] = [
    {
      ...{ what: 'price', value: price, unit: 'money' },
      from: terms.price !== undefined ? 'told' : 'farm-file',
    },
    { what: 'wage', value: wage, unit: 'money', from: 'farm-file' },
  ];
  const perAutumnDay = terms.perDay ?? (MINUTES_A_DAY * wage) / 60;
  const perDay = terms.perDay ?? (autumn ? perAutumnDay : 0);
  const from = terms.perDay === undefined ? 'usual' : 'told';
  assumed.push({ what: 'perDay', value: perDay, unit: 'money', from });
  const walk = terms.minutesPerPicking ?? USUAL.minutesPerPicking;
  const speed = pickingSpeed(
    picked.map(({ kilograms, minutes, walk: told, pickers }) => ({
      ...{ kilograms, minutes, walk: Math.min(minutes, told ?? walk * pickers) },
    })),
  );
  const figures: Record<string, number> = {};
  for (const [what, usual] of Object.entries(USUAL)) {
    const own = terms[what as keyof typeof USUAL];
    const measured = what === 'minutesPerKg' ? (speed?.minutesPerKilogram ?? null) : null;
    const value = measured ?? own ?? usual;
    figures[what] = value;
    const unit = UNITS[what as keyof typeof USUAL];
    const from = measured !== null ? 'measured' : own === undefined ? 'usual' : 'told';
    assumed.push({ what, value, unit, from });
  }
  const known = figures as Record<keyof typeof USUAL, number>;
  return {
    ...{ ...known, price, wage, perDay, perAutumnDay, assumed, speed },
    cleanRotWet: terms.cleanRotWet ?? known.rotWet,
    cleanRotDry: terms.cleanRotDry ?? known.rotDry,
  };
}
