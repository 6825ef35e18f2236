import { expect, test } from 'vitest';
import { eventsOf, type SeenAlarm } from '../../../hub/alarms/index.ts';
import { alarm, HOUR, lived, MINUTE, T } from './told.ts';

test('three changes in half an hour are one alarm with a count', () => {
  const door = [
    alarm('door:x~1', T, { clearedAt: T + 8 * MINUTE }),
    alarm('door:x~2', T + 16 * MINUTE, { clearedAt: T + 24 * MINUTE }),
    alarm('door:x~3', T + 29 * MINUTE),
  ];
  const at = (t: number) =>
    door
      .filter(({ since }) => since <= t)
      .map((one) => ({
        ...one,
        clearedAt: one.clearedAt !== null && one.clearedAt <= t ? one.clearedAt : null,
      }));
  const { told } = lived(T, T + 45 * MINUTE, at);
  expect(told.filter(([, what]) => what === 'raised')).toEqual([
    [0, 'raised', 'ann'],
    [16, 'raised', 'ben'],
    [20, 'raised', 'cid'],
  ]);
  const [event, ...others] = eventsOf(door, T + 30 * MINUTE);
  expect([event?.head.id, event?.count, others]).toEqual(['door:x~1', 3, []]);
  // Still open half an hour on: that is no chatter any more.
  expect(eventsOf(door, T + 60 * MINUTE).map(({ head }) => head.id)).toEqual([
    'door:x~1',
    'door:x~3',
  ]);
});

test('a power loss holds the temperature and probe alarms that follow at its place', () => {
  const all = [
    alarm('power', T, { kind: 'power' }),
    alarm('probe', T + 20 * MINUTE, { kind: 'probe' }),
    alarm('warm', T + 40 * MINUTE, { kind: 'warm' }),
    alarm('other', T + 40 * MINUTE, { kind: 'warm', place: 'second-room' }),
    alarm('door', T + 50 * MINUTE, { kind: 'door' }),
  ];
  expect(eventsOf(all, T + HOUR).map(({ head, folded }) => [head.id, folded.length])).toEqual([
    ['power', 2],
    ['other', 0],
    ['door', 0],
  ]);
});

test('warm air that comes with an open door is one trouble, told once', () => {
  const at = [alarm('warm', T, { kind: 'warm' }), alarm('door', T)];
  const [event, ...others] = eventsOf(at, T);
  expect([event?.head.id, event?.folded.map(({ id }) => id), others]).toEqual([
    'door',
    ['warm'],
    [],
  ]);
  // The door was shut half an hour ago and the room is still warm: a trouble of its own.
  const shut = [at[0] as SeenAlarm, alarm('door', T, { clearedAt: T + 5 * MINUTE })];
  expect(eventsOf(shut, T + 35 * MINUTE)).toHaveLength(2);
});

test('produce that gets warm long after the power loss was seen is news', () => {
  const seen = alarm('power', T, { kind: 'power', seenBy: 'Ann', seenAt: T + 5 * MINUTE });
  const warm = (at: number) => alarm('warm', at, { kind: 'warm' });
  expect(eventsOf([seen, warm(T + 30 * MINUTE)], T + 2 * HOUR)).toHaveLength(1);
  expect(eventsOf([seen, warm(T + 90 * MINUTE)], T + 2 * HOUR)).toHaveLength(2);
});
