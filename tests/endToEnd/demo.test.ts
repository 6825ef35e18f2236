import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Day, FarmFacts, Health, Probe, Today } from '../../hub/contract/index.ts';
import { gardenFile } from './gardenFile.ts';
import { dewpost, root } from './hubProcess.ts';
import { begin, freePort, killed, tempFolder, until } from './processes.ts';

const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;

const listens = (port: number) =>
  new Promise<boolean>((resolve) => {
    const socket = connect(port, '127.0.0.1');
    socket.once('connect', () => {
      socket.destroy();
      resolve(true);
    });
    socket.once('error', () => resolve(false));
  });

/** Processes that have this text in their command line, where the system tells (Linux). */
const running = (text: string): string[] =>
  !existsSync('/proc')
    ? []
    : readdirSync('/proc')
        .filter((name) => /^\d+$/.test(name))
        .filter((pid) => {
          try {
            return readFileSync(join('/proc', pid, 'cmdline'), 'utf8').includes(text);
          } catch {
            return false; // ended meanwhile
          }
        });

test('the demonstration goes from nothing to a useful day, and leaves nothing when it is stopped', {
  timeout: 240_000,
}, async () => {
  const folder = join(tempFolder(), 'demo');
  const [http, mqtt] = [await freePort(), await freePort()];
  const where = ['--data', folder, '--http', `127.0.0.1:${http}`, '--mqtt', `127.0.0.1:${mqtt}`];
  const script = join(root, 'dist', 'simulators', 'demo.js');
  await until(() => existsSync(script), 'a built demonstration: run npm run build first', 30_000);
  const demo = begin(process.execPath, [script, ...where, '--speed', '60'], { cwd: root });
  const page = `http://127.0.0.1:${http}`;
  const get = async <Shape>(path: string) => {
    const response = await fetch(page + path);
    if (!response.ok) throw new Error(`${path} answered ${response.status}`);
    return (await response.json()) as Shape;
  };
  await until(
    () => {
      if (demo.child.exitCode !== null) throw new Error(demo.err());
      return demo.out().includes(`Open  ${page}/`);
    },
    'the address of the demonstration',
    180_000,
  );

  const today = await until(async () => {
    const facts = await get<Today>('/api/today');
    return new Set(facts.tasks.map(({ kind }) => kind)).size >= 4 && facts;
  }, 'four kinds of task');
  expect(today.sentence).toMatch(/^This cannot wait: .+ \d+ more things to do\./);
  for (const { title, why, because } of today.tasks) {
    expect(title).not.toBe('');
    expect(why).toMatch(/\.$/);
    expect(because.length).toBeGreaterThan(0);
  }
  expect(today.frost.length).toBeGreaterThan(2);
  expect(today.frost.every(({ nightsLearned }) => nightsLearned >= 10)).toBe(true);
  expect(today.coolRooms).toHaveLength(1);

  const farm = await get<FarmFacts>('/api/farm');
  expect(farm).toMatchObject({ invented: true, speed: 60 });
  const to = farm.now.slice(0, 10);
  const from = new Date(Date.parse(to) - 140 * DAY).toISOString().slice(0, 10);
  for (const id of ['long-house', 'hollow-house', 'south-patch', 'outside']) {
    const days = await get<Day[]>(`/api/places/${id}/days?from=${from}&to=${to}`);
    const known = days.filter(({ min, max }) => min !== null && max !== null && min <= max);
    expect(known.length, `days of ${id}`).toBeGreaterThanOrEqual(120);
  }

  const probes = await get<Probe[]>('/api/probes');
  const unplaced = probes.filter(({ place }) => place === null);
  expect(unplaced.map(({ id }) => id)).toEqual(['spare-7']);
  expect(unplaced[0]?.suggestion).toMatchObject({ place: 'long-house', spot: 'canopy' });

  const before = (await get<Health>('/api/health')).lastReadingAt ?? '';
  const later = await until(async () => {
    const health = await get<Health>('/api/health');
    return (health.lastReadingAt ?? '') > before && health;
  }, 'a reading that comes in now');
  expect(later.status).toBe('ok');
  const all = probes.filter(({ heardAt }) => heardAt !== null).length;
  expect(all).toBe(probes.length);

  expect(running(folder).length).toBeGreaterThan(0);
  demo.child.kill('SIGINT');
  const late = setTimeout(() => void killed(demo.child), 30_000);
  const { code, out, err } = await demo.ended;
  clearTimeout(late);
  expect(err).toBe('');
  expect(code).toBe(0);
  expect(out).toMatch(/Stopped\.\n$/);
  expect(await listens(http)).toBe(false);
  expect(await listens(mqtt)).toBe(false);
  expect(running(folder)).toEqual([]);
});

