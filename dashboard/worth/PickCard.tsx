import { useEffect, useRef, useState } from 'preact/hooks';
import type { Pick } from '../../hub/contract/index.ts';
import { Field, FormEnd } from '../coolRoom/Field.tsx';
import { numberOf, useSending } from '../coolRoom/useSending.ts';
import { Mark } from '../parts/Mark.tsx';
import { when } from '../times.ts';
import { keptOf, typedOf } from '../typed.ts';
import { words } from '../words.ts';
import { changePick } from './commands.ts';
import { HowMuch } from './HowMuch.tsx';

/** One picking; what is not known of it is filled in here. */
export function PickCard({
  pick,
  zone,
  now,
  onChanged,
}: {
  pick: Pick;
  zone: string;
  now: number;
  onChanged: (sentence: string) => void;
}) {
  const text = words.picks;
  // A link from the page that counts leads to the very picking, with its form open.
  const [open, setOpen] = useState(location.hash === `#${pick.id}`);
  const card = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (open) card.current?.scrollIntoView();
  }, []);
  const name = text.line(pick.kg, pick.name, pick.placeName);
  const { lostKg: lost, minutes, pickers, who } = pick;
  return (
    <li id={pick.id} ref={card}>
      <h3>{name}</h3>
      <p class="quiet">
        {pick.missing.length > 0 && <Mark shape="unknown" />}{' '}
        {text.facts({ time: when(Date.parse(pick.at), zone, now), lost, minutes, pickers, who })}
      </p>
      {pick.note !== null && <p>{pick.note}</p>}
      <button
        type="button"
        aria-expanded={open}
        aria-label={`${text.fill}: ${name}`}
        onClick={() => setOpen(!open)}
      >
        {text.fill}
      </button>
      {open && (
        <CorrectPick
          pick={pick}
          onDone={(sentence) => {
            setOpen(false);
            onChanged(sentence);
          }}
        />
      )}
    </li>
  );
}

/** Only what differs is sent. */
function CorrectPick({ pick, onDone }: { pick: Pick; onDone: (sentence: string) => void }) {
  const text = words.picks;
  const before = {
    kg: typedOf(pick.kg, 'kg'),
    minutes: String(pick.minutes ?? ''),
    lost: typedOf(pick.lostKg, 'kg'),
  };
  const [said, setSaid] = useState(before);
  const { sending, failed, send } = useSending();
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    const kg = keptOf(said.kg, 'kg');
    const correct = {
      ...(said.kg === before.kg || kg === null ? {} : { kg }),
      ...(said.minutes === before.minutes ? {} : { minutes: numberOf(said.minutes) }),
      ...(said.lost === before.lost ? {} : { lostKg: keptOf(said.lost, 'kg') }),
    };
    if (await send(() => changePick(pick.id, { correct }))) onDone(text.corrected);
  };
  const takeBack = async () => {
    if (await send(() => changePick(pick.id, { undo: pick.entry }))) onDone(text.takenBack);
  };
  return (
    <form class="quick-pick" onSubmit={submit} aria-label={`${text.fill}: ${pick.name}`}>
      <Field
        label={text.weight}
        value={said.kg}
        kind="number"
        required
        onType={(kg) => setSaid({ ...said, kg })}
      />
      <HowMuch
        kg={keptOf(said.kg, 'kg')}
        usual={pick.minutes === null ? [] : [pick.minutes]}
        minutes={said.minutes}
        lost={said.lost}
        onMinutes={(minutes) => setSaid({ ...said, minutes })}
        onLost={(lost) => setSaid({ ...said, lost })}
      />
      <FormEnd label={text.send} sending={sending} said={failed}>
        <button type="button" aria-disabled={sending} onClick={takeBack}>
          {text.takeBack}
        </button>
      </FormEnd>
    </form>
  );
}
