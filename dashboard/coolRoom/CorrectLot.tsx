import { useState } from 'preact/hooks';
import type { Cooling, Lot, LotClass, LotHistory } from '../../hub/contract/index.ts';
import { today } from '../state.ts';
import { words } from '../words.ts';
import { changeLot } from './commands.ts';
import { correctionOf, saidOf } from './correctionOf.ts';
import { Choice, Field, FormEnd } from './Field.tsx';
import { fieldsOfFarm } from './MoreAboutLot.tsx';
import { useSending } from './useSending.ts';
import { overrideBy, Warned } from './Warned.tsx';

/** What was entered wrong, said anew: only what differs is sent. */
export function CorrectLot({
  lot,
  crops,
  zone,
  onDone,
}: {
  lot: Lot;
  /** Crops by id and name. */
  crops: readonly (readonly [string, string])[];
  zone: string;
  onDone: (sentence: string, lot: LotHistory) => void;
}) {
  const text = words.lots;
  const before = saidOf(lot, zone);
  const [said, setSaid] = useState(before);
  const [warned, setWarned] = useState('');
  const { sending, failed, send } = useSending();
  const rooms = (today.value?.places ?? [])
    .filter(({ kind }) => kind === 'cool-room')
    .map(({ id, name }) => [id, name] as const);
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    const correct = correctionOf(before, said, zone);
    const changed = await send(
      () => changeLot(lot.id, { correct, ...(warned === '' ? {} : overrideBy()) }),
      ({ status, message }) => {
        if (status !== 409) return false;
        setWarned(message);
        return true;
      },
    );
    if (changed) onDone(text.corrected, changed);
  };
  const set = <Key extends keyof typeof said>(name: Key, value: (typeof said)[Key]) => {
    setSaid({ ...said, [name]: value });
    setWarned('');
  };
  const field = (
    name: 'kg' | 'harvested' | 'stored' | 'price',
    label: string,
    kind: 'number' | 'datetime-local',
  ) => <Field label={label} value={said[name]} kind={kind} onType={(value) => set(name, value)} />;
  const own = crops.some(([id]) => id === lot.crop) ? [] : [[lot.crop, lot.name] as const];
  return (
    <form class="lot-form" onSubmit={submit} aria-label={`${text.correct}: ${lot.name}`}>
      <Choice
        label={text.which}
        value={said.crop}
        options={[...own, ...crops]}
        onChoose={(crop) => set('crop', crop)}
      />
      {field('kg', text.weight, 'number')}
      {rooms.length > 1 && lot.partOf === null && (
        <Choice
          label={text.firstRoom}
          value={said.place}
          options={rooms}
          onChoose={(place) => set('place', place)}
        />
      )}
      <Choice
        label={text.from}
        value={said.from}
        none={text.fromNone}
        options={fieldsOfFarm()}
        onChoose={(from) => set('from', from)}
      />
      {field('harvested', text.wait, 'datetime-local')}
      {field('stored', text.enter, 'datetime-local')}
      <Choice
        label={text.cooling}
        value={said.cooled}
        none={text.coolingNone}
        options={Object.entries(text.coolings)}
        onChoose={(cooled) => set('cooled', cooled as Cooling | '')}
      />
      <Choice
        label={text.class}
        value={said.of}
        none={text.classDefault}
        options={Object.entries(text.classes)}
        onChoose={(of) => set('of', of as LotClass | '')}
      />
      {field('price', text.price, 'number')}
      <Warned sentence={warned} />
      <FormEnd label={warned === '' ? text.take : text.anyway} sending={sending} said={failed} />
    </form>
  );
}
