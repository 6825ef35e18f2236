import { useState } from 'preact/hooks';
import type { BatchHistory, BatchOffers } from '../../hub/contract/index.ts';
import { Mark } from '../parts/Mark.tsx';
import { words } from '../words.ts';
import { repeatBatches } from './commands.ts';
import { useHeeded } from './useHeeded.ts';
import { Warned } from './Warned.tsx';

/** What was sown on this day of last week, each to be sown again with one tap. */
export function AsLastWeek({
  offers,
  onSown,
}: {
  offers: BatchOffers;
  onSown: (batches: readonly BatchHistory[]) => void;
}) {
  const text = words.batches;
  const { sending, failed, warned, forget, go } = useHeeded();
  const [asked, setAsked] = useState<readonly string[]>([]);
  const due = offers.asLastWeek.filter(({ again }) => again === null);
  const done = offers.asLastWeek.filter(({ again }) => again !== null);
  const sow = async (batches: readonly string[]) => {
    setAsked(batches);
    const sown = await go((override) => repeatBatches({ batches: [...batches], ...override }));
    if (sown) onSown(sown);
  };
  const tap = (batches: readonly string[]) => {
    forget();
    sow(batches);
  };
  if (offers.asLastWeek.length === 0) return <p class="quiet">{text.asLastWeekNone}</p>;
  return (
    <form
      class="batch-form"
      aria-label={text.asLastWeek}
      onSubmit={(event) => {
        event.preventDefault();
        if (warned !== '') sow(asked);
      }}
    >
      {due.length > 1 && (
        <button
          type="button"
          class="main"
          aria-disabled={sending}
          onClick={() => tap(due.map(({ batch }) => batch))}
        >
          {sending ? text.sending : text.againAll(due.length)}
        </button>
      )}
      {due.map(({ batch, trays, name, variety, placeName }) => (
        <button type="button" key={batch} aria-disabled={sending} onClick={() => tap([batch])}>
          {text.sow}: {text.again(trays, name, variety, placeName)}
        </button>
      ))}
      {done.map(({ batch, trays, name, variety, placeName }) => (
        <p key={batch} class="quiet">
          <Mark shape="done" /> {text.again(trays, name, variety, placeName)}: {text.againDone}
        </p>
      ))}
      {warned !== '' && (
        <>
          <Warned sentence={warned} />
          <button type="submit" class="main" aria-disabled={sending}>
            {text.anyway}
          </button>
        </>
      )}
      <p role="status" class="failed-line">
        {failed}
      </p>
    </form>
  );
}
