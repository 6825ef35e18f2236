import type { Db } from './open.ts';

/** Who may sign in, who is signed in, and the hub's own secrets. */
export function peopleIn(db: Db) {
  const any = db.prepare<[], { one: number }>('SELECT 1 AS one FROM people LIMIT 1');
  const add = db.prepare('INSERT INTO people (name, password) VALUES (?, ?)');
  const hash = db.prepare<[string], { password: string }>(
    'SELECT password FROM people WHERE name = ?',
  );
  const addSession = db.prepare('INSERT INTO sessions (id, name, until) VALUES (?, ?, ?)');
  const session = db.prepare<[string, number], { name: string }>(
    'SELECT name FROM sessions WHERE id = ? AND until > ?',
  );
  const dropSession = db.prepare('DELETE FROM sessions WHERE id = ?');
  const secret = db.prepare<[string], { value: string }>(
    'SELECT value FROM secrets WHERE name = ?',
  );
  const putSecret = db.prepare(
    `INSERT INTO secrets (name, value) VALUES (?, ?)
     ON CONFLICT (name) DO UPDATE SET value = excluded.value`,
  );
  const dropSecret = db.prepare('DELETE FROM secrets WHERE name = ?');
  return {
    claimed: () => any.get() !== undefined,
    add: (name: string, password: string) => add.run(name, password),
    passwordOf: (name: string) => hash.get(name)?.password,
    addSession: (id: string, name: string, until: number) => addSession.run(id, name, until),
    session: (id: string, now: number) => session.get(id, now)?.name,
    dropSession: (id: string) => dropSession.run(id),
    secret: (name: string) => secret.get(name)?.value,
    putSecret: (name: string, value: string) => putSecret.run(name, value),
    dropSecret: (name: string) => dropSecret.run(name),
  };
}
