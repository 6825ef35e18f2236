import type { Farm } from '../farm/index.ts';
import { shown } from '../words/index.ts';
import type { Batch, BatchEvent, BatchFacts } from './batch.ts';

/** What an entry is held against, and how the one who entered it calls its fields. */
export type FaultAbout = {
  readonly farm: Farm;
  readonly now: number;
  readonly field: (name: string) => string;
};

const YEARS = 10 * 366 * 86_400_000; // ms; ours: a sowing longer ago is a mistyped year
const iso = (t: number) => new Date(t).toISOString();

/** Places that trays can stand in. */
export const growingPlaces = (farm: Farm) => farm.places.filter(({ kind }) => kind !== 'cool-room');

function placeFault(place: string, { farm, field }: FaultAbout): string | null {
  const places = growingPlaces(farm).map(({ id }) => id);
  if (places.includes(place)) return null;
  return `Expected a place where things grow (${places.join(', ')}) in ${field('place')}, got ${shown(place)}`;
}

/** What is wrong with a sowing, in one sentence; null when nothing is. */
export function factsFault(facts: BatchFacts, about: FaultAbout): string | null {
  const { farm, now, field } = about;
  if (!farm.crop(facts.crop)) {
    const crops = farm.file.crops.map(({ id }) => id).join(', ');
    return `Expected one of ${crops} in ${field('crop')}, got ${shown(facts.crop)}`;
  }
  if (facts.sownAt > now)
    return `Expected a time that is past in ${field('sownAt')}, got ${iso(facts.sownAt)}`;
  if (facts.sownAt < now - YEARS)
    return `Expected a time of the last ten years in ${field('sownAt')}, got ${iso(facts.sownAt)}`;
  return placeFault(facts.place, about);
}

/** Trays that were cut for good, thrown out or carried off. */
export const traysGone = ({ cuts, thrownOut, parted }: Batch): number =>
  [...cuts.filter(({ clears }) => clears), ...thrownOut, ...parted].reduce(
    (sum, { trays }) => sum + trays,
    0,
  );

/** The fewest trays it can have been sown in, by what was done: those that are gone, or were cut at once. */
export const leastTrays = (batch: Batch): number =>
  Math.max(traysGone(batch), ...batch.cuts.map(({ trays }) => trays));

/** When anything was first done with it; a sowing lies before. Infinity where nothing was. */
export const earliestEntry = (batch: Batch): number => {
  const { cuts, thrownOut, parted, moves, notes, works, stays, endedAt } = batch;
  const done = [cuts, thrownOut, parted, moves, notes, works].flat().map(({ at }) => at);
  // Clearing is told by its end alone.
  if (endedAt !== null) done.push(endedAt);
  return Math.min(...done, ...stays.slice(1).map(({ from }) => from));
};

/** Where a batch had been before anything was entered of it itself: a part begins when it was parted. */
const beganAt = (batch: Batch): number =>
  Math.max(batch.sownAt, batch.stays[batch.stays.length - 1 - batch.moves.length]?.from ?? 0);

/** What is wrong with a further entry of a batch, in one sentence; null when nothing is. */
export function eventFault(batch: Batch, event: BatchEvent, about: FaultAbout): string | null {
  const { now, field } = about;
  if (event.event === 'undone' || event.event === 'sown' || event.event === 'corrected')
    return null;
  if (batch.state === 'withdrawn')
    return `Expected a batch that was sown, got one that was taken back (${batch.id})`;
  const { at } = event;
  if (at > now) return `Expected a time that is past in ${field('at')}, got ${iso(at)}`;
  const began = event.event === 'moved' || event.event === 'parted' ? beganAt(batch) : batch.sownAt;
  if (at < began)
    return `Expected a time after it was ${began === batch.sownAt ? 'sown' : 'carried here'} (${iso(began)}) in ${field('at')}, got ${iso(at)}`;
  if (event.event === 'noted' || event.event === 'worked') return null;
  if (batch.state === 'ended')
    return `Expected a batch that is growing, got one that has ended (${batch.id})`;
  if (event.event === 'cleared') return null;
  if (event.event === 'moved') return placeFault(event.place, about);
  if (event.event === 'parted' && event.trays >= batch.traysLeft)
    return `Expected fewer than all its trays (${batch.traysLeft}) in ${field('trays')}, got ${event.trays}`;
  if (event.trays > batch.traysLeft)
    return `Expected at most the ${batch.traysLeft} trays that are left in ${field('trays')}, got ${event.trays}`;
  if (event.event === 'cut' && event.lostKg !== null && event.lostKg > event.kg)
    return `Expected at most the ${event.kg} kg that were cut in ${field('lostKg')}, got ${event.lostKg}`;
  return null;
}
