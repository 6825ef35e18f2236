import { createChance } from './seed.ts';

// When the made-up grower sows what, and where; weekdays by the farm's calendar.

export type Sowing = {
  readonly crop: string;
  /** 0 is Monday. */
  readonly weekday: number;
  /** Hour of the day by the farm's clock. */
  readonly hour: number;
  readonly trays: number;
  readonly places: readonly string[];
  readonly variety: string | null;
  /** Months (1 to 12) in which it is sown, and every how many weeks. */
  readonly months: readonly number[];
  readonly every: number;
  /** Money for seed and for the rest, a tray. */
  readonly seed: number;
  readonly other: number;
};

const ALL = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12] as const;

export const sowings: readonly Sowing[] = [
  {
    ...{ crop: 'pea-shoots', weekday: 0, hour: 9.5, trays: 8, months: ALL, every: 1 },
    ...{ places: ['hollow-house', 'long-house'], variety: null, seed: 0.9, other: 0.35 },
  },
  {
    ...{ crop: 'salad-leaves', weekday: 1, hour: 10, trays: 6, months: ALL, every: 2 },
    ...{ places: ['sun-house', 'hollow-house'], variety: 'Harbour mix', seed: 0.6, other: 0.4 },
  },
  {
    ...{ crop: 'basil', weekday: 2, hour: 11, trays: 6, months: [3, 4, 5, 6, 7, 8, 9], every: 1 },
    ...{ places: ['long-house', 'sun-house'], variety: 'Sweet', seed: 0.45, other: 0.4 },
  },
  {
    ...{ crop: 'radish-shoots', weekday: 3, hour: 17, trays: 6, months: ALL, every: 1 },
    ...{
      places: ['sun-house', 'long-house', 'hollow-house'],
      variety: null,
      seed: 0.7,
      other: 0.3,
    },
  },
];

/** Chance of a batch's own: the same whoever asks. */
export const luckOf = (seed: number, id: string) => createChance(seed, `batch ${id}`);
