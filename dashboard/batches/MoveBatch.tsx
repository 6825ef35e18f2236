import { useState } from 'preact/hooks';
import type { Batch, BatchHistory, BatchOffers } from '../../hub/contract/index.ts';
import { Field } from '../coolRoom/Field.tsx';
import { numberOf } from '../coolRoom/useSending.ts';
import { words } from '../words.ts';
import { changeBatch } from './commands.ts';
import { countOf, TrayCount } from './TrayCount.tsx';
import { useHeeded } from './useHeeded.ts';
import { Warned } from './Warned.tsx';

/** A tap on a place carries the batch there; "only some" asks how many trays first. */
export function MoveBatch({
  batch,
  places,
  onDone,
}: {
  batch: Batch;
  places: BatchOffers['places'];
  onDone: (sentence: string, batch: BatchHistory) => void;
}) {
  const text = words.batches;
  const [some, setSome] = useState(false);
  const [trays, setTrays] = useState(String(Math.max(1, Math.floor(batch.traysLeft / 2))));
  const [minutes, setMinutes] = useState('');
  const [chosen, setChosen] = useState<string | null>(null);
  const { sending, failed, warned, forget, go } = useHeeded();
  const move = async ({ place, name }: BatchOffers['places'][number]) => {
    setChosen(place);
    const count = some ? countOf(trays) : batch.traysLeft;
    if (count === null || count < 1) return;
    const took = numberOf(minutes);
    const moved = await go((override) =>
      changeBatch(batch.id, {
        move: {
          place,
          ...(count === batch.traysLeft ? {} : { trays: count }),
          ...(took === null ? {} : { minutes: took }),
        },
        ...override,
      }),
    );
    if (moved) onDone(text.moved(text.name(count, batch.name, batch.variety), name), moved);
  };
  const others = places.filter(({ place }) => place !== batch.place);
  const asked = others.find(({ place }) => place === chosen);
  return (
    <form
      class="batch-form"
      aria-label={`${text.move}: ${text.name(batch.traysLeft, batch.name, batch.variety)}`}
      onSubmit={(event) => {
        event.preventDefault();
        if (warned !== '' && asked) move(asked);
      }}
    >
      {some && (
        <>
          <TrayCount
            label={text.someHow(batch.traysLeft)}
            value={trays}
            most={batch.traysLeft}
            onChange={(value) => {
              forget();
              setTrays(value);
            }}
          />
          <Field label={text.minutes} value={minutes} kind="number" onType={setMinutes} />
        </>
      )}
      <div class="batch-places">
        {others.map((one) => (
          <button
            type="button"
            key={one.place}
            aria-disabled={sending}
            onClick={() => {
              forget();
              move(one);
            }}
          >
            {text.moveTo(one.name)} <span class="quiet">{text.freeRoom(one.room)}</span>
          </button>
        ))}
      </div>
      {warned !== '' && asked && (
        <>
          <Warned sentence={warned} />
          <button type="submit" class="main" aria-disabled={sending}>
            {text.anyway}
          </button>
        </>
      )}
      {!some && batch.traysLeft > 1 && (
        <button type="button" class="plain" onClick={() => setSome(true)}>
          {text.some}
        </button>
      )}
      <p role="status" class="failed-line">
        {failed}
      </p>
    </form>
  );
}
