import { useState } from 'preact/hooks';
import type { SowingPlanShown } from '../../hub/contract/index.ts';
import { Choice, Field } from '../coolRoom/Field.tsx';
import { addDays } from '../times.ts';
import { keptOf } from '../typed.ts';
import { words } from '../words.ts';
import { useChange } from './useChange.ts';

const PLANNED = 84; // d, twelve weeks: as far as the hub plans

/** Something that is wanted on a day of its own: a market, one more box. */
export function AddWant({
  plan,
  onStored,
}: {
  plan: SowingPlanShown;
  onStored: (sentence: string) => void;
}) {
  const text = words.planning;
  const [of, setOf] = useState('');
  const [day, setDay] = useState('');
  const [kg, setKg] = useState('');
  const { sending, failed, send } = useChange(onStored);
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    const weight = keptOf(kg, 'kg');
    const product = plan.products.find(({ id }) => id === of);
    if (weight === null || weight < 0 || product === undefined || day === '') return;
    if (await send({ day, of, kg: weight }, text.stored(product.name, day, weight))) setKg('');
  };
  return (
    <details class="add-want">
      <summary>{text.add}</summary>
      <form onSubmit={submit}>
        <Choice
          label={text.addWhat}
          value={of}
          none={text.choose}
          options={plan.products.map(({ id, name }) => [id, name] as const)}
          onChoose={setOf}
        />
        <label>
          {text.addDay}
          <input
            type="date"
            required
            min={plan.today}
            max={addDays(plan.today, PLANNED)}
            value={day}
            onInput={(event) => setDay(event.currentTarget.value)}
          />
        </label>
        <Field label={text.addKg} value={kg} kind="number" required onType={setKg} />
        <button type="submit" class="main" aria-disabled={sending}>
          {sending ? text.sending : text.store}
        </button>
        <p role="status" class="failed-line">
          {failed}
        </p>
      </form>
    </details>
  );
}
