import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  type Delivery,
  type DeliveryPlan,
  eventsOf,
  mayTell,
  planDeliveries,
  rankOf,
  type SeenAlarm,
  type ToldState,
  usualSettings,
} from '../../../hub/alarms/index.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const T = Date.UTC(2026, 4, 10, 2); // 02:00, and the farm's clock here is UTC
const ALWAYS = { from: 0, to: 0 };
const DAYTIME = { from: 7 * 60, to: 21 * 60 };

const person = (id: string, more: object = {}) => ({
  id,
  name: id.toUpperCase(),
  email: `${id}@example.org`,
  webhook: null as string | null,
  hours: { urgent: ALWAYS, today: DAYTIME },
  ...more,
});
const ann = person('ann');
const ben = person('ben');
const cid = person('cid');
const settings = { ...usualSettings, people: [ann, ben, cid] };

const alarm = (id: string, since: number, more: Partial<SeenAlarm> = {}): SeenAlarm => ({
  ...{ id, place: 'cool-room', kind: 'door', since, words: `words of ${id}`, clearedAt: null },
  ...{ seenBy: null, seenAt: null, was: null },
  ...more,
});
const minuteOf = (t: number) => Math.floor((t % 86_400_000) / MINUTE);
const stateAt = (
  now: number,
  alarms: readonly SeenAlarm[],
  deliveries: readonly Delivery[] = [],
  more: Partial<ToldState> = {},
): ToldState => ({
  ...{ alarms, deliveries, settings, silences: [], minute: minuteOf(now) },
  ...more,
});
/** What is in the queue when a plan was written down and, unless told otherwise, sent. */
const carriedOut = (
  before: readonly Delivery[],
  plan: DeliveryPlan,
  now: number,
  sent: Delivery['state'] = 'delivered',
): Delivery[] =>
  [...before, ...plan.add]
    .map((one) => {
      const end = plan.end.find(({ id }) => id === one.id);
      return end ? { ...one, state: end.state, endedAt: now, words: end.words } : one;
    })
    .map((one) =>
      one.state === 'waiting' && sent !== 'waiting'
        ? { ...one, state: sent, endedAt: now, tries: 1 }
        : one,
    );
/** Who was told what, minute by minute from `from` to `to`. */
function lived(
  from: number,
  to: number,
  alarmsAt: (t: number) => readonly SeenAlarm[],
  more: Partial<ToldState> = {},
  sent: Delivery['state'] = 'delivered',
) {
  let queue: Delivery[] = [];
  const told: [number, string, string][] = [];
  for (let t = from; t <= to; t += MINUTE) {
    const plan = planDeliveries(stateAt(t, alarmsAt(t), queue, more), t);
    for (const one of plan.add)
      if (one.state !== 'held') told.push([(t - from) / MINUTE, one.what, one.person]);
    queue = carriedOut(queue, plan, t, sent);
  }
  return { told, queue };
}

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

// What holds whatever happens: alarms that come and go, are seen, silenced, and messages that fail.
const anyAlarm = fc.record({
  stem: fc.constantFrom('door:a', 'power:a', 'warm:a', 'warm:b', 'probe:a'),
  since: fc.integer({ min: 0, max: 240 }),
  lasts: fc.option(fc.integer({ min: 1, max: 200 }), { nil: null }),
  seenAfter: fc.option(fc.integer({ min: 0, max: 120 }), { nil: null }),
});
const anyDay = fc.record({
  begin: fc.integer({ min: 0, max: 23 }),
  alarms: fc.array(anyAlarm, { maxLength: 7 }),
  hours: fc.array(fc.constantFrom(null, ALWAYS, DAYTIME, { from: 22 * 60, to: 5 * 60 }), {
    minLength: 3,
    maxLength: 3,
  }),
  silenced: fc.boolean(),
  fates: fc.array(fc.constantFrom('delivered', 'refused', 'waiting'), { minLength: 1 }),
});

