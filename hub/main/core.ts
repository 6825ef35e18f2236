import { randomUUID } from 'node:crypto';
import type { Logger } from 'pino';
import type { Clock } from '../clock.ts';
import { type Intaken, makeIntake, type Pace, readMessage } from '../intake/index.ts';
import { makeCorrections } from '../record/index.ts';
import { makeSeason } from '../season/index.ts';
import { makeSnapshots } from '../snapshot/index.ts';
import { type Heard, type Store, troubleOf } from '../store/index.ts';
import { makeTasks } from '../tasks/index.ts';
import { makeAlarmsOut } from './alarmsOut.ts';
import { keepFarm } from './farmKept.ts';
import { makeFeed } from './feed.ts';
import { makeLook } from './look.ts';
import { recallFrom } from './recallFrom.ts';
import { refusalBook } from './refusalBook.ts';
import { makeStrangers } from './strangers.ts';
import { makeTiming } from './timing.ts';

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
  /** Names what the clock's steady count began with; one of its own when nothing is known. */
  readonly boot?: string;
  /** Told when the clock jumped: timers have to think again. */
  readonly onJump?: () => void;
  /** How often a commit may be made, in the long run; else as often as messages come. */
  readonly pace?: Pace;
};
export type Core = ReturnType<typeof joinCore>;

/** Intake, store, snapshot, rules and tasks, joined; without wires, timers or pages. */
export function joinCore(parts: CoreParts) {
  const { store, clock, log, onCrossing = () => {}, waitMs, pace } = parts;
  const feed = makeFeed((error) => log.error(error, 'a listener failed'));
  const kept = keepFarm(store);
  const snapshots = makeSnapshots(store, kept.farm, kept.calendar, clock);
  const season = makeSeason({
    ...{ store, farm: kept.farm, calendar: kept.calendar, snapshots, now: clock.now },
    onFault: (error) => log.error(error, 'what is known of a patch failed'),
  });
  const tasks = makeTasks(store);
  const corrections = makeCorrections(store);
  const heard = new Map<string, { at: number; written: number }>();
  for (const { id, heardAt } of store.probes.all())
    if (heardAt !== null) {
      // Under a clock that ran ahead it was heard at a time that is still to come.
      const at = Math.min(heardAt, clock.isSet() ? clock.now() : heardAt);
      heard.set(id, { at, written: at });
    }
  const book = refusalBook(store);
  const strangers = makeStrangers(store);
  let offsets = new Map<string, Record<string, number>>();
  let lastReadingAt: number | null = null;
  /** The clock was put back: until here, hours are lived through a second time. */
  let livedUntil = Number.NEGATIVE_INFINITY;
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
            refused.map((one) => book.named(one, strangers.knows(one.source))),
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

  const intake = makeIntake({
    mappings: () => kept.farm().mappings,
    recall: recallFrom(store, clock),
    offsetOf: (probe, quantity, raw, t) => {
      const found = corrections.added(probe, quantity, raw, t);
      if (found !== undefined) return found;
      let own = offsets.get(probe);
      if (!own) {
        own = store.probes.offsets(probe);
        offsets.set(probe, own);
      }
      return own[quantity] ?? 0;
    },
    admits: strangers.admits,
    taken: (probe, quantity, t) =>
      t < livedUntil && store.readings.allBetween(probe, quantity, t, t + 1).length > 0,
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
    season,
    tasks,
    farm: kept.farm,
    calendar: kept.calendar,
    heardAt: (probe) => heard.get(probe)?.at ?? null,
  });

  const alarms = makeAlarmsOut({
    store,
    clock,
    log,
    feed,
    tasks,
    farm: kept.farm,
    calendar: kept.calendar,
    lastLook: looking.last,
  });

  /** The farm's description was changed by hand. */
  const refarmed = () => {
    offsets = new Map();
    strangers.sort();
    corrections.refresh();
    snapshots.refarmed();
  };

  const look = () => {
    if (!timing.ready()) return; // no task is opened or closed by a clock that is not to be believed
    try {
      if (kept.refresh()) {
        refarmed();
        feed.tell('farm', kept.farm());
      }
    } catch (error) {
      log.error(error, 'the farm could not be read again'); // the one in memory goes on
    }
    looking.look();
  };

  const timing = makeTiming({
    store,
    clock,
    log,
    boot: parts.boot ?? randomUUID(),
    parse: (message) => readMessage(message, kept.farm().mappings),
    intake,
    moved(by) {
      if (by < 0) livedUntil = Math.max(livedUntil, clock.now() - by);
      for (const one of heard.values()) {
        one.at += by;
        one.written += by;
      }
      if (lastReadingAt !== null) lastReadingAt += by;
      intake.forget();
      snapshots.window.forget();
    },
    jumped: parts.onJump ?? (() => {}),
    settled: look,
  });

  return {
    store,
    clock,
    log,
    feed,
    farm: kept.farm,
    calendar: kept.calendar,
    snapshots,
    season,
    tasks,
    corrections,
    intake,
    heardAt: (probe: string) => heard.get(probe)?.at ?? null,
    lastReadingAt: () => lastReadingAt,
    /** One message as it comes: let in, or held while the clock is not to be believed. */
    receive: timing.receive,
    /** Something that was not let in at all; written down with others at the next tick. */
    refuse: (source: string, reason: string, sentence: string) =>
      book.note({ source: source.slice(0, 128), reason, sentence, t: clock.now() }),
    clockState: timing.state,
    held: timing.held,
    /** Every second or so of a steady timer. */
    async tick() {
      await timing.tick();
      try {
        book.write();
      } catch (error) {
        log.error(error, 'refusals could not be written down'); // tried again at the next tick
      }
    },
    /** Looks at everything now, and brings tasks and alarms up to date. */
    look,
    lastLook: looking.last,
    answer(...given: Parameters<typeof looking.answer>) {
      const task = looking.answer(...given);
      if (task) alarms.answered(task.id, given[2]);
      return task;
    },
    alarms,
    refarmed,
    /** Writes down all that waits for company; before closing the store. */
    flush() {
      timing.flush();
      intake.flush();
      book.write();
    },
    close() {
      timing.flush();
      intake.flush();
      snapshots.fold(true);
      store.close();
    },
  };
}
