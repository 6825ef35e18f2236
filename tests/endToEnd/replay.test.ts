import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Day } from '../../hub/contract/index.ts';
import { gardenFile } from './gardenFile.ts';
import { dewpost } from './hubProcess.ts';
import { tempFolder } from './processes.ts';

const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;

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
