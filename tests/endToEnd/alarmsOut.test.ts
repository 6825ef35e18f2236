import { describe, expect, test } from 'vitest';
import type { AlarmsNow, ShownAlarm } from '../../hub/contract/index.ts';
import { certificate, deadPort, type Received, startMailServer } from '../hub/alarms/mailServer.ts';
import { gardenFile } from './gardenFile.ts';
import { clockFrom, farmNow, type HubProcess, startHub } from './hubProcess.ts';
import { hasMosquitto, heard, needsMosquitto, startMosquitto } from './mosquitto.ts';
import { openDoor } from './openDoor.ts';
import { tempFolder, until } from './processes.ts';

// A hub as it is installed, a real mail server, and an alarm on its way between them. Each waits on
// its own farm's clock, so they wait together.

const MINUTE = 60_000;
const PATIENCE = 180_000; // ms for a test: machines are noisy
const START = Date.UTC(2026, 4, 12, 10);
const ALWAYS = { from: '00:00', to: '00:00' };
const person = (name: string) => ({
  name,
  email: `${name.toLowerCase()}@example.org`,
  hours: { urgent: ALWAYS, today: ALWAYS },
});
const mail = (port: number) => ({
  ...{ host: 'localhost', port, security: 'starttls', user: null },
  ...{ from: 'hub@garden.example.org', certificate },
});
const to = (received: readonly Received[]) =>
  received.map(
    ({ to: [who = ''], raw }) => `${who} ${/^Subject: (?:=\?UTF-8\?Q\?)?(\w+)/m.exec(raw)?.[1]}`,
  ); // RFC 2047
const now = (hub: HubProcess) => hub.get<AlarmsNow>('/api/alarms');
const door = async (hub: HubProcess): Promise<ShownAlarm> =>
  until(async () => (await now(hub)).alarms.find(({ kind }) => kind === 'door'), 'a door alarm');

test.concurrent(
  'a hub that is killed between the alarm and its message sends it once when it is back',
  async () => {
    const folder = tempFolder();
    const clock = clockFrom(START, 20);
    const given = { data: tempFolder(), farm: gardenFile(folder), open: true, clock };
    const port = await deadPort();
    const first = await startHub(given);
    await first.post('/api/alarms/settings', { people: [person('Ann')], mail: mail(port) });
    await openDoor(first.ports.mqtt, farmNow(clock));
    await door(first);
    // The server is down: the message waits, and the page and the health say why.
    const trouble = await until(
      async () => (await now(first)).troubles[0],
      'a message that does not get through',
    );
    expect(trouble).toMatchObject({ person: 'Ann', channel: 'email' });
    expect(trouble.words).toMatch(/ECONNREFUSED/);
    expect((await first.get<{ alarmsOut: string }>('/api/health')).alarmsOut).toBe('failing');
    await first.kill();

    const server = await startMailServer();
    const second = await startHub(given);
    await second.post('/api/alarms/settings', { mail: mail(server.port) });
    await until(async () => {
      const { alarms, troubles } = await now(second);
      const told = alarms.find(({ kind }) => kind === 'door')?.told ?? [];
      return troubles.length === 0 && told.some(({ state }) => state === 'delivered');
    }, 'a message that was taken');
    expect(to(server.received)).toEqual(['ann@example.org Alarm']);

    // Taken is taken: neither a crash nor another start sends it again.
    await second.kill();
    const third = await startHub(given);
    const before = farmNow(clock);
    await until(() => farmNow(clock) - before > 3 * MINUTE, 'some minutes of the farm');
    await door(third);
    expect(to(server.received)).toEqual(['ann@example.org Alarm']);
    expect((await third.stop()).code).toBe(0);
  },
  PATIENCE,
);

test.concurrent(
  'nobody answers: the next is woken, then the third, until somebody says seen',
  async () => {
    const server = await startMailServer();
    const clock = clockFrom(START, 60);
    const hub = await startHub({
      ...{ data: tempFolder(), farm: gardenFile(tempFolder()), open: true, clock },
    });
    await hub.post('/api/alarms/settings', {
      people: ['Ann', 'Ben', 'Cid', 'Dot'].map(person),
      mail: mail(server.port),
    });
    await openDoor(hub.ports.mqtt, farmNow(clock));
    const alarm = await door(hub);
    await until(() => to(server.received).includes('ben@example.org Alarm'), 'Ben told', 60_000);
    const shown = await door(hub);
    const told = shown.told.filter(({ what }) => what === 'raised');
    expect(told.map(({ person: who }) => who).slice(0, 2)).toEqual(['Ann', 'Ben']);
    const [ann = 0, ben = 0] = told.map(({ madeAt }) => Date.parse(madeAt));
    expect(ben - ann).toBeGreaterThanOrEqual(10 * MINUTE);
    await hub.post(`/api/alarms/${encodeURIComponent(alarm.id)}/seen`, {});
    const seen = await door(hub);
    const mails = server.received.length;
    expect(seen).toMatchObject({ state: 'active-acknowledged', seenBy: 'grower', sounds: false });
    const at = farmNow(clock);
    await until(() => farmNow(clock) - at > 45 * MINUTE, 'three quarters of an hour', 90_000);
    const after = await hub.get<AlarmsNow>('/api/alarms');
    const raised = after.alarms
      .filter(({ id }) => id === alarm.id)
      .flatMap(({ told: all }) => all.filter(({ what }) => what === 'raised'));
    expect(raised.length).toBeLessThanOrEqual(mails);
    expect(to(server.received).filter((one) => one.startsWith('dot')).length).toBe(0);
    expect((await hub.stop()).code).toBe(0);
  },
  PATIENCE,
);

describe.skipIf(!hasMosquitto)(`a siren on a Mosquitto${needsMosquitto}`, () => {
  test.concurrent(
    'sounds while an urgent alarm stands that nobody has seen, also after the hub was killed',
    async () => {
      const folder = tempFolder();
      const broker = await startMosquitto(folder);
      const clock = clockFrom(START, 20);
      const given = {
        ...{ data: tempFolder(), farm: gardenFile(folder), open: true, clock },
        broker: broker.url,
      };
      const hub = await startHub(given);
      const siren = () => heard(broker.port, 'dewpost/siren');
      expect(await until(siren, 'a siren topic')).toBe('off');
      await openDoor(broker.port, farmNow(clock));
      const alarm = await door(hub);
      await until(async () => (await siren()) === 'on', 'a siren that sounds');
      const own = `dewpost/alarm/${alarm.id}`;
      expect(JSON.parse((await heard(broker.port, own)) ?? '{}')).toMatchObject({
        alarm: 'raised',
        kind: 'door',
      });
      await hub.kill();
      // What a siren hears of a hub that died: its last will.
      await until(
        async () => (await heard(broker.port, 'dewpost/heartbeat')) === '{"gone":true}',
        'a last will',
      );
      expect(await siren()).toBe('on');
      const again = await startHub(given);
      const back = await door(again);
      await again.post(`/api/alarms/${encodeURIComponent(back.id)}/seen`, {});
      await until(async () => (await siren()) === 'off', 'a siren that was seen');
      // Seen stops the sound, not the state.
      expect(JSON.parse((await heard(broker.port, own)) ?? '{}').alarm).toBe('raised');
      await again.post(`/api/tasks/${encodeURIComponent(back.id)}/answer`, { answer: 'done' });
      await until(async () => (await heard(broker.port, own)) === undefined, 'an empty topic');
      await again.stop();
      await broker.stop();
    },
    PATIENCE,
  );
});
