import { get as httpGet, type IncomingMessage } from 'node:http';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, onTestFinished, test } from 'vitest';
import { events, type FarmDescription } from '../../../hub/contract/index.ts';
import { HOUR, servedHub } from '../smallFarm.ts';

const T = Date.UTC(2026, 4, 10, 9);

/** One page that listens on a real socket. HTML standard, section 9.2: fields, blank line ends one. */
async function listening(hub: Awaited<ReturnType<typeof servedHub>>) {
  if (!hub.app.server.listening) await hub.app.listen({ host: '127.0.0.1', port: 0 });
  const { port } = hub.app.server.address() as { port: number };
  const response = await new Promise<IncomingMessage>((resolve, reject) => {
    const request = httpGet({ host: '127.0.0.1', port, path: '/api/events' }, resolve);
    request.on('error', reject);
    onTestFinished(() => {
      request.destroy();
    });
  });
  let text = '';
  response.setEncoding('utf8');
  response.on('data', (part) => {
    text += part;
  });
  response.on('error', () => {});
  const heard = () =>
    text
      .split('\n\n')
      .filter((block) => block.startsWith('event: '))
      .map((block) => {
        const [, name = '', data = ''] = /^event: (\S+)\ndata: (.*)$/.exec(block) ?? [];
        return { name, data: JSON.parse(data) };
      });
  const until = async (name: string) => {
    for (let i = 0; i < 200; i++) {
      const found = heard().find((one) => one.name === name);
      if (found) return found.data;
      await wait(10);
    }
    throw new Error(`Expected an event ${name}, got ${JSON.stringify(heard())}`);
  };
  return { response, heard, until };
}

test('readings, tasks, alarms and looks arrive as they happen, in the form of the contract', async () => {
  const hub = await servedHub({ now: T });
  const { response, until, heard } = await listening(hub);
  expect(response.headers['content-type']).toMatch(/^text\/event-stream/);
  expect(response.headers['cache-control']).toBe('no-store');
  expect(events.pulse.parse(await until('pulse')).speed).toBe(1);

  hub.send('cold', 'temperature', T, 3.5);
  expect(events.reading.parse(await until('reading'))).toEqual({
    place: 'cool-room',
    spot: 'air',
    probe: 'cold',
    quantity: 'temperature',
    t: new Date(T).toISOString(),
    value: 3.5,
  });
  hub.clock.set(T + 3 * HOUR);
  hub.core.look();
  expect(events.task.parse(await until('task')).state).toBe('open');
  expect(events.alarm.parse(await until('alarm'))).toMatchObject({
    alarm: 'raised',
    place: 'cool-room',
    kind: 'probe',
  });
  expect(events.looked.parse(await until('looked'))).toEqual({
    evaluatedAt: new Date(T + 3 * HOUR).toISOString(),
  });
  expect(heard().filter(({ name }) => name === 'alarm')).toHaveLength(1);
});

test('doubtful readings, and those of a probe nobody placed, are not sent to pages', async () => {
  const hub = await servedHub({ now: T });
  const { until, heard } = await listening(hub);
  hub.send('p1', 'temperature', T, 85);
  hub.send('stray', 'temperature', T, 20);
  hub.send('mast', 'temperature', T, 11);
  await until('reading');
  expect(
    heard()
      .filter(({ name }) => name === 'reading')
      .map(({ data }) => data.value),
  ).toEqual([11]);
});

test('every page hears, and one that leaves does not keep the others from it', async () => {
  const hub = await servedHub({ now: T });
  const first = await listening(hub);
  const second = await listening(hub);
  first.response.destroy();
  await wait(50);
  hub.send('mast', 'temperature', T, 11);
  expect((await second.until('reading')).value).toBe(11);
});

test('closing the hub ends the stream', async () => {
  const hub = await servedHub({ now: T });
  const { response } = await listening(hub);
  const ended = new Promise((resolve) => response.on('close', resolve));
  await hub.app.close();
  await ended;
});

test('a probe that hangs nowhere is told of as it speaks, and a farm that was changed', async () => {
  const hub = await servedHub({ now: T });
  const { until } = await listening(hub);
  hub.send('p7', 'temperature', T, 14.2);
  hub.send('p7', 'humidity', T, 81);
  const told = events.probe.parse(await until('probe'));
  expect(told).toMatchObject({ id: 'p7', place: null, spot: null, heardAt: expect.any(String) });
  expect(told.latest.map(({ quantity, value }) => [quantity, value])).toEqual([
    ['humidity', 81],
    ['temperature', 14.2],
  ]);
  const { version, description } = (
    await hub.app.inject({ url: '/api/farm/description' })
  ).json<FarmDescription>();
  const named = { ...(description?.farm as object), name: 'Another (invented)' };
  const payload = { based: version, description: { ...description, farm: named } };
  await hub.app.inject({ method: 'POST', url: '/api/farm', payload });
  events.farm.parse(await until('farm'));
});
