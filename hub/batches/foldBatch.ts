import { undoneIn } from '../journal/index.ts';
import type { Batch, BatchEntry, BatchFacts, CutStage, EntryOf, Stay } from './batch.ts';

/** What all entries of one batch come to, oldest first. null for one that nobody sowed. */
export function foldBatch(id: string, entries: readonly BatchEntry[]): Batch | null {
  const undone = undoneIn(entries);
  let facts: BatchFacts | null = null;
  let partOf: { readonly batch: string; readonly stays: readonly Stay[] } | null = null;
  let withdrawn = false;
  let clearedAt: number | null = null;
  const parted: EntryOf<'parted'>[] = [];
  const cuts: EntryOf<'cut'>[] = [];
  const thrownOut: EntryOf<'thrown-out'>[] = [];
  const notes: EntryOf<'noted'>[] = [];
  const works: EntryOf<'worked'>[] = [];
  const moves: EntryOf<'moved'>[] = [];
  for (const { id: entry, who, body } of entries) {
    const holds = !undone.has(entry);
    if (body.event === 'sown') {
      // One that was taken back still says what the batch was.
      facts = body.facts;
      partOf = body.partOf;
      withdrawn = !holds;
    }
    if (!holds || facts === null) continue;
    const told = { entry, who };
    if (body.event === 'corrected') facts = { ...facts, ...body.set };
    else if (body.event === 'moved') moves.push({ ...body, ...told });
    else if (body.event === 'parted') parted.push({ ...body, ...told });
    else if (body.event === 'cut') cuts.push({ ...body, ...told });
    else if (body.event === 'thrown-out') thrownOut.push({ ...body, ...told });
    else if (body.event === 'noted') notes.push({ ...body, ...told });
    else if (body.event === 'worked') works.push({ ...body, ...told });
    else if (body.event === 'cleared') clearedAt = body.at;
  }
  if (facts === null) return null;
  const byTime = <One extends { readonly at: number }>(list: One[]) =>
    list.sort((a, b) => a.at - b.at);
  byTime(moves);
  byTime(cuts);
  // A part was sown with the batch it comes from, so where and when is corrected in both.
  const before = [{ place: facts.place, from: facts.sownAt }, ...(partOf?.stays.slice(1) ?? [])];
  const stays = [...before, ...moves.map(({ place, at }) => ({ place, from: at }))];
  const gone = [...parted, ...thrownOut, ...cuts.filter(({ clears }) => clears)];
  const rest = facts.trays - gone.reduce((sum, { trays }) => sum + trays, 0);
  const traysLeft = clearedAt === null ? Math.max(0, rest) : 0;
  const ended = traysLeft === 0;
  const readyAt = (stage: CutStage): number | null => {
    const seen = notes.filter(({ look }) => look === 'ready' && stage === 'later');
    const times = [...seen, ...cuts.filter((cut) => cut.stage === stage)].map(({ at }) => at);
    return times.length === 0 ? null : Math.min(...times);
  };
  const kept = (cost: 'seedCost' | 'otherCost') =>
    parted.reduce<number | null>(
      (rest, gone) => (rest === null ? null : rest - (gone[cost] ?? 0)),
      facts?.[cost] ?? null,
    );
  return {
    ...facts,
    ...{ id, firstPlace: facts.place, seedCost: kept('seedCost'), otherCost: kept('otherCost') },
    state: withdrawn ? 'withdrawn' : ended ? 'ended' : 'growing',
    place: stays.at(-1)?.place ?? facts.place,
    traysLeft,
    stays,
    partOf: partOf?.batch ?? null,
    ...{ parted, cuts, thrownOut: byTime(thrownOut), notes: byTime(notes), works, moves },
    readyAt: { young: readyAt('young'), later: readyAt('later') },
    endedAt: ended ? (clearedAt ?? Math.max(facts.sownAt, ...gone.map(({ at }) => at))) : null,
    entries,
  };
}
