import type { LotKeeping, LotPiece } from '../cooler/index.ts';
import type { Celsius, Instant, Minutes } from '../units.ts';

/** Produce kept together in a cool room. */
export type LotNow = {
  readonly id: string;
  /** The cool room it lies in. */
  readonly place: string;
  /** Its crop, as people call it. */
  readonly crop: string;
  readonly kilograms: number;
  readonly pricePerKilogram: number | null;
  readonly storedAt: Instant;
  readonly keeps: LotKeeping;
  /** What it went through since harvest. */
  readonly history: readonly LotPiece[];
  /** Where it lies now, °C; null without a fresh reading. */
  readonly at: Celsius | null;
  /** Mean temperature outdoors since harvest; null when not known. */
  readonly outdoors: Celsius | null;
  /** Time over the limit of its class since harvest or cutting, and the clock somebody agreed on. */
  readonly exposure: {
    readonly above: Minutes;
    /** Possibly above. */
    readonly unknown: Minutes;
    readonly limit: Celsius;
    readonly clock: Minutes | null;
  };
  /** When a named person last said that it may stay; null for never. */
  readonly released: Instant | null;
};

/** The lots of the cool rooms, and when they can next be sold. */
export type Stored = {
  readonly lots: readonly LotNow[];
  /** The coming deliveries, the nearest first; empty where the farm file tells none. */
  readonly sales: readonly Instant[];
};
