import { useState } from 'preact/hooks';
import type { Lot, LotHistory } from '../../hub/contract/index.ts';
import { words } from '../words.ts';
import { changeLot } from './commands.ts';
import { Choice, Field, FormEnd } from './Field.tsx';
import { fieldsOfFarm } from './MoreAboutLot.tsx';
import { fromTheWall, onTheWall } from './onTheWall.ts';
import { numberOf, useSending } from './useSending.ts';

/** What was entered wrong, said anew: only what differs is sent. */
export function CorrectLot({
  lot,
  zone,
  onDone,
}: {
  lot: Lot;
  zone: string;
  onDone: (sentence: string, lot: LotHistory) => void;
}) {
  const text = words.lots;
  const before = {
    kg: String(lot.kg),
    from: lot.from ?? '',
    harvested: onTheWall(lot.harvestedAt, zone),
    stored: onTheWall(lot.storedAt, zone),
  };
  const [said, setSaid] = useState(before);
  const { sending, failed, send } = useSending();
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    const kg = numberOf(said.kg);
    const correct = {
      ...(said.kg === before.kg || kg === null ? {} : { kg }),
      ...(said.from === before.from ? {} : { from: said.from === '' ? null : said.from }),
      ...(said.harvested === before.harvested
        ? {}
        : { harvestedAt: said.harvested === '' ? null : fromTheWall(said.harvested, zone) }),
      ...(said.stored === before.stored || said.stored === ''
        ? {}
        : { storedAt: fromTheWall(said.stored, zone) }),
    };
    const changed = await send(() => changeLot(lot.id, { correct }));
    if (changed) onDone(text.corrected, changed);
  };
  const field = (
    name: 'kg' | 'harvested' | 'stored',
    label: string,
    kind: 'number' | 'datetime-local',
  ) => (
    <Field
      label={label}
      value={said[name]}
      kind={kind}
      onType={(text) => setSaid({ ...said, [name]: text })}
    />
  );
  return (
    <form class="lot-form" onSubmit={submit} aria-label={`${text.correct}: ${lot.name}`}>
      {field('kg', text.weight, 'number')}
      <Choice
        label={text.from}
        value={said.from}
        none={text.fromNone}
        options={fieldsOfFarm()}
        onChoose={(from) => setSaid({ ...said, from })}
      />
      {field('harvested', text.wait, 'datetime-local')}
      {field('stored', text.enter, 'datetime-local')}
      <FormEnd label={text.take} sending={sending} said={failed} />
    </form>
  );
}
