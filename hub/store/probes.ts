import type { Db } from './open.ts';

export type ProbeRow = {
  readonly id: string;
  readonly everyMs: number;
  readonly heardAt: number | null;
  readonly password: string | null;
};
export type Placement = {
  readonly probe: string;
  readonly place: string;
  readonly spot: string;
  /** 0: since before anybody wrote it down. */
  readonly from: number;
  /** null: still there. */
  readonly to: number | null;
};

/** Probes, where each of them hung from when to when, and their corrections. */
export function probesIn(db: Db) {
  const one = db.prepare<[string], ProbeRow>(
    'SELECT id, every_ms AS everyMs, heard_at AS heardAt, password FROM probes WHERE id = ?',
  );
  const all = db.prepare<[], ProbeRow>(
    'SELECT id, every_ms AS everyMs, heard_at AS heardAt, password FROM probes ORDER BY id',
  );
  const heard = db.prepare(
    `INSERT INTO probes (id, every_ms, heard_at) VALUES (?, ?, ?)
     ON CONFLICT (id) DO UPDATE SET heard_at = max(ifnull(heard_at, 0), excluded.heard_at)`,
  );
  const setEvery = db.prepare(
    `INSERT INTO probes (id, every_ms) VALUES (?, ?)
     ON CONFLICT (id) DO UPDATE SET every_ms = excluded.every_ms`,
  );
  const setPassword = db.prepare(
    `INSERT INTO probes (id, every_ms, password) VALUES (?, ?, ?)
     ON CONFLICT (id) DO UPDATE SET password = excluded.password`,
  );
  const columns = 'SELECT probe, place, spot, from_t AS "from", to_t AS "to" FROM placements';
  const placements = db.prepare<[], Placement>(`${columns} ORDER BY probe, from_t`);
  const placementsOf = db.prepare<[string], Placement>(
    `${columns} WHERE probe = ? ORDER BY from_t`,
  );
  const dropFrom = db.prepare('DELETE FROM placements WHERE probe = ? AND from_t >= ?');
  const endAt = db.prepare(
    'UPDATE placements SET to_t = ? WHERE probe = ? AND from_t < ? AND (to_t IS NULL OR to_t > ?)',
  );
  const addPlacement = db.prepare(
    'INSERT INTO placements (probe, from_t, to_t, place, spot) VALUES (?, ?, NULL, ?, ?)',
  );
  const offsets = db.prepare<[string], { quantity: string; value: number }>(
    'SELECT quantity, value FROM offsets WHERE probe = ?',
  );
  const setOffset = db.prepare(
    `INSERT INTO offsets (probe, quantity, value) VALUES (?, ?, ?)
     ON CONFLICT (probe, quantity) DO UPDATE SET value = excluded.value`,
  );
  const clearOffsets = db.prepare('DELETE FROM offsets WHERE probe = ?');

  return {
    get: (id: string) => one.get(id),
    all: () => all.all(),
    heard: (id: string, everyMs: number, t: number) => heard.run(id, everyMs, t),
    setEvery: (id: string, everyMs: number) => setEvery.run(id, everyMs),
    setPassword: (id: string, everyMs: number, hash: string) => setPassword.run(id, everyMs, hash),
    placements: () => placements.all(),
    placementsOf: (probe: string) => placementsOf.all(probe),
    /** From `from` on the probe hangs there; what it measured before stays where it was. */
    place(probe: string, place: string, spot: string, from: number) {
      dropFrom.run(probe, from);
      endAt.run(from, probe, from, from);
      addPlacement.run(probe, from, place, spot);
    },
    offsets: (probe: string): Record<string, number> =>
      Object.fromEntries(offsets.all(probe).map(({ quantity, value }) => [quantity, value])),
    setOffsets(probe: string, values: Readonly<Record<string, number>>) {
      clearOffsets.run(probe);
      for (const [quantity, value] of Object.entries(values)) setOffset.run(probe, quantity, value);
    },
  };
}
export type Probes = ReturnType<typeof probesIn>;
