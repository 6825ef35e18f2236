import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Task } from '../../hub/contract/index.ts';
import { gardenFile } from './gardenFile.ts';
import { clockFrom, farmNow, startHub } from './hubProcess.ts';
import { freePort, tempFolder } from './processes.ts';
import { type Noted, type Publisher, seeded, startPublisher } from './publishers.ts';

// The hub is killed twenty times while probes send and somebody answers tasks. A process kill is not
// a power cut: what the kernel was given is kept, so this says nothing about the disk itself.

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const KILLS = 20;
const EARLIEST = 150; // ms after all are connected
const LATEST = 900; // ms
const START = Date.UTC(2026, 4, 12, 10);
const random = seeded(20_260_512);

const data = tempFolder();
const acknowledged: Noted[] = [];
const answered: { readonly id: string; readonly answer: string }[] = [];
// An hour in a minute: tasks open, change and lapse while the hub is being killed.
const clock = clockFrom(START, 60);

/** Walks a value about, so that jumps, steps over limits and repeats all occur. */
const wander = (probe: string, quantity: string, from: number, step: number): Publisher => {
  let value = from;
  let t = START - 20 * 24 * HOUR;
  return {
    probe,
    next: () => {
      value = Math.round((value + (random() - 0.5) * step) * 100) / 100;
      if (value < from - 20 || value > from + 20) value = from;
      t += 1000;
      return { quantity, t, value };
    },
  };
};
/** Speaks of now: the room warms and its door stands open by turns, so that tasks are asked for. */
const live: Publisher = (() => {
  let last = START;
  let turn = 0;
  return {
    probe: 'cold',
    next: () => {
      const t = Math.max(last + 1, farmNow(clock));
      last = t;
      const warm = Math.floor((t - START) / (12 * MINUTE)) % 2 === 1;
      turn += 1;
      if (turn % 2 === 0) return { quantity: 'door', t, value: warm ? 1 : 0 };
      return { quantity: 'temperature', t, value: warm ? 6.5 : 3.2 };
    },
  };
})();
const publishers = [
  wander('leaf-2', 'temperature', 18, 3),
  wander('mast', 'humidity', 60, 8),
  wander('stranger', 'soil-moisture', 40, 1),
  wander('bloom', 'temperature', 9, 2),
  live,
];

let db: Database.Database;
beforeAll(async () => {
  const farm = gardenFile(data);
  const [http, mqtt] = [await freePort(), await freePort()];
  for (let kill = 0; kill < KILLS; kill++) {
    const hub = await startHub({ data, farm, open: true, http, mqtt, clock });
    const sending = await Promise.all(
      publishers.map((publisher) => startPublisher(mqtt, publisher, acknowledged, 4)),
    );
    // Somebody says "done" or "not doing" to what stands there.
    const answering = (async () => {
      for (const { id } of await hub.get<Task[]>('/api/tasks')) {
        const answer = random() < 0.5 ? 'done' : 'no';
        await hub.post(`/api/tasks/${encodeURIComponent(id)}/answer`, { answer });
        answered.push({ id, answer });
      }
    })().catch(() => {}); // killed under it: not answered
    await pause(EARLIEST + random() * (LATEST - EARLIEST));
    await hub.kill();
    for (const publisher of sending) await publisher.stop();
    await answering;
  }
  const last = await startHub({ data, farm, open: true, http, mqtt, clock });
  expect((await last.stop()).code).toBe(0);
  db = new Database(join(data, 'dewpost.db'), { readonly: true });
}, 150_000);
afterAll(() => db?.close());

test('the load was a load: readings of every probe, and answers', () => {
  const probes = new Set(acknowledged.map(({ probe }) => probe));
  expect([...probes].sort()).toEqual(publishers.map(({ probe }) => probe).sort());
  expect(acknowledged.length).toBeGreaterThan(KILLS * 50);
  expect(answered.length).toBeGreaterThan(0);
});