test('planning again gives nothing; each person is told of an event once, and of its end once', () => {
  fc.assert(
    fc.property(anyDay, ({ begin, alarms, hours, silenced, fates }) => {
      const from = Date.UTC(2026, 4, 10, begin);
      const people = [ann, ben, cid].map((one, i) => ({
        ...one,
        hours: { urgent: hours[i] ?? null, today: DAYTIME },
      }));
      const all = alarms.map(({ stem, since, lasts, seenAfter }, i) => ({
        ...alarm(`${stem}~${i}`, from + since * MINUTE),
        kind: stem.split(':')[0] ?? '',
        place: stem.split(':')[1] ?? '',
        end: lasts === null ? null : from + (since + lasts) * MINUTE,
        seen: seenAfter === null ? null : from + (since + seenAfter) * MINUTE,
      }));
      const silences = silenced
        ? [
            {
              ...{ id: 's', place: 'a', kind: null, reason: 'r', work: false, who: 'x' },
              ...{ from, until: from + HOUR },
            },
          ]
        : [];
      let queue: Delivery[] = [];
      let sends = 0;
      for (let t = from; t <= from + 6 * HOUR; t += 7 * MINUTE) {
        const now = all
          .filter(({ since }) => since <= t)
          .map(({ end, seen, ...one }) => ({
            ...one,
            clearedAt: end !== null && end <= t ? end : null,
            ...(seen !== null && seen <= t ? { seenBy: 'x', seenAt: seen } : {}),
          }));
        const given = { settings: { ...settings, people }, silences };
        const plan = planDeliveries(stateAt(t, now, queue, given), t);
        const written = carriedOut(queue, plan, t, 'waiting');
        expect(planDeliveries(stateAt(t, now, written, given), t)).toEqual({ add: [], end: [] });
        for (const one of plan.add) {
          const minute = minuteOf(t);
          const who = people.find(({ id }) => id === one.person);
          const about = now.find(({ id }) => id === one.alarm);
          if (one.what !== 'raised' || !who || !about) continue;
          expect(about.seenAt, 'told of what somebody has seen').toBeNull();
          if (rankOf(about.kind, settings) !== 'urgent') {
            expect(mayTell(who, 'today', settings, minute), 'told outside hours').toBe(true);
            continue;
          }
          const inHours = mayTell(who, 'urgent', { quiet: null }, minute);
          const begun = queue.filter(
            ({ alarm: id, since, what }) =>
              id === one.alarm && since === one.since && what === 'raised',
          );
          const waited = begun.some(({ madeAt }) => t - madeAt >= 30 * MINUTE);
          const others = people.some(
            (other) =>
              mayTell(other, 'urgent', { quiet: null }, minute) &&
              !begun.some(({ person: id }) => id === other.id),
          );
          if (!inHours && !waited) expect(others, 'woken outside hours').toBe(false);
        }
        queue = written.map((one) => {
          if (one.state !== 'waiting') return one;
          const fate = fates[sends++ % fates.length] ?? 'delivered';
          return fate === 'waiting'
            ? { ...one, tries: one.tries + 1 }
            : { ...one, state: fate as Delivery['state'], endedAt: t, tries: one.tries + 1 };
        });
        const hour = queue.filter(
          ({ madeAt, state, person: id }) =>
            id === 'ann' && madeAt > t - HOUR && !['held', 'summarised', 'dropped'].includes(state),
        );
        expect(hour.length).toBeLessThanOrEqual(settings.most);
      }
      expect(new Set(queue.map(({ id }) => id)).size).toBe(queue.length);
      const ways = queue
        .filter(({ what }) => what === 'raised' || what === 'over')
        .map(({ what, alarm: id, since, person: who }) => `${what} ${id} ${since} ${who}`);
      expect(new Set(ways).size).toBe(ways.length);
    }),
    { numRuns: 300 },
  );
});
