import './batches.css';
import { useEffect, useState } from 'preact/hooks';
import type { Batch, BatchCourse, BatchHistory, BatchOffers } from '../../hub/contract/index.ts';
import { now as clock } from '../clock.ts';
import { useFacts } from '../coolRoom/useFacts.ts';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { query } from '../router.ts';
import { farm, faults, today } from '../state.ts';
import { words } from '../words.ts';
import { AsLastWeek } from './AsLastWeek.tsx';
import { BatchCard } from './BatchCard.tsx';
import { BatchFilePart } from './BatchFilePart.tsx';
import { SowBatch } from './SowBatch.tsx';
import { lastOf, type Said, Stored } from './Stored.tsx';

const ENDED_DAYS = 90; // shown of those that have ended

/** What stands where, the way to sow more, and all that may be done with a batch. */
export function BatchesPage() {
  const text = words.batches;
  const zone = farm.value?.zone;
  const ended = new URLSearchParams(query.value).get('show') === 'ended';
  if (zone === undefined)
    return (
      <>
        <Heading title={text.title} />
        <Fault sentence={faults.value.today} />
      </>
    );
  const now = clock.value ?? Date.parse(today.value?.asOf ?? '') ?? 0;
  return (
    <div class="batches-page">
      <Heading title={ended ? text.ended : text.title} />
      <Page key={String(ended)} ended={ended} zone={zone} now={now} />
    </div>
  );
}

function Page({ ended, zone, now }: { ended: boolean; zone: string; now: number }) {
  const text = words.batches;
  const path = ended ? `/api/batches?state=ended&days=${ENDED_DAYS}` : '/api/batches';
  const batches = useFacts<Batch[]>(path);
  const offers = useFacts<BatchOffers>('/api/batches/offers');
  const ready = useFacts<BatchCourse[]>(ended ? null : '/api/batches/ready?courses=true');
  const [said, setSaid] = useState<Said | null>(null);
  const tell = (next: Said) => {
    setSaid(next);
    batches.again();
    offers.again();
    ready.again();
  };
  const changed = (sentence: string, batch: BatchHistory) =>
    tell({ sentence, undo: lastOf(batch) });
  const sown = (all: readonly BatchHistory[]) => {
    const what = all.map(({ trays, name, variety }) => text.name(trays, name, variety));
    tell({
      sentence: text.sownStored(what.join(', ')),
      undo: all.map(({ id, entry }) => ({ id, entry })),
    });
  };
  return (
    <>
      <Stored said={said} onUndone={() => tell({ sentence: text.undone, undo: [] })} />
      <div class="batch-columns">
        {!ended && (
          <section class="batch-sow">
            <h2>{text.sow}</h2>
            {offers.facts ? (
              <>
                <h3>{text.asLastWeek}</h3>
                <AsLastWeek offers={offers.facts} onSown={sown} />
                <h3>{text.sowTitle}</h3>
                <SowBatch offers={offers.facts} zone={zone} onSown={(batch) => sown([batch])} />
              </>
            ) : (
              <Fault sentence={offers.fault} again={offers.again} />
            )}
          </section>
        )}
        <section>
          <h2>{ended ? text.ended : text.growing}</h2>
          {batches.facts && batches.fault !== undefined && (
            <Fault sentence={batches.fault} again={batches.again} />
          )}
          {ready.fault !== undefined && <Fault sentence={ready.fault} again={ready.again} />}
          {!batches.facts ? (
            <Fault sentence={batches.fault} again={batches.again} />
          ) : batches.facts.length === 0 ? (
            <p class="quiet">{ended ? text.endedNone : text.none}</p>
          ) : (
            <ByPlace
              batches={batches.facts}
              offers={offers.facts}
              ready={ready.facts ?? []}
              zone={zone}
              now={now}
              onChanged={changed}
            />
          )}
          <p>
            <a class="batch-link" href={ended ? '/batches' : '/batches?show=ended'}>
              {ended ? text.growing : text.ended}
            </a>
          </p>
        </section>
      </div>
      {!ended && (
        <BatchFilePart
          zone={zone}
          onEntered={() => {
            batches.again();
            offers.again();
            ready.again();
          }}
        />
      )}
    </>
  );
}

/** Batches under the place they stand in, in the order of the farm's places. */
function ByPlace({
  batches,
  offers,
  ready,
  ...rest
}: {
  batches: readonly Batch[];
  offers: BatchOffers | null;
  ready: readonly BatchCourse[];
  zone: string;
  now: number;
  onChanged: (sentence: string, batch: BatchHistory) => void;
}) {
  const text = words.batches;
  // What the address points to was not there when the page was opened.
  useEffect(() => {
    const wanted = decodeURIComponent(location.hash.slice(1));
    if (wanted !== '') document.getElementById(wanted)?.scrollIntoView();
  }, []);
  const order = (offers?.places ?? []).map(({ place }) => place);
  const places = [...new Set(batches.map(({ place }) => place))].sort(
    (a, b) => order.indexOf(a) - order.indexOf(b),
  );
  return (
    <>
      {places.map((place) => {
        const here = batches.filter((batch) => batch.place === place);
        const offer = offers?.places.find((one) => one.place === place);
        const growing = here.reduce((sum, { traysLeft }) => sum + traysLeft, 0);
        const name = here[0]?.placeName ?? place;
        return (
          <section key={place} class="batch-place" id={`at-${place}`}>
            <h3>{growing === 0 ? name : text.room(name, growing, offer?.capacity ?? null)}</h3>
            <ul class="batch-list">
              {here.map((batch) => (
                <BatchCard
                  key={batch.id}
                  batch={batch}
                  offers={offers}
                  course={ready.find((one) => one.batch === batch.id) ?? null}
                  {...rest}
                />
              ))}
            </ul>
          </section>
        );
      })}
    </>
  );
}
