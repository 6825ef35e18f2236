import { expect, test } from 'vitest';
import { MOST_STRANGERS } from '../../../hub/main/keeping/strangers.ts';
import { HOUR, smallHub } from '../smallFarm.ts';

const T = Date.UTC(2026, 4, 10, 9);

const sender =
  (hub: ReturnType<typeof smallHub>) => (probe: string, quantity: string, v: string) => {
    const topic = `garden/${probe}/${quantity}`;
    hub.core.receive({ topic, payload: Buffer.from(v), again: false, from: null }, () => {});
    hub.core.flush();
  };

test('names that somebody invents are taken to a bound, and those the hub knows always', () => {
  const hub = smallHub({ now: T });
  const send = sender(hub);
  for (let i = 0; i < MOST_STRANGERS + 50; i++) send(`made-up-${i}`, 'temperature', '20');
  expect(hub.store.probes.all()).toHaveLength(3 + MOST_STRANGERS);
  const refused = hub.store.refusals.since(T);
  expect(refused).toHaveLength(50);
  expect(refused[0]).toMatchObject({
    reason: 'too-many-probes',
    last: expect.stringMatching(/^Expected a probe of the farm file, got made-up-2\d\d$/),
  });
  send('p1', 'temperature', '20');
  send('made-up-0', 'humidity', '70');
  expect(hub.store.readings.newest('p1', 'temperature')?.value).toBe(20);
  expect(hub.store.readings.newest('made-up-0', 'humidity')?.value).toBe(70);
  // One that is given a password meanwhile is let in with its next reading.
  hub.store.probes.setPassword('made-up-249', 300_000, 'scrypt$x$y');
  send('made-up-249', 'temperature', '21');
  expect(hub.store.readings.newest('made-up-249', 'temperature')?.value).toBe(21);
});

test('refusals under invented names fill so many rows an hour, and every one is counted', () => {
  const hub = smallHub({ now: T });
  const send = sender(hub);
  for (let i = 0; i < 1000; i++) send(`odd-${i}`, 'temperature', 'warm');
  for (let i = 0; i < 1000; i++)
    hub.core.refuse(`10.0.${i % 250}.1`, 'bad-packet', 'Expected x, got y');
  hub.core.flush();
  const rows = hub.store.refusals.since(T);
  expect(rows.length).toBeLessThanOrEqual(302);
  expect(rows.reduce((sum, { count }) => sum + count, 0)).toBe(2000);
  expect(rows.find(({ source }) => source === '(others)')?.count).toBeGreaterThan(600);
  // A probe that has sent readings is told by its name, however many others there are.
  send('p1', 'temperature', '20');
  send('p1', 'temperature', 'warm');
  expect(hub.store.refusals.since(T).some(({ source }) => source === 'p1')).toBe(true);
  // The next hour has room again; a month later it is forgotten.
  hub.clock.set(T + HOUR);
  send('odd-999', 'temperature', 'warm');
  expect(hub.store.refusals.since(T + HOUR)).toMatchObject([{ source: 'odd-999', count: 1 }]);
  hub.core.snapshots.fold(true); // as every six hours
  hub.clock.set(T + 40 * 24 * HOUR);
  send('odd-1', 'temperature', 'warm');
  expect(hub.store.refusals.since(0)).toHaveLength(1);
});
