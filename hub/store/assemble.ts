import { alarmsOutIn } from './alarmsOut.ts';
import { commandKeysIn } from './commandKeys.ts';
import { foretoldIn } from './foretold.ts';
import { heldIn } from './held.ts';
import { inboxIn } from './inbox.ts';
import { journalIn } from './journal.ts';
import type { DayAround } from './liveRollups.ts';
import type { Db } from './open.ts';
import { peopleIn } from './people.ts';
import { placeFactsIn } from './placeFacts.ts';
import { probesIn } from './probes.ts';
import { readingsIn } from './readings.ts';
import { alarmsIn, forecastsIn, tasksIn } from './records.ts';
import { refusalsIn } from './refusals.ts';
import { rollupsIn } from './rollups.ts';
import { stationsIn } from './stations.ts';
import type { Changed } from './touched.ts';
import { trimIn } from './trim.ts';

/** Everything that can be asked of one opened file. */
export function assemble(db: Db) {
  const farm = db.prepare<[], { file: string }>('SELECT file FROM farm');
  const putFarm = db.prepare(
    `INSERT INTO farm (only_one, file) VALUES (1, ?)
     ON CONFLICT (only_one) DO UPDATE SET file = excluded.file`,
  );
  const readings = readingsIn(db);
  const rollups = rollupsIn(db);
  const refusals = refusalsIn(db);
  const probes = probesIn(db);
  const inbox = inboxIn(db, { readings, refusals, probes });

  /** What is stale is folded; with `all`, what waits in the inbox goes to its place before. */
  const fold = (dayAround: DayAround, all: boolean): Changed[] => {
    const changed = rollups.stretches();
    db.transaction(() => {
      if (all) inbox.pour();
      rollups.fold(dayAround);
    })();
    if (all) inbox.emptied();
    readings.forgetMarks();
    return changed;
  };
  return {
    readings,
    inbox,
    rollups: {
      daysAre: rollups.daysAre,
      hours: rollups.hours,
      days: rollups.days,
      restaleAll: rollups.restaleAll,
      isStale: () => rollups.isStale() || !inbox.isEmpty(),
      /** Puts everything in its place. @returns the stretches that had been changed in place. */
      fold: (dayAround: DayAround) => fold(dayAround, true),
      /** The same when it is due; else only what changed in place. Seldom writes: spares the card. */
      foldWhenDue: (dayAround: DayAround, now: number): Changed[] => {
        const due = inbox.isDue(now);
        return due || rollups.isStale() ? fold(dayAround, due) : [];
      },
    },
    probes,
    journal: journalIn(db),
    tasks: tasksIn(db),
    alarms: alarmsIn(db),
    alarmsOut: alarmsOutIn(db),
    forecasts: forecastsIn(db),
    foretold: foretoldIn(db),
    held: heldIn(db),
    placeFacts: placeFactsIn(db),
    refusals,
    people: peopleIn(db),
    stations: stationsIn(db),
    commandKeys: commandKeysIn(db),
    trim: trimIn(db),
    farm: () => farm.get()?.file,
    putFarm: (file: string) => putFarm.run(file),
    /** Puts what waits in its place, so that a file that is closed has an empty inbox. */
    pour() {
      if (inbox.isEmpty()) return;
      db.transaction(inbox.pour)();
      inbox.emptied();
      readings.forgetMarks();
    },
  };
}
