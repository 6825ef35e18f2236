import { rmSync, statfsSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { assemble } from './assemble.ts';
import type { Batch } from './inbox.ts';
import type { Mended } from './mendFile.ts';
import { openDb } from './open.ts';
import { dropStandIn, type StandIn } from './standIn.ts';
import { StoreElsewhere, StoreGone, type Trouble, troubleOf } from './trouble.ts';
import { writeAgain } from './writeAgain.ts';

const inodeOf = (path: string) => statSync(path, { throwIfNoEntry: false })?.ino;
/** A card counts as having room again with this much free. Ours: some hours of readings. */
const ROOM = 4_000_000; // bytes

/**
 * The one file everything is kept in.
 *
 * @param path file, or `:memory:`.
 * @param instead a copy that stands in for it, while nothing can be written where it is.
 */
export function openStore(path: string, instead: StandIn | null = null) {
  const inMemory = path === ':memory:';
  let standIn = instead;
  const opened = () => {
    const db = openDb(standIn?.path ?? path);
    const parts = assemble(db);
    parts.pour(); // what a power cut left waiting
    return { ...parts, db };
  };
  let at = opened();
  let inode = inMemory ? undefined : inodeOf(path);
  let log = inodeOf(`${path}-wal`);
  let trouble: Trouble | null = instead?.trouble ?? null;
  const note = (error: unknown) => {
    at.readings.forgetMarks();
    trouble = troubleOf(error) ?? trouble;
  };
  const size = () => {
    if (inMemory) return { bytes: 0, freeBytes: 0 };
    const wal = statSync(`${path}-wal`, { throwIfNoEntry: false })?.size ?? 0;
    const bytes = statSync(path, { throwIfNoEntry: false })?.size ?? 0;
    let freeBytes = 0;
    try {
      const { bavail, bsize } = statfsSync(dirname(path));
      freeBytes = bavail * bsize;
    } catch {} // the folder is gone, and with it whatever was free
    return { bytes: bytes + wal, freeBytes };
  };
  /** All of it or none of it. @throws whatever `work` throws, after undoing it. */
  const transaction = <Result>(work: () => Result): Result => {
    try {
      return at.db.transaction(() => {
        if (standIn) throw new StoreElsewhere(standIn.trouble, path);
        if (!inMemory && inodeOf(path) !== inode)
          throw new StoreGone(`Expected the store in ${path}, got another file or none`);
        return work();
      })();
    } catch (error) {
      note(error);
      throw error;
    }
  };
  const reopen = () => {
    at = opened();
    inode = inodeOf(path);
    log = inodeOf(`${path}-wal`);
  };

  return {
    path,
    // Asked for anew each time: after mending, all of it speaks to another file.
    get readings() {
      return at.readings;
    },
    get rollups() {
      return at.rollups;
    },
    get probes() {
      return at.probes;
    },
    get journal() {
      return at.journal;
    },
    get tasks() {
      return at.tasks;
    },
    get alarms() {
      return at.alarms;
    },
    get alarmsOut() {
      return at.alarmsOut;
    },
    get foretold() {
      return at.foretold;
    },
    get held() {
      return at.held;
    },
    get stations() {
      return at.stations;
    },
    get commandKeys() {
      return at.commandKeys;
    },
    get forecasts() {
      return at.forecasts;
    },
    get placeFacts() {
      return at.placeFacts;
    },
    get refusals() {
      return at.refusals;
    },
    get people() {
      return at.people;
    },
    get trim() {
      return at.trim;
    },
    farm: () => at.farm(),
    putFarm: (file: string) => at.putFarm(file),
    transaction,
    /** One batch of the intake, durably, in one commit. `more` is done in the same. */
    keep<Result>(batch: Batch, now: number, more: () => Result): Result {
      return transaction(() => {
        if (inMemory) {
          at.readings.add(batch.readings);
          at.readings.amend(batch.amendments);
          for (const refusal of batch.refusals) at.refusals.add(refusal);
          for (const { probe, everyMs, at: t } of batch.heard) at.probes.heard(probe, everyMs, t);
        } else at.inbox.keep(batch, now);
        return more();
      });
    },
    /** What only saves work later: not kept where it cannot be. */
    spare(work: () => void) {
      try {
        transaction(work);
      } catch (error) {
        if (troubleOf(error) === null) throw error;
      }
    },
    /** What keeps it from keeping things; null while all is well. */
    trouble: () => trouble,
    /** Whether the file is still where it was put; notes it when it is not. */
    isThere(): boolean {
      const is = inMemory || standIn !== null || inodeOf(path) === inode;
      if (!is) trouble = 'gone';
      return is;
    },
    /** Somebody else met an error that may come from here. */
    note,
    /**
     * Tries whether the trouble is over, and ends it where that can be done from here: a file that
     * is gone is written again from what is still open, a damaged one is mended.
     *
     * @returns what was mended; null when nothing had to be, or it still is in trouble.
     */
    async recover(mend: () => Mended): Promise<Mended | null> {
      try {
        let mended: Mended | null = null;
        if (standIn) {
          if (trouble === 'full' && size().freeBytes < ROOM) return null;
          openDb(path).close(); // throws while it still cannot be
          at.db.close();
          dropStandIn(standIn);
          standIn = null;
          reopen();
        } else if (trouble === 'gone') {
          if (inodeOf(path) === undefined) await writeAgain(at.db, path);
          else {
            at.db.close(); // somebody put another store there: that one it is …
            if (inodeOf(`${path}-wal`) === log)
              // … but not with the log of the old one
              for (const rest of ['-wal', '-shm']) rmSync(`${path}${rest}`, { force: true });
          }
          reopen();
        } else if (trouble === 'damaged') {
          at.db.close();
          mended = mend();
          reopen();
        } else if (trouble !== null) {
          if (trouble === 'full' && size().freeBytes < ROOM) return null;
          at.db.transaction(() =>
            at.db.exec(`INSERT INTO inbox (body) VALUES ('{"t":0,"r":[]}')`),
          )();
        }
        trouble = null;
        return mended;
      } catch (error) {
        if (!at.db.open) at = opened(); // as it was: better than none
        if (standIn === null) note(error);
        return null;
      }
    },
    size,
    close() {
      if (at.db.open)
        try {
          at.pour();
        } catch (error) {
          note(error); // it waits in the inbox for the next start
        }
      at.db.close();
      if (standIn) dropStandIn(standIn);
    },
  };
}
export type Store = ReturnType<typeof openStore>;
