import type { Db } from './open.ts';

export type KeptCommand = {
  /** Of method, address and body: the same key for something else is a mistake. */
  readonly print: string;
  /** null: begun, and not known to have ended. */
  readonly status: number | null;
  readonly answer: string | null;
};

/** Commands that came with a key of their own, and what they were answered. */
export function commandKeysIn(db: Db) {
  const get = db.prepare<[string, string], KeptCommand>(
    'SELECT print, status, answer FROM command_keys WHERE who = ? AND key = ?',
  );
  const begin = db.prepare(
    'INSERT INTO command_keys (who, key, print, begun_at) VALUES (?, ?, ?, ?)',
  );
  const end = db.prepare(
    'UPDATE command_keys SET status = ?, answer = ? WHERE who = ? AND key = ?',
  );
  const drop = db.prepare('DELETE FROM command_keys WHERE who = ? AND key = ?');
  const dropOld = db.prepare('DELETE FROM command_keys WHERE begun_at < ?');
  return {
    get: (who: string, key: string) => get.get(who, key),
    begin: (who: string, key: string, print: string, at: number) => begin.run(who, key, print, at),
    end: (who: string, key: string, status: number, answer: string) =>
      end.run(status, answer, who, key),
    drop: (who: string, key: string) => drop.run(who, key),
    dropOld: (before: number) => dropOld.run(before),
  };
}
