import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { calendarOf } from '../../../hub/clock.ts';
import { type FarmFile, farmFile, type TrialChange } from '../../../hub/contract/index.ts';
import { openPast } from '../../../hub/store/index.ts';
import {
  changedFarm,
  compareDays,
  limitNow,
  type MayAsk,
  makeTrials,
  type TrialJob,
  walkPast,
} from '../../../hub/trial/index.ts';
import { DAY, pastHub } from './pastHub.ts';

const { dayOf } = calendarOf('UTC');

const folder = mkdtempSync(join(tmpdir(), 'dewpost-test-'));
let past: Awaited<ReturnType<typeof pastHub>>;
beforeAll(async () => {
  past = await pastHub(folder, 6);
}, 240_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function trials() {
  const walk = (before: FarmFile, after: FarmFile, may?: MayAsk) => {
    const reader = openPast(past.path);
    try {
      const job = { before, after, from: past.from + 2 * DAY, to: past.to };
      const steps = walkPast(reader, job, may);
      for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
    } finally {
      reader.close();
    }
  };
  const wetHours = (to: number) =>
    changedFarm(past.file, [{ what: 'wet-hours', of: 'long-house', to }]);
  return { ...past, walk, wetHours };
}

test('a limit changed to itself changes nothing, and only places it touches are walked', {
  timeout: 240_000,
}, async () => {
  const { file, walk, wetHours } = trials();
  expect(walk(file, structuredClone(file))).toEqual([]);
  expect(walk(wetHours(4), wetHours(9)).map(({ place }) => place)).toEqual(['long-house']);
  const same = walk(wetHours(4), wetHours(4.000001))[0];
  expect(same?.after).toEqual(same?.before);
});

test('fewer wet hours never ask for air on fewer days, nor in fewer hours', {
  timeout: 240_000,
}, async () => {
  const { walk, wetHours, to } = trials();
  const hours = fc.integer({ min: 1, max: 30 });
  let differed = 0;
  fc.assert(
    fc.property(hours, hours, (one, other) => {
      if (one === other) return;
      const [strict, lax] = [Math.min(one, other), Math.max(one, other)];
      const [row] = compareDays(walk(wetHours(lax), wetHours(strict)), [], { dayOf, to }).filter(
        ({ kind }) => kind === 'open-up',
      );
      if (row === undefined) return;
      for (const day of row.before.days) expect(row.after.days).toContain(day);
      if (row.after.days.length > row.before.days.length) differed += 1;
    }),
    { numRuns: 12, seed: 7 },
  );
  expect(differed).toBeGreaterThan(0); // the limit matters in these days
});

const CHANGES: readonly TrialChange[] = [
  { what: 'wet-at', of: 'long-house', to: 95 },
  { what: 'wet-below', of: 'long-house', to: 80 },
  { what: 'wet-hours', of: 'long-house', to: 8 },
  { what: 'cover-minutes', of: 'south-patch', to: 10 },
  { what: 'cover-value', of: 'south-patch', to: 70 },
  { what: 'cover-damage', of: 'south-patch', to: -2 },
  { what: 'heat-limit', of: 'basil', to: 30 },
  { what: 'band-top', of: 'basil', to: 26 },
  { what: 'chill', of: 'basil', to: 10 },
  { what: 'wage', of: null, to: 22 },
];

test('each limit is changed where it stands, nothing else is, and a farm file may hold it', {
  timeout: 120_000,
}, async () => {
  const { file } = past;
  for (const change of CHANGES) {
    const after = changedFarm(file, [change]);
    expect(limitNow(file, change), change.what).not.toBe(change.to);
    expect(limitNow(after, change)).toBe(change.to);
    expect(farmFile.safeParse(after).success).toBe(true);
    for (const other of CHANGES)
      if (other !== change) expect(limitNow(after, other)).toBe(limitNow(file, other));
  }
  expect(limitNow(file, { what: 'wet-at', of: 'nowhere' })).toBeNull();
});

test('a loss counts where such a task stood in the seven days before it, and not on its own day', () => {
  const at = (day: number) => Date.UTC(2026, 3, day, 9);
  const asked = (...days: number[]) =>
    days.map((day) => ({ kind: 'open-up' as const, from: at(day), to: at(day) + 1, minutes: 5 }));
  const losses = [2, 8, 9, 20].map((day) => ({
    ...{ place: 'a', look: 'mould', day: `2026-04-${String(day).padStart(2, '0')}` },
  }));
  const [row] = compareDays(
    [{ place: 'a', read: true, before: asked(2), after: asked(2, 14) }],
    [...losses, { place: 'b', look: 'mould', day: '2026-04-03' }],
    { dayOf, to: at(30) },
  );
  // By hand: the 2nd has none before it; the 8th and 9th follow the 2nd by six and seven days.
  expect(row?.losses).toEqual([{ look: 'mould', entries: 4, before: 2, after: 3 }]);
  expect(row?.after).toEqual({ days: ['2026-04-02', '2026-04-14'], tasks: 2, minutes: 10 });
});

test('one trial runs at a time for a person, and one that is called off makes room', () => {
  const job = {} as TrialJob;
  let ended = 0;
  const desk = makeTrials(
    () => async () => {
      ended += 1;
    },
    'nowhere',
    () => 0,
  );
  const one = desk.start('Ada', [], job);
  expect(desk.runningOf('Ada')?.id).toBe(one.id);
  expect(desk.runningOf('Ben')).toBeUndefined();
  desk.cancel(one.id);
  expect([desk.runningOf('Ada'), desk.get(one.id)?.state, ended]).toEqual([
    undefined,
    'canceled',
    1,
  ]);
});

test('with all rules asked at every look a trial says the same', { timeout: 120_000 }, () => {
  const { file, walk } = trials();
  const after = changedFarm(file, [
    { what: 'wet-hours', of: 'long-house', to: 2 },
    { what: 'band-top', of: 'basil', to: 20 },
    { what: 'heat-limit', of: 'basil', to: 22 },
    { what: 'wage', of: null, to: 3 },
    { what: 'chill', of: 'pea-shoots', to: 9 },
    { what: 'cover-value', of: 'south-patch', to: 2000 },
  ]);
  const always = { 'open-up': yes, 'close-up': yes, 'leave-open': yes, shade: yes, cover: yes };
  const all = walk(file, after, always);
  expect(all.flatMap(({ after }) => after).length).toBeGreaterThan(5);
  expect(walk(file, after)).toEqual(all);
});
const yes = () => true;
