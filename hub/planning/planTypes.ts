import type { Covered, PlannedSowing, Shortfall } from '../../rules/batches/index.ts';
import type { CropFacts } from './cropFacts.ts';
import type { GrowingFacts } from './growingFacts.ts';
import type { DeliveryDay } from './wants.ts';

// What goes into a plan and what comes out of it. Days count from today; 0 is today.

/** A stored lot that can still be sold. */
export type StoredFacts = {
  readonly id: string;
  readonly crop: string;
  readonly kg: number;
  /** Last day it keeps, at the least. */
  readonly until: number;
};

export type PlaceFacts = {
  readonly id: string;
  readonly name: string;
  readonly capacity: number;
  /** Trays that stand there and belong to no known batch. */
  readonly others: number;
  /** Heat units of each coming day for a crop, or why it should not or cannot be planned there. */
  readonly suits: (crop: CropFacts) => readonly number[] | 'too-cold' | 'too-warm' | 'no-climate';
};

export type PlanFacts = {
  readonly days: number;
  readonly deliveries: readonly DeliveryDay[];
  readonly mixes: ReadonlyMap<string, readonly { readonly crop: string; readonly share: number }[]>;
  readonly crop: (id: string) => CropFacts;
  readonly growing: readonly GrowingFacts[];
  readonly stored: readonly StoredFacts[];
  /** Houses that tell how many trays they hold. */
  readonly places: readonly PlaceFacts[];
};

export type ShortReason =
  | Shortfall['reason']
  | 'no-weight'
  | 'no-place'
  | 'too-cold'
  | 'too-warm'
  | 'no-climate'
  | 'little';

export type PlanShortfall = {
  readonly kg: number;
  readonly trays: number;
  readonly reason: ShortReason;
};

/** What comes into one delivery of one crop. */
export type PlanPart = {
  readonly crop: CropFacts;
  /** Wanted of it, alone and in mixes. */
  readonly kg: number;
  readonly covered: readonly Covered[];
  readonly sowings: readonly PlanSowing[];
  readonly shortfalls: readonly PlanShortfall[];
  /** Chance that less comes than is wanted; null where no spread is known. */
  readonly short: number | null;
};

export type PlanSowing = PlannedSowing & {
  /** What its trays are expected to give, kg: more than is wanted, as batches differ. */
  readonly expected: number;
};

export type PlanDelivery = DeliveryDay & {
  readonly parts: readonly PlanPart[];
  readonly short: number | null;
};

export type Plan = {
  readonly sowings: readonly PlanSowing[];
  readonly deliveries: readonly PlanDelivery[];
  /** Trays that fit beside what grows, before anything of this plan is sown, by place. */
  readonly free: ReadonlyMap<string, readonly number[]>;
  /** Deliveries of each growing batch, by its id. */
  readonly uses: ReadonlyMap<string, readonly Covered[]>;
};
