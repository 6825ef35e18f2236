import type { Clock } from '../../clock.ts';
import type { Intaken } from '../../intake/index.ts';
import type { Snapshots } from '../../snapshot/index.ts';
import { type Heard, type Store, troubleOf } from '../../store/index.ts';
import type { Feed } from './feed.ts';
import type { refusalBook } from './refusalBook.ts';

const DEFAULT_EVERY = 300_000; // ms; a probe that nobody described yet
/** "Last heard" is written down this often: it is in memory all the time. Ours: spares the card. */
const HEARD_EVERY = 300_000; // ms

export type KeeperParts = {
  readonly store: Store;
  readonly clock: Clock;
  readonly feed: Feed;
  readonly snapshots: Snapshots;
  readonly book: ReturnType<typeof refusalBook>;
  /** Whether a name is that of a probe the hub knows. */
  readonly known: (source: string) => boolean;
  /** Told when a reading passed a limit that matters. */
  readonly onCrossing: () => void;
};

/** Keeps what the intake hands over, in the store and in memory, and remembers who was heard when. */
export function makeKeeper(parts: KeeperParts) {
  const { store, clock, feed, snapshots, book, known: isKnown, onCrossing } = parts;
  const heard = new Map<string, { at: number; written: number }>();
  for (const { id, heardAt } of store.probes.all())
    if (heardAt !== null) {
      // Under a clock that ran ahead it was heard at a time that is still to come.
      const at = Math.min(heardAt, clock.isSet() ? clock.now() : heardAt);
      heard.set(id, { at, written: at });
    }
  let lastReadingAt: number | null = null;
  for (const { at } of heard.values()) lastReadingAt = Math.max(lastReadingAt ?? 0, at);

  /** Who was heard, and who of them is to be written down now; remembered once it is. */
  const hear = (batch: readonly Intaken[]) => {
    const news = new Map<string, { at: number; written: number }>();
    const due: Heard[] = [];
    for (const { readings, heard: sources } of batch) {
      const senders = new Set(readings.map(({ probe }) => probe));
      for (const [source, at] of sources) {
        const known = news.get(source) ?? heard.get(source);
        // Only readings make a probe; a bad message may come from anywhere.
        if (!known && !senders.has(source)) continue;
        const written = known?.written ?? Number.NEGATIVE_INFINITY;
        const isDue = at - written >= HEARD_EVERY;
        news.set(source, { at: Math.max(at, known?.at ?? 0), written: isDue ? at : written });
        if (isDue) due.push({ probe: source, everyMs: DEFAULT_EVERY, at });
      }
    }
    return { news, due };
  };

  /** What came in is in memory, for rules and screens; `kept`: and in the store. */
  const remember = (
    batch: readonly Intaken[],
    news: ReadonlyMap<string, { at: number; written: number }>,
    kept: boolean,
  ) => {
    for (const [source, one] of news)
      heard.set(source, kept ? one : { at: one.at, written: Number.NEGATIVE_INFINITY });
    const readings = batch.flatMap((item) => item.readings);
    if (readings.length === 0) return;
    for (const { t } of readings) if (t > (lastReadingAt ?? 0)) lastReadingAt = t;
    snapshots.window.add(
      readings,
      batch.flatMap((item) => item.amendments),
      kept,
    );
    const crossed = snapshots.crossed(readings);
    feed.tell('readings', readings);
    if (crossed) onCrossing();
  };

  const keep = (batch: readonly Intaken[]) => {
    const { news, due } = hear(batch);
    try {
      store.keep(
        {
          readings: batch.flatMap(({ readings }) => readings),
          amendments: batch.flatMap(({ amendments }) => amendments),
          refusals: batch.flatMap(({ refused }) =>
            refused.map((one) => book.named(one, isKnown(one.source))),
          ),
          heard: due,
        },
        clock.now(),
        () => {
          for (const { foretold } of batch) if (foretold.length > 0) store.foretold.add(foretold);
          // A probe that nobody knows yet has a row at once: it is shown, and can be placed.
          for (const { probe, everyMs, at } of due)
            if (!(Number(heard.get(probe)?.written) > 0)) store.probes.heard(probe, everyMs, at);
        },
      );
    } catch (error) {
      // Nothing is acknowledged, and the probes send again; but a cool room that warms while the
      // card is full is still seen to warm.
      if (troubleOf(error) !== null) remember(batch, news, false);
      throw error;
    }
    remember(batch, news, true);
  };

  return {
    keep,
    heardAt: (probe: string) => heard.get(probe)?.at ?? null,
    lastReadingAt: () => lastReadingAt,
    /** The clock was put forward by so many ms for good (back: negative). */
    moved(by: number) {
      for (const one of heard.values()) {
        one.at += by;
        one.written += by;
      }
      if (lastReadingAt !== null) lastReadingAt += by;
    },
  };
}
