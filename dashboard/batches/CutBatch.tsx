import { useEffect, useRef, useState } from 'preact/hooks';
import type { Batch, BatchHistory, BatchOffers, CutStage } from '../../hub/contract/index.ts';
import { Field, FormEnd } from '../coolRoom/Field.tsx';
import { numberOf, useSending } from '../coolRoom/useSending.ts';
import { farm } from '../state.ts';
import { keptOf, typedOf } from '../typed.ts';
import { words } from '../words.ts';
import { changeBatch } from './commands.ts';
import { countOf, TrayCount } from './TrayCount.tsx';

const STAGES: readonly CutStage[] = ['later', 'young'];

/** A weight, and all trays; the rest is as last time unless somebody says otherwise. */
export function CutBatch({
  batch,
  offer,
  onDone,
}: {
  batch: Batch;
  offer: BatchOffers['crops'][number] | undefined;
  onDone: (sentence: string, batch: BatchHistory) => void;
}) {
  const text = words.batches;
  const [kg, setKg] = useState('');
  const [trays, setTrays] = useState(String(batch.traysLeft));
  const [stage, setStage] = useState<CutStage>('later');
  const [clears, setClears] = useState(offer?.regrows !== true);
  const [minutes, setMinutes] = useState('');
  const [price, setPrice] = useState('');
  const [lost, setLost] = useState('');
  const { sending, failed, send } = useSending();
  const weight = useRef<HTMLInputElement>(null);
  useEffect(() => weight.current?.focus({ preventScroll: true }), []);
  const currency = farm.value?.money ?? '';
  const count = countOf(trays);
  const weights = [...new Set((offer?.perTray ?? []).map((one) => rounded(one * (count ?? 0))))];
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    const value = keptOf(kg, 'kg');
    if (value === null || count === null) return;
    const cut = {
      ...{ kg: value, trays: count, stage, clears },
      ...{ minutes: numberOf(minutes), price: keptOf(price, '/kg'), lostKg: keptOf(lost, 'kg') },
    };
    const changed = await send(() => changeBatch(batch.id, { cut }));
    if (changed) onDone(text.cutStored(value, batch.name), changed);
  };
  return (
    <form
      class="batch-form"
      onSubmit={submit}
      aria-label={`${text.cut}: ${text.name(batch.traysLeft, batch.name, batch.variety)}`}
    >
      <label class="big-field">
        {text.kg}
        <input
          ref={weight}
          required
          inputMode="decimal"
          autocomplete="off"
          pattern="[0-9]*[.,]?[0-9]+"
          value={kg}
          onInput={(event) => setKg(event.currentTarget.value)}
        />
      </label>
      {weights.length > 0 && (
        <fieldset class="batch-three">
          <legend>{text.lastWeights}</legend>
          {weights.map((one) => (
            <button type="button" key={one} onClick={() => setKg(typedOf(one, 'kg'))}>
              {words.kilograms(one)}
            </button>
          ))}
        </fieldset>
      )}
      <TrayCount label={text.howMany} value={trays} most={batch.traysLeft} onChange={setTrays} />
      <fieldset class="batch-two">
        <legend>{text.stage}</legend>
        {STAGES.map((one) => (
          <button
            type="button"
            key={one}
            aria-pressed={one === stage}
            onClick={() => setStage(one)}
          >
            {text.stages[one]}
          </button>
        ))}
      </fieldset>
      <Field label={text.minutes} value={minutes} kind="number" onType={setMinutes} />
      <Field label={text.lost} value={lost} kind="number" onType={setLost} />
      <button type="button" aria-pressed={numberOf(lost) === 0} onClick={() => setLost('0')}>
        {text.nothingLost}
      </button>
      <details>
        <summary>{text.more}</summary>
        <label class="tick-box">
          <input
            type="checkbox"
            checked={clears}
            onChange={(event) => setClears(event.currentTarget.checked)}
          />
          {text.clears}
        </label>
        <Field label={text.price(currency)} value={price} kind="number" onType={setPrice} />
      </details>
      <FormEnd label={text.store} sending={sending} said={failed} />
    </form>
  );
}

/** To the 10 g a scale shows. */
const rounded = (kg: number) => Math.round(100 * kg) / 100;
