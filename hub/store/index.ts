import { statfsSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { alarmsOutIn } from './alarmsOut.ts';
import { foretoldIn } from './foretold.ts';
import { heldIn } from './held.ts';
import { journalIn } from './journal.ts';
import { openDb } from './open.ts';
import { peopleIn } from './people.ts';
import { placeFactsIn } from './placeFacts.ts';
import { probesIn } from './probes.ts';
import { readingsIn } from './readings.ts';
import { alarmsIn, forecastsIn, tasksIn } from './records.ts';
import { refusalsIn } from './refusals.ts';
import { rollupsIn } from './rollups.ts';
import { stationsIn } from './stations.ts';

export type { AlarmTestRow, MessageRow, SeenAlarmRow } from './alarmsOut.ts';
export { backUpStore, restoreStore } from './copy.ts';
export type { ForetoldRow } from './foretold.ts';
export type { HeldMessage, HeldRow } from './held.ts';
export type { Entry, KeptEntry } from './journal.ts';
export type { JoinCode, PersonRow } from './people.ts';
export type { Placement, ProbeRow } from './probes.ts';
export type { Amendment, Point, RawPoint, StoredReading } from './readings.ts';
export type { AlarmRow, TaskRow } from './records.ts';
export type { Refusal, RefusalCount } from './refusals.ts';
export type { Changed, Rollup } from './rollups.ts';
export type { DayRow, StationRow } from './stations.ts';
export type Store = ReturnType<typeof openStore>;

/** The one file everything is kept in. @param path file, or `:memory:`. */
export function openStore(path: string) {
  const db = openDb(path);
  const farm = db.prepare<[], { file: string }>('SELECT file FROM farm');
  const putFarm = db.prepare(
    `INSERT INTO farm (only_one, file) VALUES (1, ?)
     ON CONFLICT (only_one) DO UPDATE SET file = excluded.file`,
  );
  const readings = readingsIn(db);
  const rollups = rollupsIn(db);

  return {
    readings,
    rollups: {
      ...rollups,
      fold(dayAround: Parameters<typeof rollups.fold>[0]) {
        const changed = rollups.fold(dayAround);
        readings.forgetMarks();
        return changed;
      },
    },
    probes: probesIn(db),
    journal: journalIn(db),
    tasks: tasksIn(db),
    alarms: alarmsIn(db),
    alarmsOut: alarmsOutIn(db),
    forecasts: forecastsIn(db),
    foretold: foretoldIn(db),
    placeFacts: placeFactsIn(db),
    refusals: refusalsIn(db),
    held: heldIn(db),
    people: peopleIn(db),
    stations: stationsIn(db),
    farm: () => farm.get()?.file,
    putFarm: (file: string) => putFarm.run(file),
    /** All of it or none of it. @throws whatever `work` throws, after undoing it. */
    transaction<Result>(work: () => Result): Result {
      try {
        return db.transaction(work)();
      } catch (error) {
        readings.forgetMarks();
        throw error;
      }
    },
    size: () => {
      if (path === ':memory:') return { bytes: 0, freeBytes: 0 };
      const { bavail, bsize } = statfsSync(dirname(path));
      const wal = statSync(`${path}-wal`, { throwIfNoEntry: false })?.size ?? 0;
      return { bytes: statSync(path).size + wal, freeBytes: bavail * bsize };
    },
    close() {
      db.close();
    },
  };
}
