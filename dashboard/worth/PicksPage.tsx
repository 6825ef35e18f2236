import './worth.css';
import { useState } from 'preact/hooks';
import type { Pick, PickHistory, PickOffers } from '../../hub/contract/index.ts';
import { now as clock } from '../clock.ts';
import { useFacts } from '../coolRoom/useFacts.ts';
import { useSending } from '../coolRoom/useSending.ts';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { farm, today } from '../state.ts';
import { words } from '../words.ts';
import { changePick } from './commands.ts';
import { PickCard } from './PickCard.tsx';
import { QuickPick } from './QuickPick.tsx';

const SHOWN = 30; // pickings; the file has them all

/** The newest, and the one that a link leads to. */
const isShown = ({ id }: Pick, at: number) => at < SHOWN || location.hash === `#${id}`;

type Said = { readonly sentence: string; readonly pick: PickHistory | null };

/** A picking is entered here, and the latest ones are filled in or corrected. */
export function PicksPage() {
  const text = words.picks;
  const offers = useFacts<PickOffers>('/api/picks/offers');
  const picks = useFacts<Pick[]>('/api/picks');
  const [said, setSaid] = useState<Said | null>(null);
  const { failed, send } = useSending();
  const zone = farm.value?.zone;
  const now = clock.value ?? Date.parse(today.value?.asOf ?? '');
  const tell = (next: Said) => {
    setSaid(next);
    offers.again();
    picks.again();
  };
  const undo = async (pick: PickHistory) => {
    const gone = await send(() => changePick(pick.id, { undo: pick.entry }));
    if (gone) tell({ sentence: text.takenBack, pick: null });
  };
  return (
    <div class="picks-page">
      <Heading title={text.title} />
      {offers.facts === null ? (
        <Fault sentence={offers.fault} again={offers.again} />
      ) : offers.facts.places.length === 0 ? (
        <p>{text.noPlace}</p>
      ) : (
        <QuickPick
          offers={offers.facts}
          onStored={(pick) =>
            tell({ sentence: text.stored(pick.kg, pick.name, pick.placeName), pick })
          }
        />
      )}
      <div class="pick-said" role="status">
        {said && (
          <p>
            <span>{said.sentence}</span>
            {said.pick && (
              <button type="button" onClick={() => said.pick && undo(said.pick)}>
                {words.lots.undo}
              </button>
            )}
          </p>
        )}
        {failed !== '' && <p class="failed-line">{failed}</p>}
      </div>
      <section>
        <h2>{text.list}</h2>
        {picks.facts === null || zone === undefined ? (
          <Fault sentence={picks.fault} again={picks.again} />
        ) : picks.facts.length === 0 ? (
          <p class="quiet">{text.none}</p>
        ) : (
          <ul class="pick-list">
            {picks.facts.filter(isShown).map((pick) => (
              <PickCard
                key={pick.id}
                pick={pick}
                zone={zone}
                now={now}
                onChanged={(sentence) => tell({ sentence, pick: null })}
              />
            ))}
          </ul>
        )}
        <p class="worth-links">
          <a href="/worth">{text.worth}</a>
          <a href="/api/picks.csv">{text.file}</a>
        </p>
      </section>
    </div>
  );
}
