import type { BatchEarnings } from '../../rules/money/index.ts';
import type { WorthGap, WorthUnit, YearSeason } from '../contract/index.ts';

export type Figures = WorthUnit['figures'];
export type Figure = Figures[keyof Figures];

/** A batch that has ended, or a picking: what money is reckoned for. Times in ms, weights in kg. */
export type Unit = {
  readonly id: string;
  readonly of: 'batches' | 'pickings';
  /** The batch it was sown with: parts of one are no proof of their own. */
  readonly root: string;
  readonly crop: string;
  readonly place: string;
  readonly season: YearSeason;
  readonly from: number;
  readonly to: number;
  readonly figures: Figures;
  readonly missing: readonly WorthGap[];
  /** Lost at the bench and in the store together; null where either is not known. */
  readonly lost: number | null;
  readonly minutes: number | null;
  /** Money is known, hours perhaps not. */
  readonly earnings: BatchEarnings | null;
};

export const written = (value: number): Figure => ({ value, from: 'written' });
export const unknown: Figure = { value: null, from: 'unknown' };
export const notNeeded: Figure = { value: null, from: 'not-needed' };
/** What somebody wrote down, else so much of what the farm file tells. */
export function figureOf(own: number | null, filed: number | undefined, times = 1): Figure {
  if (own !== null) return written(own);
  return filed === undefined ? unknown : { value: filed * times, from: 'farm-file' };
}

/** One figure of several. @param join how their values come to one; not asked when one is unknown */
export function joined(figures: readonly Figure[], join: (values: number[]) => number): Figure {
  const told = figures.filter(({ from }) => from !== 'not-needed');
  if (told.length === 0) return notNeeded;
  const values = told.flatMap(({ value }) => value ?? []);
  if (values.length < told.length) return unknown;
  const froms = new Set(told.map(({ from }) => from));
  const [only] = froms;
  return {
    value: join(values),
    from: froms.size === 1 && only !== undefined ? only : 'both',
  };
}
export const sum = (values: readonly number[]) => values.reduce((all, one) => all + one, 0);
