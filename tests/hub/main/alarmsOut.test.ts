import { createServer } from 'node:http';
import { expect, onTestFinished, test } from 'vitest';
import type { KeptSettings } from '../../../hub/alarms/index.ts';
import { usualSettings } from '../../../hub/alarms/index.ts';
import { mailTo, startMailServer } from '../alarms/mailServer.ts';
import { HOUR, MINUTE, type SmallHub, smallHub } from '../smallFarm.ts';
import { tempStore } from '../tempStore.ts';

const T = Date.UTC(2026, 4, 10, 8); // a Sunday, 09:00 in Dublin
const PATIENCE = { timeout: 30_000 };
const ALL_DAY = { from: 0, to: 0 };
const ann = {
  ...{ id: 'ann', name: 'Ann', email: 'ann@example.org', webhook: null },
  hours: { urgent: ALL_DAY, today: ALL_DAY },
};
const settings = (port: number, more: Partial<KeptSettings> = {}): KeptSettings => {
  const { password: _, ...mail } = mailTo(port);
  return {
    ...usualSettings,
    ...{ people: [ann], ranks: { probe: 'urgent' }, mail, alive: null },
    address: 'http://192.168.1.20:8470/',
    ...more,
  };
};
/** The cool room's only probe falls silent: an alarm. */
function silence(hub: SmallHub) {
  hub.send('cold', 'temperature', T, 3);
  hub.clock.set(T + HOUR);
  hub.core.look();
}
const states = ({ store }: SmallHub) =>
  store.alarmsOut.messages(0).map(({ what, state, tries }) => [what, state, tries]);

test('a mail server that puts senders off is tried again, and then takes it once', async () => {
  let offered = 0;
  const server = await startMailServer({
    onRcptTo: (_address, _session, callback) =>
      ++offered < 3
        ? callback(Object.assign(new Error('Greylisted'), { responseCode: 450 }))
        : callback(),
  });
  const hub = smallHub({ now: T });
  hub.core.alarms.change(settings(server.port), {}, 'Ann');
  silence(hub);
  hub.core.alarms.work();
  await expect.poll(() => states(hub), PATIENCE).toEqual([['raised', 'waiting', 1]]);
  await expect.poll(() => hub.core.alarms.troubles().length, PATIENCE).toBe(1);
  expect(hub.core.alarms.troubles()).toMatchObject([
    { person: 'Ann', channel: 'email', words: expect.stringContaining('Greylisted') },
  ]);
  hub.core.alarms.work(); // not before its time
  expect(offered).toBe(1);
  hub.clock.set(T + HOUR + 30_000);
  hub.core.alarms.work();
  await expect.poll(() => offered, PATIENCE).toBe(2);
  await expect.poll(() => hub.store.alarmsOut.due(T + 2 * HOUR)[0]?.tries, PATIENCE).toBe(2);
  await expect.poll(() => hub.store.alarmsOut.due(T + HOUR + 30_000), PATIENCE).toEqual([]);
  hub.clock.set(T + HOUR + 2 * MINUTE);
  hub.core.alarms.work();
  await expect.poll(() => states(hub), PATIENCE).toEqual([['raised', 'delivered', 3]]);
  hub.clock.set(T + 2 * HOUR);
  hub.core.alarms.work();
  expect(hub.core.alarms.troubles()).toEqual([]);
  expect(server.received).toHaveLength(1);
  const { raw = '' } = server.received[0] ?? {};
  expect(raw).toContain('http://192.168.1.20:8470/alarms');
  expect(raw).toContain('Do it by');
  expect(raw).toContain('Test Garden (invented)');
});

test('what was not sent before the hub ended is sent after it starts, and only then', async () => {
  const server = await startMailServer();
  const given = tempStore();
  const first = smallHub({ now: T, store: given });
  first.core.alarms.change(settings(1), {}, 'Ann'); // nobody listens on port 1
  silence(first);
  first.core.alarms.work();
  await expect.poll(() => states(first), PATIENCE).toEqual([['raised', 'waiting', 1]]);
  await expect.poll(() => first.store.alarmsOut.due(T + HOUR), PATIENCE).toEqual([]);
  const second = smallHub({ now: T + HOUR, store: { ...given, store: given.again() } });
  second.core.look();
  second.core.alarms.change(settings(server.port), {}, 'Ann');
  second.core.alarms.begin();
  second.core.alarms.work();
  await expect.poll(() => states(second), PATIENCE).toEqual([['raised', 'delivered', 2]]);
  const third = smallHub({ now: T + HOUR, store: { ...given, store: given.again() } });
  third.core.look();
  third.core.alarms.begin();
  third.core.alarms.work();
  expect(states(third)).toEqual([['raised', 'delivered', 2]]);
  expect(server.received).toHaveLength(1);
});

