import type { TrayPlace, TraysStanding } from '../../rules/decide/index.ts';
import { instant } from '../../rules/units.ts';
import type { Batch } from '../batches/index.ts';
import type { FarmPlace } from '../contract/index.ts';
import type { Farm } from '../farm/index.ts';
import type { Ready } from '../growing/index.ts';
import type { Store } from '../store/index.ts';

const DAY = 86_400_000; // ms
/** Moves of trays further back say nothing any more; longer than any rest the rule asks for. Ours. */
const REMEMBERED = 60 * DAY;

/** Where trays can stand: a house, or any place but a cool room of which somebody said how many. */
export const holdsTrays = ({ kind, capacity }: FarmPlace) =>
  kind === 'tunnel' || (kind !== 'cool-room' && capacity !== undefined);

/** Trays moved where nobody keeps batches, as answers to tasks told: taken-back ones left out. */
export function toldMoves(store: Store, now: number) {
  const moves = new Map<string, { from: string; to: string; at: number; is: boolean }>();
  for (const { t, place, body, subject } of store.journal.between(
    'trays-moved',
    now - REMEMBERED,
    now + 1,
  )) {
    const { to, is } = body as { to: string; is: boolean };
    if (place !== null && subject !== null) moves.set(subject, { from: place, to, at: t, is });
  }
  return [...moves.values()].filter(({ is }) => is);
}

type Parts = {
  readonly store: Store;
  readonly farm: Farm;
  readonly batches: readonly Batch[];
  readonly ready: (batch: Batch) => Ready;
  /** Where an open task asks to carry them; by place and batch. */
  readonly askedTo: (place: string, batch: string | null) => string | null;
};

const FROM = { 'own batches': 'heat', 'told days': 'told', unknown: 'guess' } as const;

/** Days until a batch is ready, as its page says it; null where nobody knows. */
function leftOf(batch: Batch, ready: Parts['ready'], now: number) {
  // What grows again after a cut is of another age than its sowing says.
  if (batch.cuts.length > 0) return { days: null, from: 'guess' as const };
  const { seenAt, at, method } = ready(batch);
  if (seenAt !== null) return { days: 0, from: 'heat' as const };
  if (at.expected === null) return { days: null, from: 'guess' as const };
  return { days: Math.max(0, (at.expected - now) / DAY), from: FROM[method] };
}

/** Trays that stand somewhere now: of batches; at places without any, those the farm file tells. */
export function standingTrays(parts: Parts, now: number): TraysStanding[] {
  const { store, farm, batches, askedTo } = parts;
  const kept = batches.filter(({ state }) => state !== 'withdrawn');
  const ever = new Set(kept.flatMap(({ stays }) => stays.map(({ place }) => place)));
  const nameOf = (crop: string) => farm.crop(crop)?.name ?? crop;
  const carried = (crop: string, trays: number) => {
    const each = farm.crop(crop)?.minutes?.move;
    return each === undefined ? null : each * trays;
  };
  const own = kept
    .filter(({ state, traysLeft }) => state === 'growing' && traysLeft > 0)
    .map((batch): TraysStanding => {
      const { id, crop, place, traysLeft: trays, stays } = batch;
      const left = leftOf(batch, parts.ready, now);
      return {
        ...{ batch: id, crop, cropName: nameOf(crop), place, trays },
        ...{ daysLeft: left.days, daysFrom: left.from, minutes: carried(crop, trays) },
        mouldy: [...batch.notes, ...batch.thrownOut].some(({ look }) => look === 'mould'),
        movedAt: stays.length < 2 ? null : instant(stays.at(-1)?.from ?? now),
        left: stays.slice(0, -1).map((stay, i) => {
          return { place: stay.place, at: instant(stays[i + 1]?.from ?? now) };
        }),
        askedTo: askedTo(place, id),
      };
    });
  const moves = toldMoves(store, now);
  const told = farm.places.flatMap((place): TraysStanding[] => {
    const { id, crop, trays } = place;
    if (ever.has(id) || crop === undefined || !trays || !holdsTrays(place)) return [];
    const here = moves.filter(({ from, to }) => from === id || to === id);
    const last = here.length === 0 ? null : Math.max(...here.map(({ at }) => at));
    return [
      {
        ...{ batch: null, crop, cropName: nameOf(crop), place: id, trays },
        ...{ daysLeft: null, daysFrom: 'guess', minutes: carried(crop, trays), mouldy: false },
        movedAt: last === null ? null : instant(last),
        left: here
          .filter(({ to }) => to === id)
          .map(({ from, at }) => ({ place: from, at: instant(at) })),
        askedTo: askedTo(id, null),
      },
    ];
  });
  return [...own, ...told];
}

/** What people said of shade at a place in the compared days. */
export type ShadeSaid = (place: string) => Pick<TrayPlace, 'shadedDays' | 'notShaded'>;

/** Places for trays, in the farm file's order, with what stands there. */
export const trayPlaces = (
  farm: Farm,
  standing: readonly TraysStanding[],
  shade: ShadeSaid,
): TrayPlace[] =>
  farm.places.filter(holdsTrays).map(({ id, name, capacity }) => ({
    ...{ id, name, capacity: capacity ?? null },
    standing: standing
      .filter(({ place }) => place === id)
      .reduce((sum, { trays }) => sum + trays, 0),
    ...shade(id),
  }));
