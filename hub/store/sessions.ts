import type { Db } from './open.ts';

export type SessionRow = {
  readonly name: string;
  readonly role: string;
  /** ms since 1970. */
  readonly begunAt: number;
  readonly seenAt: number;
};

/** Who is signed in, by a hash of what their browser keeps: a copy of the store signs nobody in. */
export function sessionsIn(db: Db) {
  const get = db.prepare<[string], SessionRow>(
    `SELECT sessions.name, people.role, sessions.begun_at AS begunAt, sessions.seen_at AS seenAt
     FROM sessions JOIN people ON people.name = sessions.name WHERE key = ?`,
  );
  const add = db.prepare(
    'INSERT INTO sessions (key, name, begun_at, seen_at) VALUES (@key, @name, @at, @at)',
  );
  const seen = db.prepare('UPDATE sessions SET seen_at = ? WHERE key = ?');
  const drop = db.prepare('DELETE FROM sessions WHERE key = ?');
  const dropAllOf = db.prepare('DELETE FROM sessions WHERE name = ?');
  const dropOld = db.prepare('DELETE FROM sessions WHERE begun_at < ? OR seen_at < ?');
  const keepNewest = db.prepare(
    `DELETE FROM sessions WHERE name = @name AND key NOT IN
     (SELECT key FROM sessions WHERE name = @name ORDER BY begun_at DESC, key LIMIT @most)`,
  );
  return {
    get: (key: string) => get.get(key),
    /** The oldest of a person's sessions beyond `most` are ended. */
    add(key: string, name: string, at: number, most: number) {
      add.run({ key, name, at });
      keepNewest.run({ name, most });
    },
    seen: (key: string, at: number) => seen.run(at, key),
    drop: (key: string) => drop.run(key),
    dropAllOf: (name: string) => dropAllOf.run(name),
    dropOld: (begunBefore: number, seenBefore: number) => dropOld.run(begunBefore, seenBefore),
  };
}
