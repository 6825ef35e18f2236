import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Alarm, planAlarms, sendAlarm, told } from '../../../hub/alarms/index.ts';
import { alarm as alarmSchema } from '../../../hub/contract/index.ts';

const T = Date.UTC(2026, 4, 10, 2);
const cause = (id: string, alarm: string | null = 'warm', until: number | null = null) => ({
  id,
  place: 'cool-room',
  alarm,
  until,
});
const words = (id: string) => `words of ${id}`;

/** What stands raised after a plan was carried out. */
const carriedOut = (raised: readonly Alarm[], plan: ReturnType<typeof planAlarms>) => [
  ...raised.filter(({ id }) => !plan.clear.some((one) => one.id === id)),
  ...plan.raise,
];

test('an alarm is raised once and cleared once', () => {
  const first = planAlarms([], [cause('a')], words, T);
  expect(first.raise).toEqual([
    { id: 'a', place: 'cool-room', kind: 'warm', since: T, words: 'words of a', clearedAt: null },
  ]);
  const standing = carriedOut([], first);
  expect(planAlarms(standing, [cause('a')], words, T + 1)).toEqual({ raise: [], clear: [] });
  const last = planAlarms(standing, [], words, T + 2);
  expect(last).toMatchObject({ raise: [], clear: [{ id: 'a', since: T, clearedAt: T + 2 }] });
  expect(planAlarms(carriedOut(standing, last), [], words, T + 3)).toEqual({
    raise: [],
    clear: [],
  });
});

test('a task without an alarm raises none, and one put off is quiet', () => {
  expect(planAlarms([], [cause('a', null), cause('b', 'door', T + 9)], words, T).raise).toEqual([]);
  const standing = carriedOut([], planAlarms([], [cause('a')], words, T));
  expect(planAlarms(standing, [cause('a', 'warm', T + 9)], words, T).clear).toHaveLength(1);
});

test('planning again after carrying it out gives nothing, whatever came before', () => {
  const open = fc.uniqueArray(
    fc.record({
      id: fc.constantFrom('a', 'b', 'c', 'd'),
      place: fc.constant('x'),
      alarm: fc.constantFrom(null, 'frost', 'door'),
      until: fc.constantFrom(null, T),
    }),
    { selector: ({ id }) => id },
  );
  fc.assert(
    fc.property(fc.array(open), (looks) => {
      let raised: readonly Alarm[] = [];
      for (const look of looks) {
        raised = carriedOut(raised, planAlarms(raised, look, words, T));
        expect(planAlarms(raised, look, words, T)).toEqual({ raise: [], clear: [] });
      }
    }),
  );
});

const standing: Alarm = {
  id: 'move-produce.cool-room.x1',
  place: 'cool-room',
  kind: 'warm',
  since: T,
  words: 'It is warm.',
  clearedAt: null,
};
const sent = async (alarm: Alarm) => {
  const out: [string, string, boolean][] = [];
  await sendAlarm(async (topic, payload, { retain }) => {
    out.push([topic, payload, retain]);
  }, alarm);
  return out;
};

test('what is told has the form of the contract', () => {
  expect(alarmSchema.parse(told(standing))).toEqual(told(standing));
  expect(told({ ...standing, clearedAt: T + 1 }).alarm).toBe('clear');
});

test('a raised alarm is retained on both topics', async () => {
  const payload = JSON.stringify(told(standing));
  expect(await sent(standing)).toEqual([
    ['dewpost/alarm', payload, true],
    [`dewpost/alarm/${standing.id}`, payload, true],
  ]);
});

test('a cleared alarm leaves nothing retained on its own topic', async () => {
  const out = await sent({ ...standing, clearedAt: T + 1 });
  expect(out.at(-1)).toEqual([`dewpost/alarm/${standing.id}`, '', true]);
  expect(JSON.parse(out[0]?.[1] ?? '')).toMatchObject({ alarm: 'clear' });
});
