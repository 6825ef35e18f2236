import {
  type Batch,
  type BatchEvent,
  type BatchFacts,
  foldBatch,
} from '../../../hub/batches/index.ts';
import { calendarOf } from '../../../hub/clock.ts';
import { earnings } from '../../../hub/earnings/index.ts';
import { farmOf, readFarmFile } from '../../../hub/farm/index.ts';
import { foldLot, type Lot, type LotEvent } from '../../../hub/lots/index.ts';
import { foldPick, type Pick, type PickFacts } from '../../../hub/picks/index.ts';
import { DAY, pickFarm, T } from '../picks/pickFarm.ts';

// Batches, pickings and lots as the journal would tell them. All money here is invented.

const read = readFarmFile(pickFarm());
if (!read.farm) throw new Error('Expected a farm file in order');
export const farm = farmOf(read.farm);
export const SOWN = T - 40 * DAY;

const entries = <Event>(events: readonly Event[]) =>
  events.map((body, i) => ({ id: i + 1, t: i, who: 'Ann', body }));

/** A batch of ten trays of basil: sown on day 0 and all cut on day 20, everything written down. */
export function batch(
  id: string,
  {
    facts = {},
    cut = {},
    events = [],
    partOf = null,
  }: {
    facts?: Partial<BatchFacts>;
    cut?: Partial<Extract<BatchEvent, { event: 'cut' }>> | null;
    events?: readonly BatchEvent[];
    partOf?: Extract<BatchEvent, { event: 'sown' }>['partOf'];
  } = {},
): Batch {
  const trays = facts.trays ?? 10;
  const sown: BatchFacts = {
    ...{ crop: 'basil', variety: null, trays, sownAt: SOWN, place: 'long-house' },
    ...{ seedCost: 12, otherCost: 8, meantFor: null },
    ...facts,
  };
  const worked: BatchEvent[] = (['sowing', 'tending', 'packing'] as const).map((work) => ({
    ...{ event: 'worked', at: sown.sownAt + DAY, work, minutes: 40 },
  }));
  const all: BatchEvent[] = [
    { event: 'sown', facts: sown, partOf },
    ...(events.some(({ event }) => event === 'worked') || partOf ? [] : worked),
    ...events,
  ];
  if (cut !== null)
    all.push({
      ...{ event: 'cut', at: sown.sownAt + 20 * DAY, kg: 4, trays, stage: 'later', clears: true },
      ...{ minutes: 60, price: 30, lostKg: 0.5, note: null },
      ...cut,
    });
  const found = foldBatch(id, entries(all));
  if (found === null) throw new Error('Expected a batch');
  return found;
}

export function pick(id: string, facts: Partial<PickFacts> = {}): Pick {
  const found = foldPick(
    id,
    entries([
      {
        event: 'picked' as const,
        facts: {
          ...{ place: 'south-patch', crop: 'strawberry', at: T - DAY, kg: 4, lostKg: 0.5 },
          ...{ minutes: 60, walkMinutes: 10, pickers: 1, price: null, note: null },
          ...facts,
        },
      },
    ]),
  );
  if (found === null) throw new Error('Expected a picking');
  return found;
}

/** A lot of basil, part of it sold and part of it thrown out. */
export function lot(id: string, sold: number, thrownOut: number, storedAt = SOWN + 20 * DAY): Lot {
  const facts = {
    ...{ crop: 'basil', kg: sold + thrownOut, place: 'cool-room', from: 'long-house' },
    ...{ harvestedAt: null, storedAt, cooled: null, class: null, price: null },
  };
  const taken = (how: 'sold' | 'thrown-out', kg: number): LotEvent => ({
    ...{ event: 'taken', how, kg, at: storedAt + DAY, to: null, by: 'Ann', note: null },
  });
  const found = foldLot(
    id,
    entries<LotEvent>([
      { event: 'put-away', facts, override: null },
      ...(sold > 0 ? [taken('sold', sold)] : []),
      ...(thrownOut > 0 ? [taken('thrown-out', thrownOut)] : []),
    ]),
  );
  if (found === null) throw new Error('Expected a lot');
  return found;
}

export const reckon = (
  given: { batches?: readonly Batch[]; picks?: readonly Pick[]; lots?: readonly Lot[] },
  more: { from?: string; to?: string; now?: number } = {},
) =>
  earnings({
    ...{ batches: [], picks: [], lots: [], farm, calendar: calendarOf('UTC'), now: T },
    ...given,
    ...more,
  });

export const groupOf = (
  found: ReturnType<typeof reckon>,
  by: string,
  key: { crop?: string; place?: string; season?: string },
) => {
  const group = found.groups.find(
    (one) =>
      one.by === by &&
      (key.crop ?? one.crop) === one.crop &&
      (key.place ?? one.place) === one.place &&
      (key.season ?? one.season) === one.season,
  );
  if (!group) throw new Error(`Expected a group by ${by}`);
  return group;
};
