import './losses.css';
import '../coolRoom/coolRoom.css';
import { useEffect, useRef, useState } from 'preact/hooks';
import type {
  Loss,
  LossHistory,
  LossOffers,
  LossStrips as Strips,
} from '../../hub/contract/index.ts';
import { now as clock } from '../clock.ts';
import { useFacts } from '../coolRoom/useFacts.ts';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { farm } from '../state.ts';
import { words } from '../words.ts';
import { LossCard } from './LossCard.tsx';
import { LossEntry } from './LossEntry.tsx';
import { LossStrips } from './LossStrips.tsx';
import { Numbers } from './Numbers.tsx';
import { QuietWeek } from './QuietWeek.tsx';
import { type Said, StoredLoss } from './StoredLoss.tsx';

const WEEKS = [6, 10, 26, 52] as const;
const FIRST_SHOWN = 10;

/** The log of losses first, then the picture, then the numbers. */
export function LossesPage() {
  const text = words.losses;
  const facts = farm.value;
  const [weeks, setWeeks] = useState<number>(FIRST_SHOWN);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [said, setSaid] = useState<Said | null>(null);
  const [version, setVersion] = useState(0);
  const offers = useFacts<LossOffers>('/api/losses/offers');
  const strips = useFacts<Strips>(`/api/losses/strips?weeks=${weeks}`);
  const losses = useFacts<Loss[]>(
    strips.facts ? `/api/losses?from=${strips.facts.from}&to=${strips.facts.to}` : null,
  );
  const opened = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (chosen.length > 0) opened.current?.focus({ preventScroll: false });
  }, [chosen]);
  if (facts === null)
    return (
      <>
        <Heading title={text.title} />
        <Fault sentence={undefined} />
      </>
    );
  const now = clock.value ?? Date.parse(facts.now);
  const again = () => {
    offers.again();
    strips.again();
    losses.again();
    setVersion(version + 1);
  };
  const tell = (next: Said) => {
    setSaid(next);
    again();
  };
  const shown = losses.facts?.filter(({ id }) => chosen.includes(id)) ?? [];
  const card = (loss: Loss) => (
    <LossCard
      key={loss.id}
      loss={loss}
      farm={facts}
      now={now}
      today={offers.facts?.today ?? loss.day}
      onChanged={(sentence, changed: LossHistory) => tell({ sentence, loss: changed })}
    />
  );
  return (
    <div class="losses-page">
      <Heading title={text.title} />
      {offers.facts ? (
        <LossEntry
          offers={offers.facts}
          onStored={(loss) => tell({ sentence: text.stored(loss.words, loss.placeName), loss })}
        />
      ) : (
        <Fault sentence={offers.fault} again={offers.again} />
      )}
      <StoredLoss said={said} onSaid={tell} />
      {offers.facts && <QuietWeek offers={offers.facts} onSaid={again} />}
      <section class="loss-picture">
        <h2>{text.picture}</h2>
        <label class="loss-weeks">
          {text.weeks}
          <select
            value={String(weeks)}
            onChange={(event) => {
              setChosen([]);
              setWeeks(Number(event.currentTarget.value));
            }}
          >
            {WEEKS.map((count) => (
              <option key={count} value={String(count)}>
                {text.weeksOption(count)}
              </option>
            ))}
          </select>
        </label>
        {strips.facts ? (
          <>
            {strips.facts.places.every(({ pins }) => pins.length === 0) && (
              <p class="quiet">{text.noneYet}</p>
            )}
            <LossStrips strips={strips.facts} chosen={chosen} onChoose={setChosen} />
          </>
        ) : (
          <Fault sentence={strips.fault} again={strips.again} />
        )}
        {shown.length > 0 && (
          <section class="loss-open" ref={opened} tabIndex={-1} aria-label={text.entryTitle}>
            {shown.map(card)}
            <button type="button" onClick={() => setChosen([])}>
              {text.close}
            </button>
          </section>
        )}
        {losses.facts && losses.facts.length > 0 && (
          <details class="loss-list">
            <summary>{text.list}</summary>
            <ul class="plain-list">
              {losses.facts.map((loss) => (
                <li key={loss.id}>
                  <button type="button" onClick={() => setChosen([loss.id])}>
                    {loss.state === 'withdrawn' ? <s>{lineOf(loss)}</s> : lineOf(loss)}
                  </button>
                </li>
              ))}
            </ul>
          </details>
        )}
      </section>
      <Numbers version={version} />
      <p class="record-links">
        <a href="/api/losses.csv" download>
          {text.csv}
        </a>
        <button type="button" onClick={() => print()}>
          {text.print}
        </button>
      </p>
    </div>
  );
}

const lineOf = (loss: Loss) => `${loss.day} · ${loss.placeName}: ${loss.words}`;
