import { useRef, useState } from 'preact/hooks';
import type { MadeCode } from '../../hub/contract/index.ts';
import { newPasswordCode, removePerson, takeCodeBack } from '../commands.ts';
import { words } from '../words.ts';
import { AddPerson } from './AddPerson.tsx';
import { CodeShown, codeUntil } from './CodeShown.tsx';
import { Fault } from './Fault.tsx';
import { PersonRow } from './PersonRow.tsx';
import { usePeople } from './usePeople.ts';
import { useSending } from './useSending.ts';

/** Who may sign in, for growers: add, remove, a code for a new password. */
export function PeopleSection() {
  const text = words.setUp;
  const { people, fault, refresh, setPeople } = usePeople();
  const { failed, send } = useSending();
  const [code, setCode] = useState<MadeCode | null>(null);
  const [said, setSaid] = useState('');
  const saying = useRef<HTMLParagraphElement>(null);

  /** The row may be gone: what the hub did is said where the eye and a reader find it. */
  const say = (sentence: string) => {
    setSaid(sentence);
    saying.current?.focus();
  };
  const show = async (made: MadeCode) => {
    setSaid('');
    setCode(made);
    await refresh();
  };

  return (
    <section class="set-up">
      <h2>{text.people}</h2>
      <p role="status" class="said" ref={saying} tabIndex={-1}>
        {said}
      </p>
      {code && <CodeShown made={code} onSeen={() => setCode(null)} />}
      {people === null || fault !== undefined ? (
        <Fault sentence={fault} again={refresh} />
      ) : (
        <>
          <ul class="people-list">
            {people.people.map((person) => (
              <PersonRow
                key={person.name}
                person={person}
                onCode={() => send(async () => show(await newPasswordCode(person.name)))}
                onRemove={() =>
                  send(async () => {
                    setPeople(await removePerson(person.name));
                    say(text.removed(person.name));
                  })
                }
              />
            ))}
          </ul>
          <p role="status" class="failed-line">
            {failed}
          </p>
          <AddPerson onMade={show} />
          {people.codes.length > 0 && (
            <>
              <h3>{text.waiting}</h3>
              <ul class="people-list">
                {people.codes.map((one) => {
                  const line = text.waitingLine(text.roles[one.role], one.name, codeUntil(one));
                  return (
                    <li key={one.id}>
                      <p>{line}</p>
                      <button
                        type="button"
                        aria-label={text.forName(text.takeBack, line)}
                        onClick={() =>
                          send(async () => {
                            setPeople(await takeCodeBack(one.id));
                            if (code?.id === one.id) setCode(null);
                            say(text.takenBack);
                          })
                        }
                      >
                        {text.takeBack}
                      </button>
                    </li>
                  );
                })}
              </ul>
            </>
          )}
        </>
      )}
    </section>
  );
}
