import { describe, expect, test } from 'vitest';
import type { Probe, Today } from '../../hub/contract/index.ts';
import { gardenFile } from './gardenFile.ts';
import { clockFrom, dewpost, farmNow, type HubProcess, startHub } from './hubProcess.ts';
import { hasMosquitto, heard, needsMosquitto, publish } from './mosquitto.ts';
import { tempFolder, until } from './processes.ts';
import { seriesOf } from './seriesOf.ts';

const MINUTE = 60_000;
const PATIENCE = 90_000; // ms for a test: machines are noisy
/** A day in May, so that no test hangs on the season it runs in. */
const START = Date.UTC(2026, 4, 12, 10);
const iso = (t: number) => new Date(t).toISOString();

/** Makes a probe's password as a grower does, and reads it from what is printed. */
async function addProbe(data: string, name: string, ...options: string[]): Promise<string> {
  const { code, out, err } = await dewpost('probe', 'add', name, '--data', data, ...options);
  expect(err).toBe('');
  expect(code).toBe(0);
  return /password (\S+)/.exec(out)?.[1] ?? '';
}

const probeOf = async (hub: HubProcess, id: string) =>
  (await hub.get<Probe[]>('/api/probes')).find((probe) => probe.id === id);

describe.skipIf(!hasMosquitto)(`the broker inside and Mosquitto's clients${needsMosquitto}`, () => {
  test(
    'every message form of a probe with a password comes through to Today',
    async () => {
      const folder = tempFolder();
      const farm = gardenFile(folder);
      const passwords = new Map<string, string>();
      for (const name of ['leaf', 'mast', 'bloom', 'shelf'])
        passwords.set(name, await addProbe(folder, name));
      const clock = clockFrom(START, 60);
      const hub = await startHub({ data: folder, farm, clock });
      await hub.signIn({ code: hub.claimCode(), name: 'Una', password: 'long enough' });
      const send = async (user: string, topic: string, message: string) => {
        const access = { user, password: passwords.get(user) };
        const { code, err } = await publish({ port: hub.ports.mqtt, topic, message, ...access });
        expect(err).toBe('');
        expect(code).toBe(0);
      };
      const at = farmNow(clock) - 2 * MINUTE;
      const pack = [
        { bn: 'leaf:', bt: at / 1000, n: 'temperature', u: 'Fah', v: 68 },
        { n: 'humidity', u: '%RH', v: 71 },
      ];
      await send('leaf', 'garden/leaf', JSON.stringify(pack));
      await send('bloom', 'garden/bloom/temperature', '11.25');
      await send(
        'shelf',
        'garden/shelf/temperature',
        JSON.stringify({ v: 280.35, u: 'K', t: iso(at) }),
      );
      const report = { at: iso(at), climate: { celsius: 9.5, rh: 64 } };
      await send('mast', 'shed/mast/state', JSON.stringify(report));

      // 68 °F are 20 °C exactly; the farm file's correction of 0.5 is added.
      const today = await until(async () => {
        const { places } = await hub.get<Today>('/api/today');
        const known = places.filter(({ temperature }) => temperature !== null);
        return known.length === 3 && new Map(known.map((place) => [place.id, place]));
      }, 'three places with a temperature on Today');
      expect(today.get('long-house')?.temperature).toBeCloseTo(20.5, 6);
      expect(today.get('long-house')).toMatchObject({ humidity: 71, readAt: iso(at) });
      expect(today.get('outside')).toMatchObject({
        temperature: 9.5,
        humidity: 64,
        readAt: iso(at),
      });
      expect(today.get('south-patch')?.temperature).toBe(11.25);

      const now = farmNow(clock);
      expect(await seriesOf(hub, 'long-house', 'humidity', now)).toEqual([[at, 71]]);
      expect(await seriesOf(hub, 'outside', 'temperature', now)).toEqual([[at, 9.5]]);
      expect(await seriesOf(hub, 'south-patch', 'temperature', now)).toHaveLength(1);
      // 280.35 K are 7.2 °C. Nobody has placed this one, and it is kept all the same.
      const shelf = await probeOf(hub, 'shelf');
      expect(shelf).toMatchObject({ place: null, refused: [] });
      expect(shelf?.latest).toHaveLength(1);
      expect(shelf?.latest[0]?.value).toBeCloseTo(7.2, 6);
      expect(shelf?.latest[0]?.readAt).toBe(iso(at));
      expect((await probeOf(hub, 'leaf'))?.refused).toEqual([]);
      expect((await hub.stop()).code).toBe(0);
    },
    PATIENCE,
  );

  test(
    'nobody without a password speaks, listens, or speaks for another probe',
    async () => {
      const folder = tempFolder();
      const farm = gardenFile(folder);
      const password = await addProbe(folder, 'leaf');
      const lamp = { user: 'lamp', password: await addProbe(folder, 'lamp', '--listen') };
      const hub = await startHub({ data: folder, farm });
      expect((await hub.ask('/api/today')).status).toBe(401);
      expect(
        (await hub.ask('/api/probes/leaf/place', { place: 'outside', spot: 'air' })).status,
      ).toBe(401);
      await hub.signIn({ code: hub.claimCode(), name: 'Una', password: 'long enough' });
      const { mqtt: port } = hub.ports;
      const topic = 'garden/leaf/temperature';
      const refused = [
        await publish({ port, topic, message: '21' }),
        await publish({ port, topic, message: '22', user: 'leaf', password: 'guessed' }),
        await publish({ port, topic, message: '23', user: 'mast', password }),
      ];
      for (const { code, err } of refused) {
        expect(code).not.toBe(0);
        expect(err).toMatch(/not authori[sz]ed|bad user ?name or password/i);
      }
      expect(await heard(port, 'dewpost/heartbeat')).toBeUndefined();
      const access = { user: 'leaf', password };
      const forAnother = await publish({
        port,
        topic: 'garden/mast/temperature',
        message: '24',
        ...access,
      });
      expect(forAnother.code).not.toBe(0);
      const forTheHub = await publish({ port, topic: 'dewpost/alarm', message: '{}', ...access });
      expect(forTheHub.code).not.toBe(0);

      expect((await publish({ port, topic, message: '20', ...access })).code).toBe(0);
      const probes = await hub.get<Probe[]>('/api/probes');
      expect(probes.find(({ id }) => id === 'leaf')?.latest).toMatchObject([{ value: 20.5 }]);
      expect(probes.find(({ id }) => id === 'mast')?.latest).toEqual([]);
      // A probe reads its own settings and nothing else; a listener hears, and says nothing.
      expect(await heard(port, 'dewpost/probe/leaf', access)).toMatch(/^\{"every":\d+\}$/);
      expect((await heard(port, 'dewpost/heartbeat', access)) || undefined).toBeUndefined();
      expect(await heard(port, 'dewpost/heartbeat', lamp)).toContain('"evaluatedAt"');
      expect(await heard(port, 'dewpost/task', lamp)).toMatch(/^\[/);
      expect((await heard(port, 'dewpost/probe/leaf', lamp)) || undefined).toBeUndefined();
      expect((await publish({ port, topic, message: '25', ...lamp })).code).not.toBe(0);
      await hub.stop();
    },
    PATIENCE,
  );
});

test.for([
  ['--http', '0.0.0.0:0'],
  ['--mqtt', '0.0.0.0:0'],
] as const)(
  'an open hub with %s on every address is refused',
  { timeout: PATIENCE },
  async ([option, address]) => {
    const folder = tempFolder();
    const given = ['--data', folder, '--farm', gardenFile(folder), '--open', option, address];
    const other = option === '--http' ? ['--mqtt', '127.0.0.1:0'] : ['--http', '127.0.0.1:0'];
    const { code, out, err } = await dewpost('start', ...given, ...other);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(/^[^\n]*expected an address of this machine only[^\n]*\n$/i);
    expect(err).toContain(option);
  },
);
