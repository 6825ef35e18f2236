import type { Lot, LotEvent } from '../lots/index.ts';
import { heeded, warningOf } from './lotFacts.ts';
import { type ApiParts, Refused } from './parts.ts';
import { iso } from './present.ts';

type Take = {
  readonly how: 'sold' | 'used' | 'moved' | 'thrown-out';
  readonly kg?: number | undefined;
  readonly at?: string | undefined;
  readonly to?: string | undefined;
  readonly by?: string | undefined;
  readonly note: string | null;
};

/** More of a lot than this beyond what is left is a mistake, not a scale. */
const SCALE = 0.0005; // kg

/** What taking from a lot is written down as. @throws Refused 400 with the field */
export function takenEvent(
  parts: ApiParts,
  lot: Lot,
  take: Take,
  person: string | null,
  override: { readonly by: string } | undefined,
  now: number,
): LotEvent {
  const kg = take.kg ?? lot.kgLeft;
  if (kg > lot.kgLeft + SCALE)
    throw new Refused(400, `Expected at most ${lot.kgLeft} kg in take.kg, got ${kg}`);
  const at = take.at === undefined ? now : Date.parse(take.at);
  if (at > now) throw new Refused(400, `Expected a time that is past in take.at, got ${iso(at)}`);
  if (at < lot.storedAt)
    throw new Refused(
      400,
      `Expected a time after it was put away (${iso(lot.storedAt)}) in take.at, got ${iso(at)}`,
    );
  // The tool never says that food is bad: who does has a name.
  const by = take.by ?? person;
  if (take.how === 'thrown-out' && by === null)
    throw new Refused(400, 'Expected the name of who decides in take.by, got nothing');
  const to = take.to === undefined || take.to === '' ? null : take.to;
  const room = take.how === 'moved' && to !== null ? ownRoom(parts, to) : undefined;
  if (room) {
    if (room === lot.place)
      throw new Refused(400, `Expected another cool room in take.to, got ${room}`);
    heeded(warningOf(parts, lot.crop, room, now), override);
    const first = lot.stays.at(-1)?.from ?? lot.storedAt;
    if (at < first)
      throw new Refused(
        400,
        `Expected a time after it came to ${lot.place} (${iso(first)}) in take.at, got ${iso(at)}`,
      );
    if (kg >= lot.kgLeft - SCALE) return { event: 'carried', place: room, at };
    const day = parts.calendar().dayOf(lot.storedAt);
    const into = parts.snapshots.lots.nextId(lot.crop, day);
    return { event: 'taken', how: 'moved', kg, at, to: room, by, note: take.note, into };
  }
  return { event: 'taken', how: take.how, kg, at, to, by, note: take.note };
}

/** Another cool room of the farm by its id, or by its name as people type it. */
const ownRoom = (parts: ApiParts, to: string) =>
  parts
    .farm()
    .places.find(
      ({ id, name, kind }) =>
        kind === 'cool-room' && (id === to || name.toLowerCase() === to.toLowerCase()),
    )?.id;
