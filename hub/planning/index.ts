import type { Snapshot } from '../../rules/decide/index.ts';
import type { Batches } from '../batches/index.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import type { Snapshots } from '../snapshot/index.ts';
import type { Store } from '../store/index.ts';
import { duePlanned } from './duePlanned.ts';
import { gatherFacts } from './gatherFacts.ts';
import type { Growth } from './growth.ts';
import { makePlan } from './makePlan.ts';
import type { Plan, PlanFacts } from './planTypes.ts';
import { type SaidOf, saidOf } from './saidOf.ts';
import { makeWants } from './wants.ts';

export { calendarAddress } from './calendarAddress.ts';
export { calendarEvents, nameOfProduct } from './calendarEvents.ts';
export type { CropFacts } from './cropFacts.ts';
export type { GrowingFacts } from './growingFacts.ts';
export type { Bounds, CropPast, Growth } from './growth.ts';
export { growthFrom } from './growthFrom.ts';
export { harvestDay } from './harvestDay.ts';
export { type CalendarEvent, iCalendar } from './iCalendar.ts';
export { makePlan } from './makePlan.ts';
export type {
  Plan,
  PlanDelivery,
  PlanFacts,
  PlanPart,
  PlanSowing,
  ShortReason,
} from './planTypes.ts';
export { sowingCost } from './sowingCost.ts';
export { type DeliveryDay, type Want, type Wants, wantId } from './wants.ts';

/** So far ahead is planned; a page shows as much of it as it asks for. Ours: no crop of trays takes longer. */
export const MOST_WEEKS = 12;
const DAYS = 7 * MOST_WEEKS;
/** Forecasts, and what batches went through, change the plan a few times a day. Ours. */
const FRESH = 6 * 3_600_000; // ms

export type PlanningParts = {
  readonly store: Store;
  readonly farm: () => Farm;
  readonly calendar: () => Calendar;
  readonly snapshots: Snapshots;
  readonly batches: Batches;
  readonly growth: Growth;
  readonly onFault: (error: unknown) => void;
};
/** What was known when a plan was made, and the plan. */
export type Planned = {
  readonly at: number;
  /** The farm's day from which days are counted. */
  readonly today: string;
  readonly facts: PlanFacts;
  readonly plan: Plan;
};
export type Planning = ReturnType<typeof makePlanning>;

/** What to sow when, for the weights wanted on delivery days. Made when asked for, and kept. */
export function makePlanning(parts: PlanningParts) {
  const { store, farm, calendar, snapshots, batches, growth, onFault } = parts;
  const wants = makeWants(store);
  let kept: { readonly key: string; readonly planned: Planned } | null = null;
  let lastFarm: unknown;
  let farmCount = 0;

  /** Changes when anything changes that the plan is made of. */
  const keyAt = (now: number) => {
    if (farm() !== lastFarm) {
      lastFarm = farm();
      farmCount += 1;
    }
    const entries = [wants.newest(), batches.newest(), snapshots.lots.newest()];
    const time = [calendar().dayOf(now), Math.floor(now / FRESH)];
    return [farmCount, ...time, ...entries, growth.version()].join(' ');
  };

  const planned = (now: number): Planned => {
    const key = keyAt(now);
    if (kept?.key === key) return kept.planned;
    const today = calendar().dayOf(now);
    const facts = gatherFacts(parts, wants.all(), today, DAYS, now);
    const made: Planned = { at: now, today, facts, plan: makePlan(facts) };
    kept = { key, planned: made };
    return made;
  };

  return {
    wants,
    planned,
    /** What was answered to tasks that asked for these sowings. */
    said: (now: number): SaidOf => saidOf(store, now),
    /** A snapshot with what is due to be sown and cut. */
    with(snapshot: Snapshot): Snapshot {
      if (farm().file.deliveries.length === 0 && batches.newest() === 0 && wants.newest() === 0)
        return snapshot;
      try {
        const { now } = snapshot;
        const said = saidOf(store, now);
        return { ...snapshot, ...duePlanned(planned(now), farm(), calendar(), said) };
      } catch (error) {
        onFault(error); // a plan that cannot be made does not stop the look
        return snapshot;
      }
    },
  };
}
