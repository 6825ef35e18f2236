import { undoneIn } from '../journal/index.ts';
import type { Pick, PickEntry, PickFacts } from './pick.ts';

/** What all entries of one picking come to, oldest first. null for one that nobody entered. */
export function foldPick(id: string, entries: readonly PickEntry[]): Pick | null {
  const undone = undoneIn(entries);
  let facts: PickFacts | null = null;
  let withdrawn = false;
  let by = '';
  for (const { id: entry, who, body } of entries) {
    const holds = !undone.has(entry);
    if (body.event === 'picked') {
      // One that was taken back still says what the picking was.
      facts = body.facts;
      by = who;
      withdrawn = !holds;
    }
    if (holds && facts !== null && body.event === 'corrected') facts = { ...facts, ...body.set };
  }
  return facts && { ...facts, id, state: withdrawn ? 'withdrawn' : 'kept', who: by, entries };
}
