import type { Db } from './open.ts';

const SLICE = 6 * 3_600_000; // ms: a damaged page hides this much of one series at the most
type Row = readonly unknown[];

/** Tables of readings and of what is made from them: looked through series by series. */
const BY_SERIES = new Set(['readings', 'hours', 'days', 'stale_hours', 'fresh']);

export type Salvaged = {
  /** Rows that came over, by table. */
  readonly rows: Readonly<Record<string, number>>;
  /** Tables of which something could not be read. */
  readonly damaged: readonly string[];
};

const columnsOf = (db: Db, table: string) =>
  db.pragma(`table_info("${table}")`) as { name: string; pk: number }[];

export const tablesOf = (db: Db) =>
  db
    .prepare<[], string>(
      "SELECT name FROM main.sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'",
    )
    .pluck()
    .all();

/** Every row that can still be read of a damaged file, into a new one: round the damaged pages. */
export function salvage(from: Db, to: Db): Salvaged {
  const rows: Record<string, number> = {};
  const damaged = new Set<string>();
  // Series first: the tables of readings are looked through by them.
  for (const table of tablesOf(to).sort(
    (a, b) => Number(b === 'series') - Number(a === 'series'),
  )) {
    let had: { name: string; pk: number }[] = [];
    try {
      had = columnsOf(from, table);
    } catch {
      damaged.add(table);
    }
    const names = columnsOf(to, table)
      .map(({ name }) => name)
      .filter((name) => had.some((column) => column.name === name));
    if (names.length === 0) continue; // made by a later step
    const list = names.map((name) => `"${name}"`).join(', ');
    const insert = to.prepare(
      `INSERT OR IGNORE INTO main."${table}" (${list}) VALUES (${names.map(() => '?').join(', ')})`,
    );
    let count = 0;
    const copy = (where: string, ...given: number[]): Row | null => {
      let last: Row | null = null;
      const found = from.prepare(`SELECT ${list} FROM "${table}" ${where}`).raw();
      for (const row of found.iterate(...given) as IterableIterator<Row>) {
        count += insert.run(...row).changes;
        last = row;
      }
      return last;
    };
    const tryCopy = (where: string, ...given: number[]): boolean => {
      try {
        copy(where, ...given);
        return true;
      } catch {
        damaged.add(table);
        return false;
      }
    };
    to.transaction(() => {
      if (!BY_SERIES.has(table)) {
        const key = had.filter(({ pk }) => pk > 0).map(({ name }) => `"${name}" DESC`);
        if (!tryCopy('') && key.length > 0) tryCopy(`ORDER BY ${key.join(', ')}`);
        return;
      }
      for (const id of to.prepare<[], number>('SELECT id FROM series ORDER BY id').pluck().all()) {
        if (tryCopy('WHERE series_id = ? ORDER BY t', id)) continue;
        for (const [begin, end] of slices(to, table, id))
          tryCopy('WHERE series_id = ? AND t >= ? AND t < ? ORDER BY t', id, begin, end);
        tryCopy('WHERE series_id = ? ORDER BY t DESC', id);
      }
    })();
    rows[table] = count;
  }
  return { rows, damaged: [...damaged] };
}

/** What lies behind the last row that came over, up to any series' newest. */
function* slices(to: Db, table: string, id: number): Generator<[number, number]> {
  const last = to
    .prepare<[number], number | null>(`SELECT max(t) FROM main."${table}" WHERE series_id = ?`)
    .pluck()
    .get(id);
  const end = to.prepare<[], number | null>(`SELECT max(t) FROM main."${table}"`).pluck().get();
  if (last == null || end == null) return;
  for (let t = last + 1; t <= end; t += SLICE) yield [t, t + SLICE];
}
