import { expect, test } from 'vitest';
import {
  alarmsFirst,
  speakingSpot,
  withEndedTask,
  withOpenTask,
  withProbe,
  withProbeReading,
  withReading,
} from '../../dashboard/merge.ts';
import type { PlaceNow, Probe, Task } from '../../hub/contract/index.ts';

const task = (id: string, more: Partial<Task> = {}): Task => ({
  id,
  kind: 'water',
  place: 'long-house',
  subject: null,
  state: 'open',
  verdict: 'act',
  title: id,
  because: [],
  why: '',
  doBy: null,
  from: null,
  minutes: 5,
  saves: { amount: null, money: null },
  alarm: false,
  caution: null,
  openedAt: '2025-11-03T06:00:00Z',
  endedAt: null,
  answer: null,
  until: null,
  ...more,
});
const ids = (tasks: readonly Task[]) => tasks.map(({ id }) => id);

test('an ended task leaves the open ones and heads the ended ones', () => {
  const done = task('a', { state: 'ended', answer: 'done' });
  expect(ids(withOpenTask([task('a'), task('b')], done))).toEqual(['b']);
  expect(ids(withEndedTask([task('c', { state: 'ended' })], done))).toEqual(['a', 'c']);
});

test('a task opened again leaves the ended ones', () => {
  expect(withEndedTask([task('a', { state: 'ended' })], task('a'))).toEqual([]);
});

test('a changed task keeps its rank; a new one stands last, a new alarm first', () => {
  const open = [task('a'), task('b')];
  const changed = withOpenTask(open, task('a', { title: 'other' }));
  expect(changed.map(({ title }) => title)).toEqual(['other', 'b']);
  expect(ids(withOpenTask(open, task('c')))).toEqual(['a', 'b', 'c']);
  expect(ids(withOpenTask(open, task('c', { alarm: true })))).toEqual(['c', 'a', 'b']);
});

test('alarms stand before all that can wait, otherwise in the hub’s order', () => {
  const tasks = [task('a'), task('b', { alarm: true }), task('c'), task('d', { alarm: true })];
  expect(ids(alarmsFirst(tasks))).toEqual(['b', 'd', 'a', 'c']);
});

const spotNow = (spot: PlaceNow['spots'][number]['spot']): PlaceNow['spots'][number] => ({
  spot,
  probe: `p-${spot}`,
  temperature: 5,
  humidity: 80,
  dewPoint: null,
  absoluteHumidity: null,
  readAt: null,
  stale: true,
});
const place: PlaceNow = {
  id: 'south-patch',
  name: 'South patch',
  kind: 'patch',
  crop: null,
  asOf: '2025-11-03T06:00:00Z',
  temperature: 5,
  humidity: 80,
  dewPoint: null,
  absoluteHumidity: null,
  readAt: null,
  stale: true,
  wet: null,
  wetSince: null,
  opened: null,
  covered: null,
  spots: [spotNow('grass'), spotNow('air'), spotNow('canopy')],
  words: '',
};
const news = { place: 'south-patch', quantity: 'temperature', t: '2025-11-03T06:05:00Z' } as const;

test('canopy speaks for a place, else air, else what there is', () => {
  expect(speakingSpot(place)).toBe('canopy');
  expect(speakingSpot({ spots: [spotNow('grass'), spotNow('air')] })).toBe('air');
  expect(speakingSpot({ spots: [spotNow('grass')] })).toBe('grass');
  expect(speakingSpot({ spots: [] })).toBeNull();
});

test('a reading of the speaking spot changes the place; one of another spot does not', () => {
  const [canopy] = withReading([place], { ...news, spot: 'canopy', probe: 'p-canopy', value: 6 });
  expect([canopy?.temperature, canopy?.stale, canopy?.spots[2]?.temperature]).toEqual([
    6,
    false,
    6,
  ]);
  const [grass] = withReading([place], { ...news, spot: 'grass', probe: 'p-grass', value: -1 });
  expect([grass?.temperature, grass?.stale, grass?.spots[0]?.temperature]).toEqual([5, true, -1]);
});

test('where two probes share a spot each gets its own value, and the first speaks for the place', () => {
  const second = { ...spotNow('canopy'), probe: 'p-2' };
  const two = { ...place, spots: [spotNow('canopy'), second] };
  const [after] = withReading([two], { ...news, spot: 'canopy', probe: 'p-2', value: 6 });
  expect(after?.spots.map(({ temperature }) => temperature)).toEqual([5, 6]);
  expect(after?.temperature).toBe(5);
});

test('a reading of a quantity the list does not show changes nothing', () => {
  const reading = {
    ...news,
    quantity: 'battery',
    spot: 'canopy',
    probe: 'p-canopy',
    value: 3,
  } as const;
  expect(withReading([place], reading)).toEqual([place]);
});

const probe = (id: string, value: number, readAt: string): Probe => ({
  ...{ id, place: null, spot: null, everyMinutes: 5, heardAt: readAt, battery: null },
  ...{ offsets: {}, placements: [], suggestion: null, refused: [] },
  latest: [{ quantity: 'temperature', value, unit: '°C', readAt, flag: null }],
});
const [EARLY, LATER] = ['2025-11-03T06:00:00.000Z', '2025-11-03T06:05:00.000Z'];

test('a probe that speaks for the first time stands last; one that is known stays where it is', () => {
  const known = [probe('p1', 5, EARLY), probe('p2', 6, EARLY)];
  expect(withProbe(known, probe('p3', 7, LATER)).map(({ id }) => id)).toEqual(['p1', 'p2', 'p3']);
  expect(withProbe(known, probe('p1', 9, LATER)).map(({ latest }) => latest[0]?.value)).toEqual([
    9, 6,
  ]);
});

test('a newer reading is shown at its probe; a late one is not', () => {
  const known = [probe('p1', 5, LATER), probe('p2', 6, LATER)];
  const told = (t: string) =>
    withProbeReading(known, {
      ...{ place: 'cool-room', spot: 'air', probe: 'p1', quantity: 'temperature', t, value: 9 },
    }).map(({ latest }) => latest[0]?.value);
  expect(told('2025-11-03T06:10:00.000Z')).toEqual([9, 6]);
  expect(told(EARLY)).toEqual([5, 6]);
});
