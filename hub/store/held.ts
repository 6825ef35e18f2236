import type { Db } from './open.ts';

/** A message that waits for its time. */
export type HeldMessage = {
  /** Names the count that `steady` belongs to: one start of the machine. */
  readonly boot: string;
  /** Where that count stood when the message came, ms. */
  readonly steady: number;
  readonly topic: string;
  readonly payload: Uint8Array;
  readonly again: boolean;
  readonly from: string | null;
};
export type HeldRow = HeldMessage & { readonly id: number; readonly receivedAt: number | null };
type Row = Omit<HeldRow, 'again'> & { readonly again: number };

/** Messages that came while the clock was not to be believed. */
export function heldIn(db: Db) {
  const insert = db.prepare(
    'INSERT INTO held (boot, steady, topic, payload, again, sender) VALUES (?, ?, ?, ?, ?, ?)',
  );
  const size = db.prepare<[], { count: number; bytes: number }>(
    'SELECT count(*) AS count, ifnull(sum(length(payload) + length(topic)), 0) AS bytes FROM held',
  );
  const resolve = db.prepare(
    'UPDATE held SET received_at = steady + ? WHERE boot = ? AND received_at IS NULL',
  );
  const columns = `SELECT id, boot, steady, topic, payload, again, sender AS "from",
    received_at AS receivedAt FROM held`;
  const due = db.prepare<[number], Row>(
    `${columns} WHERE received_at IS NOT NULL ORDER BY id LIMIT ?`,
  );
  const without = db.prepare<[string, number, number], Row>(
    `${columns} WHERE received_at IS NULL AND boot <> ? AND id > ? ORDER BY id LIMIT ?`,
  );
  const remove = db.prepare('DELETE FROM held WHERE id = ?');
  const whole = (row: Row): HeldRow => ({ ...row, again: row.again === 1 });
  return {
    /** Inside the caller's transaction. */
    add(messages: readonly HeldMessage[]) {
      for (const { boot, steady, topic, payload, again, from } of messages)
        insert.run(boot, Math.round(steady), topic, payload, again ? 1 : 0, from);
    },
    size: () => size.get() ?? { count: 0, bytes: 0 },
    /** The count of this boot has got its place in time: it began `offset` ms after 1970. */
    resolve: (boot: string, offset: number) => resolve.run(Math.round(offset), boot),
    /** The oldest that have their time. */
    due: (most: number): HeldRow[] => due.all(most).map(whole),
    /** Those of earlier boots, whose count stands nowhere in time. */
    timeless: (boot: string, after: number, most: number): HeldRow[] =>
      without.all(boot, after, most).map(whole),
    remove(ids: readonly number[]) {
      for (const id of ids) remove.run(id);
    },
  };
}
