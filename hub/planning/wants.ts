import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import { type Entry, journalBook, type Undone, undoneIn } from '../journal/index.ts';
import type { Store } from '../store/index.ts';

// What is wanted on each delivery day: the weekly weights of the farm file, and what somebody said
// otherwise for one day. Each such word is an entry of the journal; none is ever changed.

export type WantEvent =
  | { readonly event: 'wanted'; readonly day: string; readonly of: string; readonly kg: number }
  | Undone;
/** What was last said of one day and one crop or mix, and still holds. */
export type WantChange = {
  readonly day: string;
  readonly of: string;
  /** null: all of it was taken back, and the farm file holds. */
  readonly said: {
    readonly kg: number;
    readonly entry: number;
    readonly who: string;
    readonly at: number;
  } | null;
  readonly entries: readonly Entry<WantEvent>[];
};

export const wantId = (day: string, of: string) => `${day} ${of}`;

export function foldWant(id: string, entries: readonly Entry<WantEvent>[]): WantChange {
  const undone = undoneIn(entries);
  const [day = '', of = ''] = id.split(' ');
  let said: WantChange['said'] = null;
  for (const { id: entry, who, t, body } of entries)
    if (body.event === 'wanted' && !undone.has(entry)) said = { kg: body.kg, entry, who, at: t };
  return { day, of, said, entries };
}
export const makeWants = (store: Store) => journalBook(store, 'want', foldWant);
export type Wants = ReturnType<typeof makeWants>;

/** A weight wanted on one day, of a crop or a mix. */
export type Want = {
  readonly of: string;
  readonly kg: number;
  /** By the farm file; null where it wants none on such a day. */
  readonly usual: number | null;
  readonly change: WantChange['said'];
};
export type DeliveryDay = {
  readonly day: string;
  /** Days from today. */
  readonly ahead: number;
  readonly wants: readonly Want[];
};

const WEEK = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'];

/** Delivery days from today on, for so many days; each with all that is wanted on it. */
export function deliveryDays(
  farm: Farm,
  calendar: Calendar,
  changes: readonly WantChange[],
  today: string,
  days: number,
): DeliveryDay[] {
  const found: DeliveryDay[] = [];
  for (let ahead = 0; ahead <= days; ahead += 1) {
    const day = calendar.add(today, ahead);
    const weekday = WEEK[new Date(`${day}T00:00:00Z`).getUTCDay()];
    const usual = farm.file.deliveries.filter((one) => one.day === weekday);
    const wants = new Map<string, Want>();
    for (const { of, kg } of usual.flatMap((one) => one.wants)) {
      const sum = (wants.get(of)?.usual ?? 0) + kg;
      wants.set(of, { of, kg: sum, usual: sum, change: null });
    }
    for (const { of, said, day: on } of changes)
      if (on === day && said !== null)
        wants.set(of, { of, kg: said.kg, usual: wants.get(of)?.usual ?? null, change: said });
    if (usual.length > 0 || wants.size > 0) found.push({ day, ahead, wants: [...wants.values()] });
  }
  return found;
}
