import { useState } from 'preact/hooks';
import type { Lot, LotHistory, LotUse } from '../../hub/contract/index.ts';
import { today } from '../state.ts';
import { keptOf, typedOf } from '../typed.ts';
import { words } from '../words.ts';
import { changeLot } from './commands.ts';
import { Choice, Field, FormEnd } from './Field.tsx';
import { byMe, NameField } from './NameField.tsx';
import { useSending } from './useSending.ts';
import { overrideBy, Warned } from './Warned.tsx';

const USES: readonly LotUse[] = ['sold', 'used', 'moved', 'thrown-out'];

/** Sold, used, moved or thrown out: all of it or a part. Or a named person says that it may stay. */
export function TakeLot({
  lot,
  onDone,
}: {
  lot: Lot;
  onDone: (sentence: string, lot: LotHistory) => void;
}) {
  const text = words.lots;
  const [how, setHow] = useState<LotUse>('sold');
  const [kg, setKg] = useState(typedOf(lot.kgLeft, 'kg'));
  const [to, setTo] = useState('');
  const [warned, setWarned] = useState('');
  const { sending, failed, send } = useSending();
  const rooms = (today.value?.places ?? [])
    .filter(({ kind, id }) => kind === 'cool-room' && id !== lot.place)
    .map(({ id, name }) => [id, name] as const);
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    // All that is left is what is left, not what its shown digits come to.
    const value = kg === typedOf(lot.kgLeft, 'kg') ? lot.kgLeft : keptOf(kg, 'kg');
    if (value === null) return;
    const take = {
      ...{ how, kg: value },
      ...(to === '' || how === 'used' || how === 'thrown-out' ? {} : { to }),
      ...(how === 'thrown-out' ? byMe() : {}),
    };
    const changed = await send(
      () => changeLot(lot.id, { take, ...(warned === '' ? {} : overrideBy()) }),
      ({ status, message }) => {
        if (status !== 409) return false;
        setWarned(message);
        return true;
      },
    );
    if (changed) onDone(text.taken(how, value, lot.name), changed);
  };
  const stay = async () => {
    const changed = await send(() => changeLot(lot.id, { release: byMe() }));
    if (changed) onDone(text.mayStaySaid(lot.name), changed);
  };
  return (
    <form class="lot-form" onSubmit={submit} aria-label={`${text.use}: ${lot.name}`}>
      <fieldset class="lot-uses">
        <legend>{text.use}</legend>
        {USES.map((one) => (
          <button type="button" key={one} aria-pressed={one === how} onClick={() => setHow(one)}>
            {text.uses[one]}
          </button>
        ))}
      </fieldset>
      <Field label={text.howMuch} value={kg} kind="number" required onType={setKg} />
      {how === 'moved' && rooms.length > 0 && (
        <Choice
          label={text.moveTo}
          value={rooms.some(([id]) => id === to) ? to : ''}
          none={text.elsewhere}
          options={rooms}
          onChoose={(room) => {
            setTo(room);
            setWarned('');
          }}
        />
      )}
      {(how === 'sold' || (how === 'moved' && !rooms.some(([id]) => id === to))) && (
        <Field label={text.to} value={to} longest={60} onType={setTo} />
      )}
      {how === 'thrown-out' && (
        <>
          <p class="quiet">{text.nameWhy}</p>
          <NameField />
        </>
      )}
      <Warned sentence={warned} />
      <FormEnd label={warned === '' ? text.take : text.anyway} sending={sending} said={failed}>
        {how === 'thrown-out' && (
          <button type="button" aria-disabled={sending} onClick={stay}>
            {text.mayStay}
          </button>
        )}
      </FormEnd>
    </form>
  );
}
