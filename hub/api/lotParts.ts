import { undoneIn } from '../journal/index.ts';
import type { Lot, LotEvent, LotFacts } from '../lots/index.ts';

import { type ApiParts, Refused } from './parts.ts';

// A part of a lot that goes on in another cool room is a lot of its own with the past of the whole:
// the entry that takes it away and those that begin it stand and fall together.

type Entry = { readonly id: string; readonly place: string; readonly event: LotEvent };

/** What an event is written down as, with all that belongs to it. */
export function withParts(parts: ApiParts, lot: Lot, event: LotEvent): Entry[] {
  const own = { id: lot.id, place: lot.place, event };
  if (event.event === 'taken' && event.into !== undefined && event.to !== null)
    return [own, ...begun(lot, event.into, event.to, event)];
  if (event.event === 'undone') return [own, ...undoneWith(parts, lot, event.entry)];
  return [own];
}

/** The part as a lot: harvested, put away and carried as the whole was, and then carried over. */
function begun(
  lot: Lot,
  id: string,
  room: string,
  { kg, at }: { readonly kg: number; readonly at: number },
): Entry[] {
  const { crop, from, harvestedAt, storedAt, cooled, class: of, price, stays } = lot;
  const place = stays[0]?.place ?? lot.place;
  const facts: LotFacts = {
    ...{ crop, kg, place, from, harvestedAt, storedAt, cooled, class: of, price },
  };
  const put: LotEvent = { event: 'put-away', facts, override: null, of: lot.id };
  const carried = [...stays.slice(1), { place: room, from: at }].map(
    (stay): LotEvent => ({ event: 'carried', place: stay.place, at: stay.from }),
  );
  return [put, ...carried].map((event) => ({ id, place: room, event }));
}

/** What has to be taken back together with an entry. @throws Refused 409 where that cannot be */
function undoneWith({ snapshots: { lots } }: ApiParts, lot: Lot, entry: number): Entry[] {
  const body = lot.entries.find(({ id }) => id === entry)?.body;
  if (body?.event === 'taken' && body.into !== undefined) {
    const part = lots.get(body.into);
    return part === undefined ? [] : [beginningUndone(part, untouched(part))];
  }
  if (body?.event === 'put-away' && body.of !== undefined) {
    untouched(lot);
    const whole = lots.get(body.of);
    const gone = whole?.entries.find(
      ({ body: one }) => one.event === 'taken' && one.into === lot.id,
    );
    if (whole === undefined || gone === undefined || undoneIn(whole.entries).has(gone.id))
      return [];
    return [{ id: whole.id, place: whole.place, event: { event: 'undone', entry: gone.id } }];
  }
  if (body?.event === 'undone') {
    const before = lot.entries.find(({ id }) => id === body.entry)?.body;
    const linked =
      (before?.event === 'taken' && before.into !== undefined) ||
      (before?.event === 'put-away' && before.of !== undefined);
    if (linked)
      throw new Refused(
        409,
        `Expected an entry of one lot in undo, got one that parted ${lot.id}: move the part again`,
      );
  }
  return [];
}

const beginningUndone = (part: Lot, entry: number): Entry => ({
  ...{ id: part.id, place: part.place, event: { event: 'undone', entry } },
});

/** The entry a part began with. @throws Refused 409 for one from which something was taken since */
function untouched(part: Lot): number {
  if (part.taken.length > 0)
    throw new Refused(
      409,
      `Expected a part that nothing was taken from to take back, got ${part.id}: take that back first`,
    );
  return part.entries.find(({ body }) => body.event === 'put-away')?.id ?? 0;
}
