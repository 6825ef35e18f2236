import type { Db } from './open.ts';

export type Entry = {
  readonly t: number;
  /** A person's name, or `hub`. */
  readonly who: string;
  readonly what: string;
  readonly place: string | null;
  readonly subject: string | null;
  readonly body: unknown;
};
/** An entry as it was kept: `id` grows with each one, of whatever kind. */
export type KeptEntry = Entry & { readonly id: number };
type Row = Omit<Entry, 'body'> & { body: string };

/** Everything people and the hub did. Added to, never overwritten. */
export function journalIn(db: Db) {
  const insert = db.prepare(
    'INSERT INTO journal (t, who, what, place, subject, body) VALUES (?, ?, ?, ?, ?, ?)',
  );
  const ofPlace = db.prepare<[string, string], Row>(
    `SELECT t, who, what, place, subject, body FROM journal
     WHERE place = ? AND what = ? ORDER BY id DESC LIMIT 1`,
  );
  const ofKind = db.prepare<[string, number, number], Row & { id: number }>(
    `SELECT id, t, who, what, place, subject, body FROM journal
     WHERE what = ? AND t >= ? AND t < ? ORDER BY id`,
  );
  const later = db.prepare<[string, number], Row & { id: number }>(
    `SELECT id, t, who, what, place, subject, body FROM journal
     WHERE what = ? AND id > ? ORDER BY id`,
  );
  const entry = (row: Row): Entry => ({ ...row, body: JSON.parse(row.body) });
  return {
    add: ({ t, who, what, place, subject, body }: Entry) =>
      insert.run(t, who, what, place, subject, JSON.stringify(body)),
    newestOf: (place: string, what: string): Entry | undefined => {
      const row = ofPlace.get(place, what);
      return row && entry(row);
    },
    /** Entries of one kind that came after the one with this id, oldest first; from 0: all. */
    after: (what: string, id: number): KeptEntry[] =>
      later.all(what, id).map((row) => ({ ...row, body: JSON.parse(row.body) })),
    between: (what: string, from: number, to: number): KeptEntry[] =>
      ofKind.all(what, from, to).map((row) => ({ ...row, body: JSON.parse(row.body) })),
  };
}
