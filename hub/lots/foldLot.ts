import { undoneIn } from '../journal/index.ts';
import type { Lot, LotEntry, LotFacts, Taken } from './lot.ts';

/** Under a gram nothing is left: kilograms are told with decimals and taken away one by one. */
const NOTHING = 0.0005; // kg

/** What all entries of one lot come to, oldest first. null for a lot nobody put away. */
export function foldLot(id: string, entries: readonly LotEntry[]): Lot | null {
  const undone = undoneIn(entries);
  let facts: LotFacts | null = null;
  let withdrawn = false;
  let override: Lot['override'] = null;
  let released: Lot['released'] = null;
  let partOf: string | null = null;
  const taken: Taken[] = [];
  const carried: { place: string; from: number }[] = [];
  for (const { id: entry, who, body } of entries) {
    const holds = !undone.has(entry);
    if (body.event === 'put-away') {
      // One that was taken back still says what the lot was.
      facts = body.facts;
      override = body.override;
      withdrawn = !holds;
      partOf = body.of ?? null;
    }
    if (!holds || facts === null) continue;
    if (body.event === 'corrected') facts = { ...facts, ...body.set };
    else if (body.event === 'taken') taken.push({ ...body, entry, who });
    else if (body.event === 'carried') carried.push({ place: body.place, from: body.at });
    else if (body.event === 'released') released = { by: body.by, at: body.at };
  }
  if (facts === null) return null;
  const left = facts.kg - taken.reduce((sum, { kg }) => sum + kg, 0);
  const kgLeft = left < NOTHING ? 0 : Number(left.toFixed(3));
  const ended = kgLeft === 0;
  return {
    ...facts,
    id,
    state: withdrawn ? 'withdrawn' : ended ? 'ended' : 'stored',
    place: carried.at(-1)?.place ?? facts.place,
    kgLeft,
    endedAt: ended ? Math.max(facts.storedAt, ...taken.map(({ at }) => at)) : null,
    taken,
    stays: [{ place: facts.place, from: facts.storedAt }, ...carried],
    released,
    override,
    partOf,
    entries,
  };
}
