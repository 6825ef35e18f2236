import { describe, expect, test } from 'vitest';
import type { NightForecast, RefusedMessages } from '../../hub/contract/index.ts';
import { gardenFile } from './gardenFile.ts';
import { clockFrom, farmNow, startHub } from './hubProcess.ts';
import { hasMosquitto, needsMosquitto, publish } from './mosquitto.ts';
import { tempFolder, until } from './processes.ts';

// A day in November at noon, so that the night ahead is one of frost.
const START = Date.UTC(2026, 10, 12, 12);
const HOUR = 3600; // s, as SenML counts

describe.skipIf(!hasMosquitto)(`a forecast pushed over MQTT${needsMosquitto}`, () => {
  test('stands beside the hub’s own with its record, and has no say yet', {
    timeout: 90_000,
  }, async () => {
    const folder = tempFolder();
    const clock = clockFrom(START, 1);
    const hub = await startHub({ data: folder, farm: gardenFile(folder), open: true, clock });
    const send = async (topic: string, body: unknown) => {
      const message = JSON.stringify(body);
      const { code } = await publish({ port: hub.ports.mqtt, topic, message });
      expect(code).toBe(0);
    };
    const pack = Array.from({ length: 30 }, (_, i) => ({
      ...(i === 0 ? { bn: 'met:', bu: 'Cel' } : {}),
      ...{ n: 'temperature', t: (i + 1) * HOUR, v: i === 14 ? -3 : 2 },
    }));
    await send('garden/forecast/temperature', pack);
    await send('garden/forecast/temperature', [{ n: 'temperature', t: -48 * HOUR, v: 1 }]);
    await send('garden/mast/temperature', { v: 8, t: farmNow(clock) });
    const forecast = await until(async () => {
      const tonight = await hub.get<NightForecast[]>('/api/frost/tonight');
      return tonight.find(({ sources = [] }) => sources.length > 0);
    }, 'a forecast that tells of its sources');
    expect(forecast.sources).toMatchObject([{ source: 'met', said: -3, nights: 0, weight: 0 }]);
    const refused = await hub.get<RefusedMessages[]>('/api/refused');
    expect(refused.find(({ source }) => source.startsWith('garden/forecast'))).toMatchObject({
      reason: 'bad-time',
      count: 1,
    });
    await hub.kill();
  });
});
