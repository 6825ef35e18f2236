import type { Logger } from 'pino';
import type { Clock } from '../clock.ts';
import { type Intaken, makeIntake, type Pace } from '../intake/index.ts';
import { makeSnapshots } from '../snapshot/index.ts';
import { type Heard, type Store, troubleOf } from '../store/index.ts';
import { makeTasks } from '../tasks/index.ts';
import { keepFarm } from './farmKept.ts';
import { makeFeed } from './feed.ts';
import { makeLook } from './look.ts';

const HOUR = 3_600_000; // ms
/** How far back a stuck value may have begun before this process did. */
const RECALL = 8 * HOUR;
const DEFAULT_EVERY = 300_000; // ms; a probe that nobody described yet
/** "Last heard" is written down this often: it is in memory all the time. Ours: spares the card. */
const HEARD_EVERY = 300_000; // ms

export type CoreParts = {
  readonly store: Store;
  readonly clock: Clock;
  readonly log: Logger;
  /** Told when a reading passed a limit that matters. */
  readonly onCrossing?: () => void;
  /** How long the first message of a batch waits for company, ms. */
  readonly waitMs?: number;
  /** How often a commit may be made, in the long run; else as often as messages come. */
  readonly pace?: Pace;
};
export type Core = ReturnType<typeof joinCore>;

/** Intake, store, snapshot, rules and tasks, joined; without wires, timers or pages. */
export function joinCore({ store, clock, log, onCrossing = () => {}, waitMs, pace }: CoreParts) {
  const feed = makeFeed((error) => log.error(error, 'a listener failed'));
  const kept = keepFarm(store);
  const snapshots = makeSnapshots(store, kept.farm, kept.calendar, clock);
  const tasks = makeTasks(store);
  const heard = new Map<string, { at: number; written: number }>();
  for (const { id, heardAt } of store.probes.all())
    if (heardAt !== null) heard.set(id, { at: heardAt, written: heardAt });
  let offsets = new Map<string, Record<string, number>>();
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
          refusals: batch.flatMap(({ refused }) => refused),
          heard: due,
        },
        clock.now(),
        () => {
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

  const intake = makeIntake({
    mappings: () => kept.farm().mappings,
    recall: (probe, quantity) => {
      const newest = store.readings.newest(probe, quantity);
      return newest
        ? store.readings.allBetween(probe, quantity, newest.t - RECALL, newest.t + 1)
        : [];
    },
    offsetOf: (probe, quantity) => {
      let own = offsets.get(probe);
      if (!own) {
        own = store.probes.offsets(probe);
        offsets.set(probe, own);
      }
      return own[quantity] ?? 0;
    },
    keep,
    ...(waitMs === undefined ? {} : { waitMs }),
    ...(pace === undefined ? {} : { pace }),
  });

  const looking = makeLook({
    store,
    clock,
    log,
    feed,
    snapshots,
    tasks,
    farm: kept.farm,
    calendar: kept.calendar,
    heardAt: (probe) => heard.get(probe)?.at ?? null,
  });

  /** The farm's description was changed by hand. */
  const refarmed = () => {
    offsets = new Map();
    snapshots.refarmed();
  };

  return {
    store,
    clock,
    log,
    feed,
    farm: kept.farm,
    calendar: kept.calendar,
    snapshots,
    tasks,
    intake,
    heardAt: (probe: string) => heard.get(probe)?.at ?? null,
    lastReadingAt: () => lastReadingAt,
    /** Looks at everything now, and brings tasks and alarms up to date. */
    look() {
      if (!clock.isSet()) return; // no task is opened or closed by a clock that is not set
      try {
        if (kept.refresh()) {
          refarmed();
          feed.tell('farm', kept.farm());
        }
      } catch (error) {
        log.error(error, 'the farm could not be read again'); // the one in memory goes on
      }
      looking.look();
    },
    lastLook: looking.last,
    answer: looking.answer,
    refarmed,
    close() {
      intake.flush();
      snapshots.fold(true);
      store.close();
    },
  };
}
