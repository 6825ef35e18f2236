import type { Instant } from '../units.ts';

// What is to be sown and cut, as the plan of the coming weeks has it.

/** Trays of one crop to sow in a place, for one delivery. */
export type SowingNow = {
  readonly place: string;
  /** The crop as people call it. */
  readonly crop: string;
  readonly trays: number;
  /** kg they are expected to give. */
  readonly kilograms: number;
  readonly pricePerKilogram: number | null;
  /** Begin of the farm's day on which it is to be sown. */
  readonly on: Instant;
  /** The right day is past. */
  readonly late: boolean;
  /** The farm's day of the delivery, `2026-05-21`. */
  readonly delivery: string;
  /** Chance of being ready in time; null where no spread is known. */
  readonly ready: number | null;
  /** Past batches that it rests on; 0: on the days told in the farm file. */
  readonly batches: number;
  /** Minutes to sow a tray, as told; null where nobody told. */
  readonly minutesPerTray: number | null;
};

/** A crop that is wanted, and that nobody knows how to time. */
export type UntimedNow = { readonly place: string; readonly id: string; readonly crop: string };

/** A batch that grows, and what it is for. */
export type HarvestNow = {
  /** Id of the batch. */
  readonly id: string;
  readonly place: string;
  readonly crop: string;
  readonly trays: number;
  readonly kilograms: number | null;
  readonly pricePerKilogram: number | null;
  /** When somebody saw it ready; null while nobody did. */
  readonly seenReady: Instant | null;
  /** When it is expected to be ready; null where nobody can say. */
  readonly readyAt: Instant | null;
  /** Chance that it is ready now; null where no spread is known. */
  readonly ready: number | null;
  /** After that it is over, as far as its keeping time tells; null where nobody can say. */
  readonly overAt: Instant | null;
  /** The delivery it is cut for, as the farm's day and the time it leaves; null for none. */
  readonly delivery: { readonly day: string; readonly at: Instant } | null;
  readonly minutesPerTray: number | null;
};
