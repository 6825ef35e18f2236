import { useEffect, useState } from 'preact/hooks';
import type { ChangeAlarmSettings, ShownAlarmSettings } from '../../hub/contract/index.ts';
import { words } from '../words.ts';
import { type DraftPerson, PersonFields } from './PersonFields.tsx';
import { useSaving } from './useSaving.ts';

const DAYTIME = { from: '07:00', to: '21:00' };

const draftOf = (people: ShownAlarmSettings['people']): DraftPerson[] =>
  people.map(({ webhook, email, ...person }) => ({
    ...person,
    key: person.id,
    email: email ?? '',
    kept: webhook,
    webhook: '',
    away: false,
  }));

const changeOf = (people: readonly DraftPerson[]): NonNullable<ChangeAlarmSettings['people']> =>
  people.map(({ id, name, email, webhook, away, hours }) => ({
    ...(id === undefined ? {} : { id }),
    name,
    email: email === '' ? null : email,
    ...(webhook !== '' ? { webhook } : away ? { webhook: null } : {}),
    hours,
  }));

/** Who is woken, in which order, when, and by what. */
export function PeopleForm({ settings }: { settings: ShownAlarmSettings }) {
  const text = words.alarms.people;
  const [people, setPeople] = useState(() => draftOf(settings.people));
  const [added, setAdded] = useState(0);
  const { saving, said, save } = useSaving();
  // Only when the people themselves were stored: saving a mail server keeps what is half typed here.
  const stored = JSON.stringify(settings.people);
  useEffect(() => setPeople(draftOf(JSON.parse(stored))), [stored]);
  const put = (at: number, person: DraftPerson) =>
    setPeople(people.map((one, i) => (i === at ? person : one)));
  const move = (at: number, to: number) => {
    const next = [...people];
    const [one] = next.splice(at, 1);
    if (one) next.splice(to, 0, one);
    setPeople(next);
  };
  const send = (event: SubmitEvent) => {
    event.preventDefault();
    save({ people: changeOf(people) });
  };
  const add = () => {
    setAdded(added + 1);
    setPeople([
      ...people,
      {
        ...{ key: `new ${added}`, name: '', email: '', kept: null, webhook: '', away: false },
        hours: { urgent: { from: '00:00', to: '00:00' }, today: DAYTIME },
      },
    ]);
  };
  return (
    <form class="people" onSubmit={send}>
      {people.length === 0 && <p class="quiet">{text.none}</p>}
      <ol>
        {people.map((person, i) => (
          <li key={person.key}>
            <PersonFields
              person={person}
              saved={settings.people.some(({ id }) => id === person.id)}
              onChange={(next) => put(i, next)}
            />
            <div class="alarm-buttons">
              <button
                type="button"
                aria-label={text.up(person.name)}
                aria-disabled={i === 0}
                onClick={() => i > 0 && move(i, i - 1)}
              >
                {text.upShort}
              </button>
              <button
                type="button"
                aria-label={text.down(person.name)}
                aria-disabled={i === people.length - 1}
                onClick={() => i < people.length - 1 && move(i, i + 1)}
              >
                {text.downShort}
              </button>
              <button
                type="button"
                aria-label={text.removeOf(person.name)}
                onClick={() => setPeople(people.filter((_, at) => at !== i))}
              >
                {text.remove}
              </button>
            </div>
          </li>
        ))}
      </ol>
      <div class="alarm-buttons">
        <button type="button" onClick={add}>
          {text.add}
        </button>
        <button type="submit" class="main" aria-disabled={saving}>
          {saving ? words.alarms.sending.saving : text.save}
        </button>
      </div>
      <p role="status" class="failed-line">
        {said}
      </p>
    </form>
  );
}
