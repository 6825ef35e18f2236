import { useState } from 'preact/hooks';
import type { PlannedSowing } from '../../hub/contract/index.ts';
import { Mark } from '../parts/Mark.tsx';
import { words } from '../words.ts';
import { enterBatch } from './commands.ts';

/** Sowings in the order of their days, those of one day and place together. */
export function SowingRows({
  sowings,
  onSown,
}: {
  sowings: readonly PlannedSowing[];
  /** Given where trays can be said to be sown; told what was kept. */
  onSown?: (sentence: string) => void;
}) {
  const text = words.planning;
  const groups = new Map<string, PlannedSowing[]>();
  for (const one of sowings) {
    const key = `${one.day} ${one.place}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return (
    <ul class="sowings">
      {[...groups].map(([key, [first, ...others]]) =>
        first === undefined ? null : (
          <li key={key}>
            <h3>
              {text.day(first.day)} <span class="quiet">{text.inPlace(first.placeName)}</span>
            </h3>
            <ul>
              {[first, ...others].map((one) => (
                <SowingRow key={`${one.crop} ${one.delivery}`} sowing={one} onSown={onSown} />
              ))}
            </ul>
          </li>
        ),
      )}
    </ul>
  );
}

function SowingRow({
  sowing,
  onSown,
}: {
  sowing: PlannedSowing;
  onSown: ((sentence: string) => void) | undefined;
}) {
  const text = words.planning;
  const { trays, name, late, answered, words: said } = sowing;
  const [sending, setSending] = useState(false);
  const [failed, setFailed] = useState('');
  const what = text.trays(trays, name);
  const sown = async () => {
    if (sending) return;
    setSending(true);
    setFailed('');
    try {
      await enterBatch(sowing);
      onSown?.(text.sownSaid(what));
    } catch (error) {
      setFailed(text.notStored(error instanceof Error ? error.message : String(error)));
    } finally {
      setSending(false);
    }
  };
  return (
    <li class="sowing">
      <p>
        {late && (
          <span class="late-word">
            <Mark shape="care" /> {text.late}:{' '}
          </span>
        )}
        <strong>{what}</strong>
        <span class="sowing-words">{said}</span>
        {answered !== null && (
          <span class="sowing-words">
            <Mark shape={answered} /> {text.saidSown[answered]}
          </span>
        )}
      </p>
      {onSown && (
        <button
          type="button"
          aria-disabled={sending}
          aria-label={text.sownOf(what, sowing.placeName)}
          onClick={sown}
        >
          {sending ? text.sending : text.sown}
        </button>
      )}
      <p role="status" class="failed-line">
        {failed}
      </p>
    </li>
  );
}
