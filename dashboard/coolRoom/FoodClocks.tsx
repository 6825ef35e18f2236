import { useState } from 'preact/hooks';
import type { FoodClock, FoodClocks as Shown } from '../../hub/contract/index.ts';
import { Fault } from '../parts/Fault.tsx';
import { when } from '../times.ts';
import { keptOf, typedOf } from '../typed.ts';
import { words } from '../words.ts';
import { setFoodClock } from './commands.ts';
import { Field, FormEnd } from './Field.tsx';
import { byMe, NameField } from './NameField.tsx';
import { useFacts } from './useFacts.ts';
import { numberOf, useSending } from './useSending.ts';

/** Limit, clock and words of each class of lots, as agreed with the food-safety officer. */
export function FoodClocks({
  zone,
  now,
  onStored,
}: {
  zone: string;
  now: number;
  onStored: () => void;
}) {
  const text = words.record;
  const { facts, fault, again } = useFacts<Shown>('/api/food-clocks');
  return (
    <section>
      <h2>{text.clocks}</h2>
      {!facts ? (
        <Fault sentence={fault} again={again} />
      ) : (
        <>
          <p class="quiet">{facts.why}</p>
          {facts.clocks.map((clock) => (
            <Clock
              key={`${clock.class} ${clock.setAt}`}
              clock={clock}
              zone={zone}
              now={now}
              onStored={() => {
                again();
                onStored();
              }}
            />
          ))}
          <details>
            <summary>{text.printed}</summary>
            <ul>
              {facts.printed.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </details>
        </>
      )}
    </section>
  );
}

const textOf = (value: number | null) => (value === null ? '' : String(value));

function Clock({
  clock,
  zone,
  now,
  onStored,
}: {
  clock: FoodClock;
  zone: string;
  now: number;
  onStored: () => void;
}) {
  const text = words.record;
  const name = words.lots.classes[clock.class];
  const [said, setSaid] = useState({
    limit: typedOf(clock.limit, '°C'),
    hours: textOf(clock.clockHours),
    words: clock.words ?? '',
  });
  const { sending, failed, send } = useSending();
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    const done = await send(() =>
      setFoodClock(clock.class, {
        limit: keptOf(said.limit, '°C'),
        clockHours: numberOf(said.hours),
        words: said.words.trim() === '' ? null : said.words,
        ...byMe(),
      }),
    );
    if (done) onStored();
  };
  const field = (key: keyof typeof said, label: string) => (
    <Field
      label={label}
      value={said[key]}
      kind={key === 'words' ? 'text' : 'number'}
      longest={300}
      onType={(text) => setSaid({ ...said, [key]: text })}
    />
  );
  return (
    <div class="food-clock">
      <p>
        {text.clockOf(name, clock.limit, clock.clockHours)}.{' '}
        {clock.setBy !== null && clock.setAt !== null && (
          <span class="quiet">
            {text.clockSet(clock.setBy, when(Date.parse(clock.setAt), zone, now))}
          </span>
        )}
      </p>
      <details class="record-form">
        <summary>
          {text.change}
          <span class="unseen">: {name}</span>
        </summary>
        <form class="lot-form" onSubmit={submit} aria-label={`${text.change}: ${name}`}>
          {field('limit', text.limit)}
          {field('hours', text.hours)}
          {field('words', text.words)}
          <NameField label={text.by} />
          <FormEnd label={text.store} sending={sending} said={failed} />
        </form>
      </details>
    </div>
  );
}
