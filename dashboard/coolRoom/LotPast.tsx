import type { Lot, LotHistory } from '../../hub/contract/index.ts';
import { Fault } from '../parts/Fault.tsx';
import { when } from '../times.ts';
import { words } from '../words.ts';
import { useFacts } from './useFacts.ts';

/** Everything that was ever said of a lot, the newest first; what was taken back is still told. */
export function LotPast({ lot, zone, now }: { lot: Lot; zone: string; now: number }) {
  const { facts, fault, again } = useFacts<LotHistory>(`/api/lots/${encodeURIComponent(lot.id)}`);
  if (!facts) return <Fault sentence={fault} again={again} />;
  return (
    <ol class="plain-list lot-past">
      {facts.history.map((entry) => (
        <li key={entry.entry}>
          {entry.undone ? (
            <span>
              <s>{entry.words}</s> {words.lots.takenBack}
            </span>
          ) : (
            <span>
              {words.lots.historyLine(when(Date.parse(entry.t), zone, now), entry.who, entry.words)}
            </span>
          )}
        </li>
      ))}
    </ol>
  );
}
