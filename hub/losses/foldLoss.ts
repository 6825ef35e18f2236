import { undoneIn } from '../journal/index.ts';
import type { Loss, LossEntry, LossFacts } from './loss.ts';

/** What all entries of one loss come to, oldest first. null for one nobody entered. */
export function foldLoss(id: string, entries: readonly LossEntry[]): Loss | null {
  const undone = undoneIn(entries);
  let facts: LossFacts | null = null;
  let withdrawn = false;
  let another = false;
  let photo: string | null = null;
  for (const { id: entry, body } of entries) {
    const holds = !undone.has(entry);
    if (body.event === 'entered') {
      // One that was taken back still says what it was.
      facts = body.facts;
      another = body.another;
      photo = body.photo;
      withdrawn = !holds;
    }
    if (facts === null) continue;
    // A photo that was withdrawn is deleted: nothing brings it back.
    if (body.event === 'photo' && (holds || body.photo === null)) photo = body.photo;
    if (holds && body.event === 'corrected') facts = { ...facts, ...body.set };
  }
  return facts && { ...facts, id, withdrawn, another, photo, entries };
}

/** Whether an entry can be taken back: it holds, and is not the withdrawal of a photo. */
export function mayUndo({ id, body }: LossEntry, undone: ReadonlySet<number>): boolean {
  return !undone.has(id) && !(body.event === 'photo' && body.photo === null);
}
