import { expect, test } from 'vitest';
import { planDeliveries, rankOf } from '../../../hub/alarms/index.ts';
import {
  alarm,
  ann,
  ben,
  carriedOut,
  cid,
  DAYTIME,
  HOUR,
  lived,
  MINUTE,
  person,
  settings,
  stateAt,
  T,
} from './told.ts';

test('one person is woken, after 10 minutes the next, after 20 the third, after 30 everybody', () => {
  const four = { settings: { ...settings, people: [ann, ben, cid, person('dot')] } };
  const { told } = lived(T, T + HOUR, () => [alarm('a', T)], four);
  expect(told).toEqual([
    [0, 'raised', 'ann'],
    [10, 'raised', 'ben'],
    [20, 'raised', 'cid'],
    [30, 'raised', 'dot'],
  ]);
});

test('"seen" ends the waking, and takes what was not sent out of the queue', () => {
  const seenAfter = (t: number) =>
    alarm('a', T, t < T + 12 * MINUTE ? {} : { seenBy: 'Ben', seenAt: T + 12 * MINUTE });
  const { told, queue } = lived(T, T + HOUR, (t) => [seenAfter(t)], {}, 'waiting');
  expect(told.map(([, , who]) => who)).toEqual(['ann', 'ben']);
  expect(queue.map(({ state, words }) => [state, words])).toEqual([
    ['dropped', 'seen by Ben'],
    ['dropped', 'seen by Ben'],
  ]);
});

test('somebody outside their hours is passed over, and told only with everybody', () => {
  const day = person('ann', { hours: { urgent: DAYTIME, today: DAYTIME } });
  const { told } = lived(T, T + HOUR, () => [alarm('a', T)], {
    settings: { ...settings, people: [day, ben] },
  });
  expect(told).toEqual([
    [0, 'raised', 'ben'],
    [30, 'raised', 'ann'],
  ]);
});

test('when nobody is in hours, an urgent alarm wakes all the same', () => {
  const day = (id: string) => person(id, { hours: { urgent: DAYTIME, today: DAYTIME } });
  const { told } = lived(T, T + HOUR, () => [alarm('a', T)], {
    settings: { ...settings, people: [day('ann'), day('ben')] },
  });
  expect(told).toEqual([
    [0, 'raised', 'ann'],
    [0, 'raised', 'ben'],
  ]);
});

test('somebody who cannot be reached is not waited for', () => {
  const first = planDeliveries(stateAt(T, [alarm('a', T)]), T);
  const refused = carriedOut([], first, T, 'refused');
  const next = planDeliveries(stateAt(T + MINUTE, [alarm('a', T)], refused), T + MINUTE);
  expect(next.add.map(({ what, person: who }) => [what, who])).toContainEqual(['raised', 'ben']);
});

test('what is for today waits for waking hours, is told to one person, and once', () => {
  const silent = () => [alarm('p', T, { kind: 'probe' })];
  const { told } = lived(T, T + 12 * HOUR, silent);
  expect(told).toEqual([[5 * 60, 'raised', 'ann']]); // 07:00
  const cleared = () => [alarm('p', T, { kind: 'probe', clearedAt: T + HOUR })];
  expect(lived(T + HOUR, T + 12 * HOUR, cleared).told).toEqual([]);
});

test('a note is written down and told to nobody', () => {
  const note = { settings: { ...settings, ranks: { door: 'note' as const } } };
  expect(lived(T, T + HOUR, () => [alarm('a', T)], note).told).toEqual([]);
});

test('produce too warm and frost stay urgent whatever was set', () => {
  for (const kind of ['warm', 'frost'])
    expect(rankOf(kind, { ranks: { [kind]: 'note' } })).toBe('urgent');
});

test('the end is told once to those who were told, when it has lasted', () => {
  const at = (t: number) => [
    alarm('a', T, t < T + 12 * MINUTE ? {} : { clearedAt: T + 12 * MINUTE }),
  ];
  const { told } = lived(T, T + HOUR, at);
  expect(told).toEqual([
    [0, 'raised', 'ann'],
    [10, 'raised', 'ben'],
    [17, 'over', 'ann'],
    [17, 'over', 'ben'],
  ]);
});

test('what was not sent before the end is not sent at all', () => {
  const at = (t: number) => [alarm('a', T, t < T + MINUTE ? {} : { clearedAt: T + MINUTE })];
  const { told, queue } = lived(T, T + HOUR, at, {}, 'waiting');
  expect(told).toEqual([[0, 'raised', 'ann']]);
  expect(queue.map(({ state }) => state)).toEqual(['dropped']);
});

test('a silence keeps an alarm quiet, and it comes back by itself', () => {
  const silence = (more: object) => ({
    ...{ id: 's', place: null, kind: null, reason: 'work', work: false, who: 'Ann' },
    ...{ from: T, until: T + 4 * HOUR, ...more },
  });
  const told = (kind: string, more: object = {}) =>
    lived(T, T + 5 * HOUR, () => [alarm('a', T, { kind })], { silences: [silence(more)] }).told[0];
  expect(told('door')).toEqual([240, 'raised', 'ann']);
  // Produce and frost: two hours at the most, and not at all while somebody works there.
  expect(told('warm')).toEqual([120, 'raised', 'ann']);
  expect(told('frost')).toEqual([120, 'raised', 'ann']);
  expect(told('warm', { work: true })).toEqual([0, 'raised', 'ann']);
  expect(told('door', { place: 'elsewhere' })).toEqual([0, 'raised', 'ann']);
  expect(told('door', { kind: 'power' })).toEqual([0, 'raised', 'ann']);
});

test('more messages than anybody reads are held back and summed up', () => {
  const places = Array.from({ length: 9 }, (_, i) =>
    alarm(`a${i}`, T + i * MINUTE, { place: `place-${i}`, seenAt: null }),
  );
  const at = (t: number) => places.filter(({ since }) => since <= t);
  const alone = { settings: { ...settings, people: [ann] } };
  const { told, queue } = lived(T, T + 70 * MINUTE, at, alone);
  expect(told.filter(([minute]) => minute < 60)).toHaveLength(6);
  expect(told.at(-1)).toEqual([60, 'summary', 'ann']);
  expect(queue.filter(({ state }) => state === 'summarised')).toHaveLength(3);
});

test('that messages fail is told on a way that works, once', () => {
  const two = person('ann', { webhook: 'http://127.0.0.1:9/x' });
  const only = { settings: { ...settings, people: [two] } };
  const noon = Date.UTC(2026, 4, 10, 12);
  const first = planDeliveries(stateAt(noon, [alarm('a', noon)], [], only), noon);
  const queue = carriedOut([], first, noon, 'waiting').map((one) =>
    one.channel === 'email'
      ? { ...one, tries: 3, words: 'connection refused' }
      : { ...one, state: 'delivered' as const, endedAt: noon },
  );
  const next = planDeliveries(
    stateAt(noon + HOUR / 2, [alarm('a', noon)], queue, only),
    noon + HOUR / 2,
  );
  expect(next.add.map(({ what, channel }) => [what, channel])).toEqual([['trouble', 'webhook']]);
  const after = carriedOut(queue, next, noon + HOUR / 2, 'waiting');
  expect(
    planDeliveries(stateAt(noon + HOUR, [alarm('a', noon)], after, only), noon + HOUR).add,
  ).toEqual([]);
});
