import type { Db } from './open.ts';
import { sessionsIn } from './sessions.ts';

export type PersonRow = {
  readonly name: string;
  readonly role: string;
  /** ms since 1970, to the hour; null when not seen yet. */
  readonly seenAt: number | null;
};
export type JoinCode = {
  readonly key: string;
  readonly role: string;
  /** Whose new password it is for; null for somebody new. */
  readonly name: string | null;
  readonly until: number;
  /** Who made it: it is of no use once that person may not sign in any more. */
  readonly madeBy: string;
};

/** Who may sign in, who is signed in, and the hub's own secrets. */
export function peopleIn(db: Db) {
  const any = db.prepare<[], { one: number }>('SELECT 1 AS one FROM people LIMIT 1');
  const all = db.prepare<[], PersonRow>(
    'SELECT name, role, seen_at AS seenAt FROM people ORDER BY name',
  );
  const get = db.prepare<[string], PersonRow>(
    'SELECT name, role, seen_at AS seenAt FROM people WHERE name = ?',
  );
  const add = db.prepare('INSERT INTO people (name, password, role) VALUES (?, ?, ?)');
  const setPassword = db.prepare('UPDATE people SET password = ? WHERE name = ?');
  const remove = db.prepare('DELETE FROM people WHERE name = ?');
  const seen = db.prepare('UPDATE people SET seen_at = ? WHERE name = ?');
  const hash = db.prepare<[string], { password: string }>(
    'SELECT password FROM people WHERE name = ?',
  );
  const addCode = db.prepare(
    `INSERT INTO join_codes (key, role, name, until, made_by)
     VALUES (@key, @role, @name, @until, @madeBy)`,
  );
  const codes = db.prepare<[number], JoinCode>(
    `SELECT key, role, name, until, made_by AS madeBy FROM join_codes
     WHERE until > ? ORDER BY until, key`,
  );
  const dropCode = db.prepare('DELETE FROM join_codes WHERE key = ?');
  const dropCodesOf = db.prepare('DELETE FROM join_codes WHERE name = ?');
  const dropCodesBy = db.prepare('DELETE FROM join_codes WHERE made_by = ?');
  const dropOldCodes = db.prepare('DELETE FROM join_codes WHERE until <= ?');
  const secret = db.prepare<[string], { value: string }>(
    'SELECT value FROM secrets WHERE name = ?',
  );
  const putSecret = db.prepare(
    `INSERT INTO secrets (name, value) VALUES (?, ?)
     ON CONFLICT (name) DO UPDATE SET value = excluded.value`,
  );
  const dropSecret = db.prepare('DELETE FROM secrets WHERE name = ?');
  const sessions = sessionsIn(db);
  return {
    claimed: () => any.get() !== undefined,
    all: () => all.all(),
    get: (name: string) => get.get(name),
    add: (name: string, password: string, role = 'grower') => add.run(name, password, role),
    setPassword: (name: string, password: string) => setPassword.run(password, name),
    passwordOf: (name: string) => hash.get(name)?.password,
    /** With everything that lets this person in, and the codes this person made. */
    remove(name: string) {
      sessions.dropAllOf(name);
      dropCodesOf.run(name);
      dropCodesBy.run(name);
      remove.run(name);
    },
    seen: (name: string, at: number) => seen.run(at, name),
    addCode: (code: JoinCode) => addCode.run(code),
    /** Codes that still count. */
    codes: (now: number) => codes.all(now),
    dropCode: (key: string) => dropCode.run(key),
    dropCodesOf: (name: string) => dropCodesOf.run(name),
    dropOldCodes: (now: number) => dropOldCodes.run(now),
    sessions,
    secret: (name: string) => secret.get(name)?.value,
    putSecret: (name: string, value: string) => putSecret.run(name, value),
    dropSecret: (name: string) => dropSecret.run(name),
  };
}
