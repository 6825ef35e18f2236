import { randomUUID } from 'node:crypto';
import type { Logger } from 'pino';
import { batchSpans, makeBatches } from '../batches/index.ts';
import type { Clock } from '../clock.ts';
import { makeGrowing } from '../growing/index.ts';
import { makeIntake, type Pace, readMessage } from '../intake/index.ts';
import { makeLosses } from '../losses/index.ts';
import { makePicks, pickedOf } from '../picks/index.ts';
import { makePlacesCompared } from '../placesCompared/index.ts';
import { growthFrom, makePlanning } from '../planning/index.ts';
import { makeCorrections } from '../record/index.ts';
import { makeSeason } from '../season/index.ts';
import { makeSnapshots } from '../snapshot/index.ts';
import type { Store } from '../store/index.ts';
import { makeTasks } from '../tasks/index.ts';
import { speakAs } from '../words/index.ts';
import { makeAlarmsOut } from './alarms/alarmsOut.ts';
import { makeFarmDesk } from './farm/farmDesk.ts';
import { keepFarm } from './farm/farmKept.ts';
import { makeFeed } from './keeping/feed.ts';
import { makeKeeper } from './keeping/keeper.ts';
import { recallFrom } from './keeping/recallFrom.ts';
import { refusalBook } from './keeping/refusalBook.ts';
import { makeStrangers } from './keeping/strangers.ts';
import { makeLook } from './look.ts';
import { makeTiming } from './time/timing.ts';

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
  /** Loading a language that was not spoken yet takes a moment: until then the one before is. */
  const speakFarm = () =>
    speakAs(kept.farm().file.farm).catch((error) => log.error(error, 'a language failed'));
  const spoken = speakFarm();
  const batches = makeBatches(store);
  const snapshots = makeSnapshots(store, kept.farm, kept.calendar, clock, batches);
  const picks = makePicks(store);
  const season = makeSeason({
    ...{ store, farm: kept.farm, calendar: kept.calendar, snapshots, now: clock.now },
    picked: (place, t) => pickedOf(picks.all(), place.id, place.crop, t),
    onFault: (error) => log.error(error, 'what is known of a patch failed'),
  });
  const losses = makeLosses({
    ...{ store, farm: kept.farm, calendar: kept.calendar },
    days: snapshots.days.between,
    spots: snapshots.spots,
    lots: snapshots.lots,
    batches: () => batchSpans(batches.all(), kept.farm(), kept.calendar()),
    batchKnown: (id) => batches.get(id) !== undefined,
  });
  const tasks = makeTasks(store);
  const growing = makeGrowing({
    ...{ store, farm: kept.farm, calendar: kept.calendar, snapshots, batches, now: clock.now },
  });
  const planning = makePlanning({
    ...{ store, farm: kept.farm, calendar: kept.calendar, snapshots, batches },
    growth: growthFrom(growing, store),
    onFault: (error) => log.error(error, 'the plan of what to sow failed'),
  });
  const placesCompared = makePlacesCompared({
    ...{ store, farm: kept.farm, calendar: kept.calendar, snapshots, batches, growing },
    ...{ open: tasks.open, ended: tasks.endedOf },
    onFault: (error) => log.error(error, 'what is known of trays failed'),
  });
  const corrections = makeCorrections(store);
  const book = refusalBook(store);
  const strangers = makeStrangers(store);
  let offsets = new Map<string, Record<string, number>>();
  /** The clock was put back: until here, hours are lived through a second time. */
  let livedUntil = Number.NEGATIVE_INFINITY;

  const { keep, heardAt, lastReadingAt, moved } = makeKeeper({
    ...{ store, clock, feed, snapshots, book, onCrossing },
    known: strangers.knows,
  });

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
    planning,
    placesCompared,
    tasks,
    farm: kept.farm,
    calendar: kept.calendar,
    heardAt,
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
    try {
      if (kept.refresh()) {
        speakFarm();
        refarmed();
        feed.tell('farm', kept.farm());
      }
    } catch (error) {
      log.error(error, 'the farm could not be read again'); // the one in memory goes on
    }
    if (!timing.ready()) return; // no task is opened or closed by a clock that is not to be believed
    // Where the farm lies is what its days and nights hang on: readings are kept meanwhile.
    if (kept.farm().settled) looking.look();
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
      moved(by);
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
    /** Once the farm's language is spoken. */
    spoken,
    farmDesk: makeFarmDesk(store, batches),
    snapshots,
    batches,
    picks,
    growing,
    planning,
    placesCompared,
    season,
    losses,
    tasks,
    corrections,
    intake,
    heardAt,
    lastReadingAt,
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
