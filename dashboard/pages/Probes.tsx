import { useEffect, useRef, useState } from 'preact/hooks';
import { now } from '../clock.ts';
import { refreshProbes } from '../live.ts';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { Keeping } from '../parts/Keeping.tsx';
import { ProbeCard } from '../parts/ProbeCard.tsx';
import { RefusedList } from '../parts/RefusedList.tsx';
import { farm, faults, looks, probes, strangers, today } from '../state.ts';
import { words } from '../words.ts';

const BETWEEN = 10_000; // ms; ours: often enough to see a probe that was just switched on

/** Probes without a place first, then those that have one. */
export function Probes() {
  const ready = farm.value !== null;
  const [said, setSaid] = useState('');
  const saying = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (!ready) return;
    refreshProbes();
    let seen = looks.peek();
    const timer = setInterval(() => {
      if (looks.peek() === seen || document.hidden) return;
      seen = looks.peek();
      refreshProbes();
    }, BETWEEN);
    return () => clearInterval(timer);
  }, [ready]);
  const all = probes.value;
  const clock = now.value;
  if (all === null || clock === null) {
    return (
      <>
        <Heading title={words.probes.title} />
        <Fault sentence={faults.value.probes} again={refreshProbes} />
      </>
    );
  }
  const places = today.value?.places ?? [];
  const cards = (wanted: boolean) =>
    all
      .filter(({ place }) => (place === null) === wanted)
      .map((probe) => (
        <ProbeCard
          key={probe.id}
          probe={probe}
          places={places}
          now={clock}
          onPlaced={(sentence) => {
            setSaid(sentence);
            // The card has moved to the other list; its answer is where the eye can find it.
            saying.current?.focus();
          }}
        />
      ));
  const unclaimed = cards(true);
  const placed = cards(false);
  return (
    <>
      <Heading title={words.probes.title} />
      <p role="status" class="said" ref={saying} tabIndex={-1}>
        {said}
      </p>
      {faults.value.probes !== undefined && (
        <Fault sentence={faults.value.probes} again={refreshProbes} />
      )}
      <section>
        <h2>{words.probes.unclaimed}</h2>
        {unclaimed.length > 0 ? (
          <div class="probes">{unclaimed}</div>
        ) : (
          <p class="quiet">{words.probes.noUnclaimed}</p>
        )}
      </section>
      <section>
        <h2>{words.probes.placed}</h2>
        {placed.length > 0 ? (
          <div class="probes">{placed}</div>
        ) : (
          <p class="quiet">{words.probes.noPlaced}</p>
        )}
      </section>
      {strangers.value.length > 0 && (
        <section>
          <h2>{words.probes.strangers}</h2>
          <p class="quiet">{words.probes.strangersWhy}</p>
          <RefusedList refused={strangers.value} now={clock} />
        </section>
      )}
      <Keeping now={clock} />
    </>
  );
}
