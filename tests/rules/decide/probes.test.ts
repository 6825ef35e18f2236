import { expect, test } from 'vitest';
import { decide, type ProbeNow, taskKey } from '../../../rules/decide/index.ts';
import { HOUR, instant, MINUTE, minutes } from '../../../rules/units.ts';
import { at, coolRoom, probe, snapshot, tunnel } from './makeSnapshot.ts';

const now = at('2025-06-21T09:00');
const ago = (minutesAgo: number) => instant(now - minutesAgo * MINUTE);

function ask(wish: Partial<ProbeNow>, standing: string[] = []) {
  const places = [tunnel(), coolRoom()];
  const probes = [probe(now, wish)];
  return decide(snapshot(now, { places, probes, standing })).decisions.find(
    ({ kind }) => kind === 'see-to-probe',
  );
}

test.for([
  [5, 20, 'leave'],
  [5, 21, 'act'],
  [1, 19, 'leave'], // three missed minutes are nothing: at least 20 minutes
  [15, 45, 'leave'],
  [15, 46, 'act'],
] as const)('a probe of every %d minutes, heard %d minutes ago: %s', ([every, heard, verdict]) => {
  expect(ask({ every: minutes(every), heardAt: ago(heard) })?.verdict).toBe(verdict);
});

test('the task names the probe as its subject and the place it hangs in', () => {
  expect(ask({ heardAt: ago(60) })).toMatchObject({
    place: 'long-house',
    subject: 'p1',
    alarm: null,
  });
});

test('a probe that never spoke is missed from the moment it was placed', () => {
  expect(ask({ heardAt: null, placedAt: ago(5) })?.verdict).toBe('leave');
  expect(ask({ heardAt: null, placedAt: ago(500) })?.verdict).toBe('act');
  expect(ask({ heardAt: null, placedAt: null })?.verdict).toBe('unknown');
});

test('nobody misses a probe that nobody placed', () => {
  expect(ask({ place: null, spot: null, heardAt: ago(500) })).toBeUndefined();
});

test('a cool-room probe that is silent or stuck wakes somebody; its battery does not', () => {
  const place = 'cool-room';
  expect(ask({ place, heardAt: ago(30) })).toMatchObject({ verdict: 'act', alarm: 'probe' });
  const stuck = [{ quantity: 'temperature' as const, since: instant(now - 2 * HOUR) }];
  expect(ask({ place, stuck })).toMatchObject({ verdict: 'act', alarm: 'probe' });
  const battery = { value: 12, unit: '%' as const, t: ago(10) };
  expect(ask({ place, battery })).toMatchObject({ verdict: 'act', alarm: null });
});

test('a stuck probe is to be seen to although it speaks', () => {
  const stuck = [{ quantity: 'temperature' as const, since: instant(now - 7 * HOUR) }];
  expect(ask({ stuck })?.because[0]).toMatchObject({ what: 'stuck-hours', value: 7, unit: 'h' });
});

test('a low battery is asked about until it is clearly not low', () => {
  const standing = [taskKey({ kind: 'see-to-probe', place: 'long-house', subject: 'p1' })];
  const asked = (value: number, unit: '%' | 'V', keys: string[] = []) =>
    ask({ battery: { value, unit, t: ago(10) } }, keys)?.verdict;
  expect([
    asked(19, '%'),
    asked(20, '%'),
    asked(22, '%', standing),
    asked(26, '%', standing),
  ]).toEqual(['act', 'leave', 'act', 'leave']);
  expect([asked(2.3, 'V'), asked(2.45, 'V'), asked(2.45, 'V', standing), asked(3, 'V')]).toEqual([
    'act',
    'leave',
    'act',
    'leave',
  ]);
});

test('one doubtful reading is weather, one in ten is the probe', () => {
  expect(ask({ doubtful: 5 })?.verdict).toBe('leave');
  expect(ask({ doubtful: 29 })?.verdict).toBe('act'); // 288 readings a day
});
