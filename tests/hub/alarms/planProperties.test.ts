import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Delivery, mayTell, planDeliveries, rankOf } from '../../../hub/alarms/index.ts';
import {
  ALWAYS,
  alarm,
  ann,
  ben,
  carriedOut,
  cid,
  DAYTIME,
  HOUR,
  MINUTE,
  minuteOf,
  settings,
  stateAt,
} from './told.ts';

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
    {
      numRuns: 300,
      // A message that fails and is dropped in one turn: it must not hide a way in that turn only.
      examples: [
        [
          {
            begin: 6,
            alarms: [{ stem: 'door:a', since: 0, lasts: null, seenAfter: 57 }],
            hours: [{ from: 420, to: 1260 }, null, null],
            silenced: false,
            fates: ['waiting', 'waiting', 'waiting', 'waiting', 'refused', 'waiting'],
          },
        ],
      ],
    },
  );
});