test('every acknowledged reading is kept exactly once, with its value', () => {
  const find = db.prepare<[string, string, number], { sent: number }>(
    `SELECT coalesce(raw, value) AS sent FROM readings JOIN series ON series.id = series_id
     WHERE probe = ? AND quantity = ? AND t = ?`,
  );
  const lost = acknowledged.filter(({ probe, quantity, t, value }) => {
    const rows = find.all(probe, quantity, t);
    return rows.length !== 1 || rows[0]?.sent !== value;
  });
  expect(lost.slice(0, 5)).toEqual([]);
});

test('nothing is kept that nobody sent', () => {
  const kept = db.prepare<[], { n: number }>('SELECT count(*) AS n FROM readings').get()?.n ?? 0;
  // At each kill every probe has at most four readings that were kept and not acknowledged any more.
  expect(kept).toBeGreaterThanOrEqual(acknowledged.length);
  expect(kept).toBeLessThanOrEqual(acknowledged.length + KILLS * publishers.length * 4);
});

test('the store is sound, and its roll-ups agree with its readings', () => {
  expect(db.pragma('integrity_check')).toEqual([{ integrity_check: 'ok' }]);
  expect(db.pragma('foreign_key_check')).toEqual([]);
  const wrong = db
    .prepare(
      `SELECT h.series_id, h.t, h.n, count(r.t) AS really FROM hours h
       LEFT JOIN readings r ON r.series_id = h.series_id AND r.t >= h.t AND r.t < h.t + ${HOUR}
         AND r.flag IS NULL
       WHERE NOT EXISTS (SELECT 1 FROM stale_hours s WHERE s.series_id = h.series_id AND s.t = h.t)
       GROUP BY h.series_id, h.t
       HAVING h.n <> count(r.t) OR h.min <> min(r.value) OR h.max <> max(r.value)`,
    )
    .all();
  expect(wrong).toEqual([]);
  const never = db
    .prepare(
      `SELECT series_id, t FROM readings r WHERE flag IS NULL
       AND NOT EXISTS (SELECT 1 FROM hours h WHERE h.series_id = r.series_id AND h.t = r.t / ${HOUR} * ${HOUR})
       AND NOT EXISTS (SELECT 1 FROM stale_hours s WHERE s.series_id = r.series_id AND s.t = r.t / ${HOUR} * ${HOUR})
       LIMIT 5`,
    )
    .all();
  expect(never).toEqual([]);
});

test('no task stands twice, and none is opened again before it has ended', () => {
  const twice = db
    .prepare("SELECT key FROM tasks WHERE state = 'open' GROUP BY key HAVING count(*) > 1")
    .all();
  expect(twice).toEqual([]);
  const events = db
    .prepare<[], { key: string; event: string }>(
      `SELECT tasks.key, json_extract(journal.body, '$.event') AS event
       FROM journal JOIN tasks ON tasks.id = journal.subject WHERE what = 'task' ORDER BY journal.id`,
    )
    .all();
  const open = new Set<string>();
  const faults: string[] = [];
  for (const { key, event } of events) {
    if (event === 'opened' && open.has(key)) faults.push(`${key} opened twice`);
    if (event !== 'opened' && !open.has(key)) faults.push(`${key} ${event} while it was not open`);
    if (event === 'opened') open.add(key);
    if (event === 'lapsed' || event === 'done' || event === 'no') open.delete(key);
  }
  expect(faults).toEqual([]);
  expect(events.filter(({ event }) => event === 'opened').length).toBeGreaterThan(0);
  const standing = db
    .prepare<[], { key: string }>("SELECT key FROM tasks WHERE state = 'open'")
    .all();
  expect(standing.map(({ key }) => key).sort()).toEqual([...open].sort());
});

test('every answer that the hub took is in the record once', () => {
  const find = db.prepare<[string, string], { n: number }>(
    `SELECT count(*) AS n FROM journal WHERE what = 'task' AND subject = ?
     AND json_extract(body, '$.event') = ?`,
  );
  expect(answered.filter(({ id, answer }) => find.get(id, answer)?.n !== 1)).toEqual([]);
});
