import type { Lot, LotHistory } from '../../hub/contract/index.ts';
import { Fault } from '../parts/Fault.tsx';
import { when } from '../times.ts';
import { words } from '../words.ts';
import { changeLot } from './commands.ts';
import { useFacts } from './useFacts.ts';
import { useSending } from './useSending.ts';

/**
 * Everything that was ever said of a lot, the newest first; what was taken back is still told, and
 * what holds can be taken back.
 */
export function LotPast({
  lot,
  zone,
  now,
  onDone,
}: {
  lot: Lot;
  zone: string;
  now: number;
  onDone: (sentence: string, lot: LotHistory) => void;
}) {
  const text = words.lots;
  const { facts, fault, again } = useFacts<LotHistory>(`/api/lots/${encodeURIComponent(lot.id)}`);
  const { sending, failed, send } = useSending();
  if (!facts) return <Fault sentence={fault} again={again} />;
  const takeBack = async (entry: number) => {
    const changed = await send(() => changeLot(lot.id, { undo: entry }));
    if (changed) onDone(text.undone, changed);
  };
  return (
    <>
      <ol class="plain-list lot-past">
        {facts.history.map((entry) => (
          <li key={entry.entry}>
            {entry.undone ? (
              <span>
                <s>{entry.words}</s> {text.takenBack}
              </span>
            ) : (
              <>
                <span>
                  {text.historyLine(when(Date.parse(entry.t), zone, now), entry.who, entry.words)}
                </span>
                <button
                  type="button"
                  class="plain"
                  aria-disabled={sending}
                  aria-label={text.takeBackWhich(entry.words)}
                  onClick={() => takeBack(entry.entry)}
                >
                  {text.takeBack}
                </button>
              </>
            )}
          </li>
        ))}
      </ol>
      <p role="status" class="failed-line">
        {failed}
      </p>
    </>
  );
}
