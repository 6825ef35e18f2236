import { onTestFinished, test } from 'vitest';
import { importFarm } from '../../../hub/main/farm/farmKept.ts';
import { startHub } from '../../../hub/main/start.ts';
import { openStore } from '../../../hub/store/index.ts';
import { connected, eventually } from '../broker/connected.ts';
import { otherBroker } from '../broker/otherBroker.ts';
import { farmText, HOUR } from '../smallFarm.ts';
import { tempFolder } from '../tempStore.ts';

const alarm = (id: string, clearedAt: number | null) => ({
  id,
  place: 'cool-room',
  kind: 'warm',
  since: Date.now() - 2 * HOUR,
  words: 'It is warm.',
  clearedAt,
});

async function hubOn(url: string, alarms: readonly ReturnType<typeof alarm>[] = []) {
  const data = tempFolder();
  const store = openStore(`${data}/dewpost.db`);
  importFarm(store, farmText(), Date.now() - 24 * HOUR);
  for (const one of alarms) store.alarms.put(one);
  store.close();
  process.env.DEWPOST_LOG = 'silent';
  const anywhere = { host: '127.0.0.1', port: 0 };
  const hub = await startHub({ data, broker: url, open: true, http: anywhere, mqtt: anywhere });
  onTestFinished(() => hub.close());
  const rows = (quantity: string) => {
    const read = openStore(`${data}/dewpost.db`);
    const found = read.readings.allBetween('p1', quantity, 0, Number.MAX_SAFE_INTEGER);
    read.close();
    return found;
  };
  return { ...hub, rows };
}

test('an acknowledged reading of the other broker is in the store', async () => {
  const { url } = await otherBroker();
  const hub = await hubOn(url);
  const probe = await connected(url);
  await probe.publishAsync('garden/p1/temperature', '20', { qos: 1 });
  await probe.publishAsync('weather/p1/state', '{"air":{"rh":70}}', { qos: 1 });
  await eventually(
    'both readings',
    () => hub.rows('temperature').length + hub.rows('humidity').length === 2,
  );
});

test('an alarm that ended while the broker was away does not stay raised on it', async () => {
  const { url } = await otherBroker();
  const before = await connected(url);
  const topic = 'dewpost/alarm/move-produce.cool-room.x1';
  await before.publishAsync(topic, '{"alarm":"raised"}', { qos: 1, retain: true });
  await hubOn(url, [alarm('move-produce.cool-room.x1', Date.now() - HOUR)]);
  const heartbeat = await connected(url);
  const heard = new Map<string, string>();
  heartbeat.on('message', (on, payload) => heard.set(on, payload.toString()));
  await heartbeat.subscribeAsync('dewpost/#', { qos: 1 });
  await eventually('a heartbeat', () => heard.has('dewpost/heartbeat'));
  await eventually('a word on the alarm', () => heard.has('dewpost/task'));
  await eventually('the end of the alarm', () => (heard.get(topic) ?? '') === '');
});