test('what somebody saw meanwhile is not sent any more', async () => {
  const server = await startMailServer();
  const hub = smallHub({ now: T });
  hub.core.alarms.change(settings(1), {}, 'Ann');
  silence(hub);
  hub.core.alarms.work();
  await expect.poll(() => hub.store.alarmsOut.due(T + HOUR), PATIENCE).toEqual([]);
  const id = hub.core.alarms.now().events[0]?.head.id ?? '';
  expect(hub.core.alarms.see(id, null, 'Ben')).toBe(true);
  hub.core.alarms.change(settings(server.port), {}, 'Ann');
  expect(states(hub)).toEqual([['raised', 'dropped', 1]]);
  expect(server.received).toEqual([]);
  expect(hub.core.alarms.sounds()).toBe(false);
});

test('an end while the message waited is told as an end', async () => {
  const server = await startMailServer();
  const hub = smallHub({ now: T });
  hub.core.alarms.change(settings(1), {}, 'Ann');
  silence(hub);
  hub.core.alarms.work();
  await expect.poll(() => hub.store.alarmsOut.due(T + HOUR), PATIENCE).toEqual([]);
  for (let t = T + HOUR; t <= T + 3 * HOUR; t += 5 * MINUTE) {
    hub.clock.set(t);
    hub.send('cold', 'temperature', t, 3 + (t % 7) / 20);
    hub.core.look();
  }
  expect(hub.store.alarms.raised()).toEqual([]);
  hub.core.alarms.change(settings(server.port), {}, 'Ann');
  await expect.poll(() => server.received.length, PATIENCE).toBe(1);
  expect(server.received[0]?.raw).toMatch(/^Subject: Over: /m);
  await expect.poll(() => states(hub), PATIENCE).toEqual([['raised', 'delivered', 2]]);
  hub.clock.set(T + 4 * HOUR);
  hub.core.alarms.work();
  expect(states(hub)).toHaveLength(1);
});

test('the weekly test goes out once, and its answer is logged', async () => {
  const server = await startMailServer();
  const hub = smallHub({ now: T + 59 * MINUTE });
  hub.core.alarms.change(
    settings(server.port, { weeklyTest: { weekday: 0, at: 10 * 60 } }),
    {},
    'Ann',
  );
  expect(states(hub)).toEqual([]);
  hub.clock.set(T + HOUR); // Sunday, 10:00
  hub.core.alarms.work();
  hub.clock.set(T + HOUR + 5 * MINUTE);
  hub.core.alarms.work();
  await expect.poll(() => states(hub), PATIENCE).toEqual([['test', 'delivered', 1]]);
  expect(server.received[0]?.raw).toMatch(/^Subject: Test of the alarm/m);
  const [made] = hub.store.alarmsOut.tests(0);
  expect(hub.core.alarms.see(made?.id ?? '', null, 'Ben')).toBe(true);
  expect(hub.store.alarmsOut.tests(0)).toMatchObject([
    { madeBy: 'hub', seenBy: 'Ben', seenAt: T + HOUR + 5 * MINUTE },
  ]);
});

test('something outside is told that the hub lives, and not while it cannot look', async () => {
  const bodies: { schema: string; t: string }[] = [];
  const listener = createServer((request, reply) => {
    let body = '';
    request.setEncoding('utf8').on('data', (text: string) => {
      body += text;
    });
    request.on('end', () => {
      bodies.push(JSON.parse(body));
      reply.end();
    });
  });
  await new Promise<void>((resolve) => listener.listen(0, '127.0.0.1', resolve));
  onTestFinished(() => {
    listener.closeAllConnections();
    listener.close();
  });
  const address = listener.address();
  const url = `http://127.0.0.1:${typeof address === 'object' && address ? address.port : 0}/`;
  const hub = smallHub({ now: T });
  hub.core.alarms.change(settings(1, { alive: { url, everyMinutes: 15 } }), {}, 'Ann');
  expect(bodies).toEqual([]); // it has not looked yet
  hub.core.look();
  hub.core.alarms.work();
  await expect.poll(() => bodies.length, PATIENCE).toBe(1);
  hub.clock.set(T + 14 * MINUTE);
  hub.core.look();
  hub.core.alarms.work();
  hub.clock.set(T + 15 * MINUTE);
  hub.core.alarms.work();
  await expect.poll(() => bodies.length, PATIENCE).toBe(2);
  expect(bodies.map(({ schema, t }) => [schema, Date.parse(t)])).toEqual([
    ['dewpost-alive/1', T],
    ['dewpost-alive/1', T + 15 * MINUTE],
  ]);
  hub.clock.set(T + HOUR); // no look since: it keeps quiet, as one that is gone
  hub.core.alarms.work();
  expect(bodies).toHaveLength(2);
});

test('the result of a test by hand is the other side’s own words', async () => {
  const server = await startMailServer({
    onRcptTo: (_address, _session, callback) =>
      callback(Object.assign(new Error('No such mailbox'), { responseCode: 550 })),
  });
  const hub = smallHub({ now: T });
  hub.core.alarms.change(settings(server.port), {}, 'Ann');
  expect(await hub.core.alarms.test('ann', 'email', 'Ann')).toEqual({
    outcome: 'refused',
    words: expect.stringContaining('550 No such mailbox'),
  });
  expect(await hub.core.alarms.test('ann', 'webhook', 'Ann')).toBeUndefined();
  expect(await hub.core.alarms.test('nobody', 'email', 'Ann')).toBeUndefined();
});
