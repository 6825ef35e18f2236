import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import type { Reading } from '../../simulators/reading.ts';
import { scenario } from '../../simulators/scenario.ts';
import { writeHistory } from '../../simulators/writeHistory.ts';

const DAY = 86_400_000;
const folder = mkdtempSync(join(tmpdir(), 'dewpost-history-'));
afterAll(() => rmSync(folder, { recursive: true }));

type Line = Omit<Reading, 't'> & { t: string; unit?: string };
const linesOf = (file: string) =>
  readFileSync(file, 'utf8')
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Line);

const { start, historyFrom, seed } = scenario;
const season = join(folder, 'season.ndjson');
const count = writeHistory(scenario, { from: historyFrom, to: start, seed }, season);
const lines = linesOf(season);

// What each quantity may be on such a coast; ours, wide. Faulty values are told apart.
const ranges: Partial<Record<Reading['quantity'], readonly [number, number]>> = {
  temperature: [-12, 45],
  humidity: [15, 100],
  rain: [0, 8],
  wind: [0, 30],
  power: [0, 1000],
  energy: [0, 2000],
  door: [0, 1],
  battery: [0, 100],
};

test('a season is not too long to import', () => {
  expect(count).toBe(lines.length);
  expect(count).toBeGreaterThan(300_000);
  expect(count).toBeLessThan(600_000);
});

test('every line has a probe, a quantity, a time in UTC inside the season and a value', () => {
  const clockFault = 7 * 3_600_000 + 60_000; // the one probe whose clock ran ahead
  const wrong = lines.filter(({ probe, quantity, t, value }) => {
    const at = Date.parse(t);
    const inside = at >= historyFrom && at < start + clockFault;
    return !(probe && quantity && t.endsWith('Z') && inside && Number.isFinite(value));
  });
  expect(wrong).toEqual([]);
});

test('values stay in the range of their quantity but for a few faulty ones', () => {
  const out = lines.filter(({ quantity, value }) => {
    const [from, to] = ranges[quantity] ?? [0, 0];
    return !(value >= from && value <= to);
  });
  expect(out.length).toBeGreaterThan(0);
  expect(out.length).toBeLessThan(60);
  expect(new Set(out.map(({ value }) => value))).toEqual(new Set([85, 0]));
});

test('a battery told in volts says so, and one told in per cent has no unit', () => {
  const batteries = lines.filter(({ quantity }) => quantity === 'battery');
  const volts = batteries.filter(({ unit }) => unit === 'V');
  expect(volts.length).toBeGreaterThan(100);
  expect(volts.every(({ value }) => value > 2.4 && value < 4.3)).toBe(true);
  expect(batteries.filter(({ unit }) => unit === undefined).length).toBeGreaterThan(100);
  expect(lines.every(({ quantity, unit }) => quantity === 'battery' || unit === undefined)).toBe(
    true,
  );
});

test('there are gaps of hours, and most of the time there are none', () => {
  const times = lines
    .filter(({ probe, quantity }) => probe === 'long-canopy' && quantity === 'humidity')
    .map(({ t }) => Date.parse(t))
    .sort((a, b) => a - b);
  const gaps = times.slice(1).map((t, at) => t - (times[at] ?? t));
  const holes = gaps.filter((gap) => gap > 30 * 60_000).length;
  expect(holes).toBeGreaterThan(0);
  expect(holes).toBeLessThan(12);
  const minutes = gaps.filter((gap) => gap <= 10 * 60_000).length;
  expect(minutes / gaps.length).toBeGreaterThan(0.98);
});

test('the same seed writes the same file, another seed another one', () => {
  const few = { from: historyFrom, to: historyFrom + 2 * DAY };
  const [a, b, c] = [seed, seed, seed + 1].map((chosen, at) => {
    const file = join(folder, `${at}.ndjson`);
    writeHistory(scenario, { ...few, seed: chosen }, file);
    return readFileSync(file, 'utf8');
  });
  expect(a).toBe(b);
  expect(a).not.toBe(c);
});

test('the last two days are as fine as the probes report, the cool room for three weeks, all else every ten minutes', () => {
  const count = (of: string, from: number) =>
    lines.filter(({ probe, quantity, t }) => {
      const at = Date.parse(t);
      return probe === of && quantity === 'temperature' && at >= from && at < from + DAY;
    }).length;
  expect(count('cool-air', start - DAY)).toBeGreaterThan(690); // every 2 minutes: 720
  expect(count('cool-air', start - 10 * DAY)).toBeGreaterThan(690);
  expect(count('cool-air', start - 30 * DAY)).toBeLessThan(150);
  expect(count('sun-canopy', start - DAY)).toBeGreaterThan(280); // every 5 minutes: 288
  expect(count('sun-canopy', start - 10 * DAY)).toBeLessThan(150);
});
