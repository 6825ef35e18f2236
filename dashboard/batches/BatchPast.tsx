import type { Batch, BatchHistory } from '../../hub/contract/index.ts';
import { useFacts } from '../coolRoom/useFacts.ts';
import { Fault } from '../parts/Fault.tsx';
import { Photo } from '../photos/Photo.tsx';
import { when } from '../times.ts';
import { words } from '../words.ts';

/** Everything that was ever said of a batch, the newest first; what was taken back is still told. */
export function BatchPast({ batch, zone, now }: { batch: Batch; zone: string; now: number }) {
  const path = `/api/batches/${encodeURIComponent(batch.id)}`;
  const { facts, fault, again } = useFacts<BatchHistory>(path);
  if (!facts) return <Fault sentence={fault} again={again} />;
  const photoOf = (entry: number) =>
    facts.notes.find((note) => note.entry === entry)?.photo ?? null;
  return (
    <ol class="plain-list batch-past">
      {facts.history.map((entry) => (
        <li key={entry.entry}>
          {entry.undone ? (
            <>
              <s>{entry.words}</s> {words.batches.takenBack}
            </>
          ) : (
            words.batches.historyLine(when(Date.parse(entry.t), zone, now), entry.who, entry.words)
          )}
          {photoOf(entry.entry) !== null && (
            <Photo src={photoOf(entry.entry) ?? ''} of={entry.words} />
          )}
        </li>
      ))}
    </ol>
  );
}
