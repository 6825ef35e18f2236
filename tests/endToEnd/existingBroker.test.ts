import { describe, expect, test } from 'vitest';
import type { RefusedMessages, Task, Today } from '../../hub/contract/index.ts';
import { gardenFile } from './gardenFile.ts';
import { clockFrom, farmNow, startHub } from './hubProcess.ts';
import { hasMosquitto, heard, needsMosquitto, publish, startMosquitto } from './mosquitto.ts';
import { tempFolder, until } from './processes.ts';
import { seriesOf } from './seriesOf.ts';

const MINUTE = 60_000;
const PATIENCE = 90_000; // ms for a test: machines are noisy
/** A day in May, so that no test hangs on the season it runs in. */
const START = Date.UTC(2026, 4, 12, 10);
const iso = (t: number) => new Date(t).toISOString();

describe.skipIf(!hasMosquitto)(`a Mosquitto that is there already${needsMosquitto}`, () => {
  test(
    'readings come through it, and nothing of what it holds for a hub that is down is lost',
    async () => {
      const folder = tempFolder();
      const broker = await startMosquitto(folder);
      const data = tempFolder();
      const clock = clockFrom(START, 60);
      const given = { data, farm: gardenFile(folder), open: true, broker: broker.url, clock };
      const first = await startHub(given);
      const send = async (topic: string, message: unknown) =>
        expect(
          (await publish({ port: broker.port, topic, message: JSON.stringify(message) })).code,
        ).toBe(0);
      const begun = farmNow(clock);
      const [a, b, c, d] = [-90, -60, -30, -4].map((minutes) => begun + minutes * MINUTE) as [
        number,
        number,
        number,
        number,
      ];
      await send('garden/bloom/temperature', { v: 9, t: iso(a) });
      await send('garden/leaf', [{ n: 'leaf:temperature', v: 19, t: b / 1000 }]);
      await send('garden/bloom/humidity', 66);
      await send('shed/mast/state', { at: b, climate: { celsius: 8.5, rh: 60 } });
      await until(async () => {
        const { places } = await first.get<Today>('/api/today');
        return places.filter(({ temperature }) => temperature !== null).length === 3;
      }, 'three places with a temperature on Today');

      await first.kill();
      expect(await until(() => heard(broker.port, 'dewpost/heartbeat'), 'a last will')).toBe(
        '{"gone":true}',
      );
      await send('garden/bloom/temperature', { v: 9.5, t: iso(c) });
      await broker.stop();
      await broker.start();
      await send('garden/bloom/temperature', { v: 10, t: iso(d) });

      const second = await startHub(given);
      const kept = await until(async () => {
        const points = await seriesOf(second, 'south-patch', 'temperature', farmNow(clock));
        return points.length >= 3 && points;
      }, 'what was sent while the hub was down');
      expect(kept).toEqual([
        [a, 9],
        [c, 9.5],
        [d, 10],
      ]);
      expect((await second.stop()).code).toBe(0);
      expect(await heard(broker.port, 'dewpost/heartbeat')).toBe('{"gone":true}');
      await broker.stop();
    },
    PATIENCE,
  );

  test(
    'tasks, alarms and the heartbeat stand retained for who listens later',
    async () => {
      const folder = tempFolder();
      const broker = await startMosquitto(folder);
      const clock = clockFrom(START, 60);
      const hub = await startHub({
        data: tempFolder(),
        farm: gardenFile(folder),
        open: true,
        broker: broker.url,
        clock,
      });
      const beat = async () => JSON.parse((await heard(broker.port, 'dewpost/heartbeat')) ?? '{}');
      const early = await beat();
      expect(Date.parse(early.t)).toBeGreaterThanOrEqual(START);
      // An open door: its contact says so for a quarter of an hour, and the room is warm.
      const now = farmNow(clock);
      const warm = [30, 25, 20, 15, 10, 5, 1].map((ago, i) => ({
        n: 'cold:temperature',
        v: 3 + 0.5 * i,
        t: now / 1000 - ago * 60,
      }));
      const door = [30, 20, 15, 10, 5, 1].map((ago) => ({
        n: 'unit:door',
        vb: ago <= 15,
        t: now / 1000 - ago * 60,
      }));
      for (const [probe, pack] of [
        ['cold', warm],
        ['unit', door],
      ] as const) {
        const sent = await publish({
          port: broker.port,
          topic: `garden/${probe}`,
          message: JSON.stringify(pack),
        });
        expect(sent.code).toBe(0);
      }
      const task = await until(async () => {
        const tasks: Task[] = JSON.parse((await heard(broker.port, 'dewpost/task')) ?? '[]');
        return tasks.find(({ kind }) => kind === 'shut-door');
      }, 'a task to shut the door');
      expect(task).toMatchObject({ place: 'cool-room', state: 'open', alarm: true });
      const alarm = JSON.parse((await heard(broker.port, `dewpost/alarm/${task.id}`)) ?? '{}');
      expect(alarm).toMatchObject({
        alarm: 'raised',
        id: task.id,
        place: 'cool-room',
        kind: 'door',
      });
      expect(alarm.words).toContain('door');
      expect(JSON.parse((await heard(broker.port, 'dewpost/alarm')) ?? '{}').alarm).toBe('raised');
      const late = await until(async () => {
        const said = await beat();
        return Date.parse(said.t) > Date.parse(early.t) && said;
      }, 'another heartbeat');
      expect(late.evaluatedAt).not.toBeNull();

      // Said to be done: the alarm is cleared, and no lamp that starts tomorrow finds it standing.
      await hub.post(`/api/tasks/${task.id}/answer`, { answer: 'done' });
      await until(
        async () => (await heard(broker.port, `dewpost/alarm/${task.id}`)) === undefined,
        'an alarm that is gone',
      );
      const cleared = await until(async () => {
        const said = JSON.parse((await heard(broker.port, 'dewpost/alarm')) ?? '{}');
        return said.alarm === 'clear' && said;
      }, 'an alarm that is clear');
      expect(cleared.id).toBe(task.id);
      const refused = await hub.get<RefusedMessages[]>('/api/refused');
      expect(refused).toEqual([]);
      await hub.stop();
      await broker.stop();
    },
    PATIENCE,
  );
});