test('the replay command prints one document with what the readings meant', {
  timeout: 60_000,
}, async () => {
  const folder = tempFolder();
  const farm = gardenFile(folder);
  const readings = join(folder, 'readings.ndjson');
  const start = Date.UTC(2026, 4, 12);
  const lines: string[] = [];
  for (let t = start; t < start + DAY; t += 10 * MINUTE) {
    const line = (probe: string, quantity: string, value: number) =>
      lines.push(JSON.stringify({ probe, quantity, t: new Date(t).toISOString(), value }));
    line('leaf', 'temperature', 15 + 5 * Math.sin((t - start) / (4 * 60 * MINUTE)));
    line('leaf', 'humidity', 70 + (t % (30 * MINUTE)) / MINUTE / 10); // never still: that would be stuck
    // The room keeps its cold until noon UTC and then warms by 2 °C an hour.
    const warmFor = Math.max(0, t - (start + DAY / 2)) / (60 * MINUTE);
    line('cold', 'temperature', 3 + 2 * warmFor + (t % (20 * MINUTE) === 0 ? 0.2 : 0));
  }
  lines.push('{"probe":"leaf","quantity":"colour","t":"2026-05-12T10:00:00Z","value":3}');
  lines.push('{"probe":"leaf","quantity":"temperature","t":"2026-05-12T10:05:00Z","value":255}');
  writeFileSync(readings, `${lines.join('\n')}\n`);

  const given = ['--farm', farm, '--readings', readings, '--json'];
  const { code, out, err } = await dewpost('replay', ...given);
  expect(err).toBe('');
  expect(code).toBe(0);
  const told = JSON.parse(out);
  expect(Object.keys(told).sort()).toEqual(['alarms', 'days', 'frost', 'rejected', 'tasks']);
  expect(Object.keys(told.days).sort()).toEqual([
    'cool-room',
    'long-house',
    'outside',
    'south-patch',
  ]);
  const day = told.days['long-house'].find((one: Day) => one.day === '2026-05-12');
  expect(Object.keys(day).sort()).toEqual(
    [
      ...['day', 'min', 'max', 'mean', 'wetHours', 'unknownHours'],
      ...['longestSpellHours', 'degreeDays', 'botrytisIndex'],
    ].sort(),
  );
  // The correction of 0.5 is in it; the sine stays within 5 of 15.
  expect(day.min).toBeGreaterThanOrEqual(10.5);
  expect(day.max).toBeLessThanOrEqual(20.5);
  expect(day.wetHours).toBe(0);
  const warm = told.alarms.find(({ kind }: { kind: string }) => kind === 'warm');
  expect(warm).toMatchObject({ place: 'cool-room', event: 'raised' });
  expect(Date.parse(warm.t)).toBeGreaterThan(start + DAY / 2);
  expect(Date.parse(warm.t)).toBeLessThan(start + DAY / 2 + 3 * 60 * MINUTE);
  const opened = told.tasks.filter(({ event }: { event: string }) => event === 'opened');
  expect(opened.map(({ kind }: { kind: string }) => kind)).toContain('move-produce');
  for (const one of opened)
    expect(Object.keys(one).sort()).toEqual(['event', 'id', 'kind', 'place', 't']);
  expect(told.rejected['out-of-range']).toBe(1);
  expect(Object.values(told.rejected).reduce((sum: number, n) => sum + Number(n), 0)).toBe(2);
});

test('a replay without its farm file is wrong use, and without readings a failure', {
  timeout: 30_000,
}, async () => {
  const folder = tempFolder();
  const farm = gardenFile(folder);
  const empty = join(folder, 'empty.ndjson');
  writeFileSync(empty, '');
  const wrong = await dewpost('replay', '--readings', empty, '--json');
  expect(wrong.code).toBe(2);
  expect(wrong.err).toContain('--farm');
  const none = await dewpost('replay', '--farm', farm, '--readings', empty, '--json');
  expect(none.code).toBe(1);
  expect(none.out).toBe('');
  expect(none.err).toMatch(/^Expected at least one reading[^\n]*\n$/);
});
