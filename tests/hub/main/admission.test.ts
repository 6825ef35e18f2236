import { expect, test } from 'vitest';
import type { Mapping } from '../../../hub/contract/index.ts';
import { admission, listenerSecret } from '../../../hub/main/broker/admission.ts';
import { tempStore } from '../tempStore.ts';

const fields: Mapping['fields'] = [{ quantity: 'temperature', pointer: '/t' }];
const mappings: Mapping[] = [
  { topic: 'shed/+probe/state', fields },
  { topic: 'radio/out', probe: '/device', fields },
  { topic: 'gate/+probe/up', sender: 'gateway', fields },
];

function rights(open = false) {
  const { store } = tempStore();
  for (const probe of ['p1', 'p2', 'gateway', 'forecast']) store.probes.setPassword(probe, 1, 'x');
  store.people.putSecret(listenerSecret('lamp'), 'x');
  return admission(store, open, () => mappings);
}

test.for([
  ['p1', 'garden/p1', true],
  ['p1', 'garden/p1/temperature', true],
  ['p1', 'garden/p1/temperature/more', true],
  ['p1', 'garden/p2/temperature', false],
  ['p1', 'garden/p11', false],
  ['p1', 'garden', false],
  ['p1', 'garden/', false],
  ['p1', 'garden//p1', false],
  ['p1', 'Garden/p1', false],
  ['p1', 'shed/p1/state', true],
  ['p1', 'shed/p2/state', false],
  ['p1', 'shed/p1/state/more', false],
  ['p1', 'radio/out', true],
  ['p1', 'gate/p1/up', false],
  ['gateway', 'gate/p1/up', true],
  ['gateway', 'garden/p1/temperature', false],
  ['p1', 'dewpost/probe/p1', false],
  ['p1', 'elsewhere', false],
  ['lamp', 'garden/lamp/temperature', false],
  ['lamp', 'radio/out', false],
  [null, 'garden/p1/temperature', false],
] as const)('%s publishing on %s: %s', ([user, topic, may]) => {
  expect(rights().mayPublish(user, topic)).toBe(may);
});

test.for([
  ['p1', 'dewpost/probe/p1', true],
  ['p1', 'dewpost/probe/p1/#', true],
  ['p1', 'dewpost/probe/p1/+', true],
  ['p1', 'dewpost/probe/p2', false],
  ['p1', 'dewpost/probe/+', false],
  ['p1', 'dewpost/probe/#', false],
  ['p1', 'dewpost/probe/p11', false],
  ['p1', 'garden/p1/#', false],
  ['p1', 'dewpost/task', false],
  ['p1', 'dewpost/heartbeat', false],
  ['p1', '#', false],
  ['p1', '+/+', false],
  ['lamp', 'dewpost/alarm', true],
  ['lamp', 'dewpost/alarm/#', true],
  ['lamp', 'dewpost/alarm/+', true],
  ['lamp', 'dewpost/heartbeat', true],
  ['lamp', 'dewpost/task', true],
  ['lamp', 'dewpost/#', false],
  ['lamp', 'dewpost/+', false],
  ['lamp', 'dewpost/alarms', false],
  ['lamp', 'dewpost/probe/lamp', false],
  ['lamp', 'garden/#', false],
  ['lamp', '#', false],
  [null, 'dewpost/task', false],
] as const)('%s reading %s: %s', ([user, filter, may]) => {
  expect(rights().maySubscribe(user, filter)).toBe(may);
});

test('on an open hub anybody says and hears what the broker lets through', () => {
  const { mayPublish, maySubscribe } = rights(true);
  expect([mayPublish(null, 'anything'), maySubscribe(null, '#')]).toEqual([true, true]);
});
