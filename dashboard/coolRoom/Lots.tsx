import { useState } from 'preact/hooks';
import type { Lot, LotOffers } from '../../hub/contract/index.ts';
import { Fault } from '../parts/Fault.tsx';
import { words } from '../words.ts';
import { LotCard } from './LotCard.tsx';
import { QuickEntry } from './QuickEntry.tsx';
import { type Said, Stored } from './Stored.tsx';
import { useFacts } from './useFacts.ts';

/** What lies in a room, in the order to sell it, and the way to enter more. */
export function Lots({
  room,
  roomName,
  zone,
  now,
}: {
  room: string;
  roomName: string;
  zone: string;
  now: number;
}) {
  const text = words.lots;
  const place = encodeURIComponent(room);
  const lots = useFacts<Lot[]>(`/api/lots?place=${place}`);
  const offers = useFacts<LotOffers>(`/api/lots/offers?place=${place}`);
  const [said, setSaid] = useState<Said | null>(null);
  const crops = (offers.facts?.crops ?? []).map(({ crop, name }) => [crop, name] as const);
  const tell = (next: Said) => {
    setSaid(next);
    lots.again();
    offers.again();
  };
  return (
    <section class="lots">
      <h2>{text.title}</h2>
      {offers.facts ? (
        <QuickEntry
          room={room}
          offers={offers.facts}
          onStored={(lot) => tell({ sentence: text.stored(lot.kg, lot.name, roomName), lot })}
        />
      ) : (
        <Fault sentence={offers.fault} again={offers.again} />
      )}
      <Stored said={said} onUndone={() => tell({ sentence: text.undone, lot: null })} />
      {!lots.facts ? (
        <Fault sentence={lots.fault} again={lots.again} />
      ) : lots.facts.length === 0 ? (
        <p class="quiet">{text.none}</p>
      ) : (
        <>
          <p class="quiet">{text.inOrder}</p>
          <ol class="lot-list">
            {lots.facts.map((lot) => (
              <LotCard
                key={lot.id}
                lot={lot}
                crops={crops}
                zone={zone}
                now={now}
                onChanged={(sentence, changed) => tell({ sentence, lot: changed })}
              />
            ))}
          </ol>
        </>
      )}
    </section>
  );
}
