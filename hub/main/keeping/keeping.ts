import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { Logger } from 'pino';
import type { KeepingFacts } from '../../api/index.ts';
import {
  backUpStore,
  backupName,
  dropOld,
  type Mended,
  newestBackupAt,
} from '../../store/index.ts';
import type { Core } from '../core.ts';

const HOUR = 3_600_000; // ms
const DAY = 24 * HOUR;
/** Between two slices of work that nobody waits for. Ours. */
const REST = 20; // ms
/** A day is made with readings of some days before it (hub/snapshot/days.ts). */
const LOOKS_BACK = 3; // days
const MENDED_SHOWN = 30 * DAY;

export type KeepingParts = {
  readonly core: Core;
  readonly log: Logger;
  /** Folder for backups; null: none wanted. */
  readonly backups: string | null;
  readonly rawDays: number;
};

const message = (error: unknown) => (error instanceof Error ? error.message : String(error));

export type Keeping = ReturnType<typeof keepUp>;

/** Looks after what is kept: a copy each night, and old readings let go of. */
export function keepUp({ core, log, backups, rawDays }: KeepingParts) {
  const { store, clock } = core;
  let fault: string | null = null;
  /** The copy that is being made. */
  let writing: string | null = null;
  let child: ChildProcess | null = null;
  let stopped = false;

  /** In a process of its own when this is the built hub: a long copy then stops nothing here. */
  const copyTo = async (file: string) => {
    const entry = process.argv[1] ?? '';
    if (!/[/\\]dewpost(\.js)?$/.test(entry)) return backUpStore(store.path, file);
    let said = '';
    child = spawn(process.execPath, [entry, 'backup', file, '--data', dirname(store.path)], {
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    child.stderr?.setEncoding('utf8').on('data', (text: string) => {
      said += text;
    });
    const [code] = await once(child, 'close');
    child = null;
    if (code !== 0) throw new Error(said.trim() || `Expected a copy, got exit code ${code}`);
  };

  /** One copy, named by the farm's day; only when it is good do older ones go. */
  const backUp = async () => {
    if (backups === null || writing !== null) return;
    const file = join(backups, backupName(core.calendar().dayOf(clock.now())));
    writing = file;
    try {
      if (!existsSync(backups))
        throw new Error(`Expected the folder ${backups} for backups, got none`);
      await copyTo(file);
      dropOld(backups);
      fault = null;
      log.info({ backups }, 'a backup was made');
    } catch (error) {
      if (stopped) return;
      fault = message(error);
      log.error({ fault }, 'the backup failed');
    } finally {
      writing = null;
    }
  };

  /** Readings that are too old go, slice by slice; what is made of them is made before. */
  const trim = async () => {
    const calendar = core.calendar();
    const now = clock.now();
    const first = calendar.add(calendar.dayOf(now), -rawDays);
    const from = Math.floor(calendar.bounds(first).begins / HOUR) * HOUR;
    const lasting = calendar.add(first, LOOKS_BACK);
    try {
      core.snapshots.fold(true);
      for (const { id } of core.farm().places) {
        core.snapshots.days.between(id, store.trim.kept()?.firstDay ?? '', lasting, now);
        await pause(REST);
      }
      store.transaction(() => store.trim.letGo(from, lasting));
      while (!stopped && store.transaction(() => store.trim.slice())) await pause(REST);
      while (!stopped && store.trim.shrink()) await pause(REST);
    } catch (error) {
      store.note(error);
      log.error(error, 'old readings could not be let go of');
    }
  };

  /** Asked for by /api/health, too, which must answer while the store cannot be read. */
  const orNull = <Found>(read: () => Found): Found | null => {
    try {
      return read();
    } catch {
      return null;
    }
  };
  const lastMended = (): KeepingFacts['mended'] => {
    const now = clock.now();
    const last = store.journal.between('store', now - MENDED_SHOWN, now + 1).at(-1);
    return last ? { ...(last.body as Mended), at: last.t } : null;
  };
  let mended = orNull(lastMended);
  const off = core.feed.on('store', () => {
    mended = orNull(lastMended);
  });

  /** A copy is about as long as the store: it is written in one go, which tells nothing of itself. */
  const writtenOf = (file: string) => {
    const { size = 0 } = statSync(`${file}.part`, { throwIfNoEntry: false }) ?? {};
    return Math.min(1, size / Math.max(1, store.size().bytes));
  };

  const facts = (): KeepingFacts => {
    const folder = backups === null ? undefined : statSync(backups, { throwIfNoEntry: false });
    const home = statSync(dirname(store.path), { throwIfNoEntry: false });
    return {
      ...store.size(),
      rawDays,
      rawFrom: orNull(() => store.trim.kept()?.from) ?? null,
      backup: {
        wanted: backups !== null,
        at: backups === null ? null : newestBackupAt(backups),
        fault,
        absent: backups !== null && folder === undefined,
        sameCard: folder !== undefined && folder.dev === home?.dev,
        running: writing === null ? null : writtenOf(writing),
      },
      mended,
    };
  };

  return {
    backUp,
    trim,
    facts,
    stop() {
      stopped = true;
      off();
      child?.kill();
    },
  };
}
