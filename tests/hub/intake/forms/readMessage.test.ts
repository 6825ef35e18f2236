import fc from 'fast-check';
import { expect, test } from 'vitest';
import { quantities } from '../../../../hub/contract/index.ts';
import { readMessage } from '../../../../hub/intake/forms/index.ts';
import { message, RECEIVED, read, refusalOf } from '../message.ts';

test.for([
  ['garden/p1/temperature', '21.5', 'temperature', 21.5, null],
  ['garden/p1/temperature', ' -3 ', 'temperature', -3, null],
  ['garden/p1/temperature', '2.15e1', 'temperature', 21.5, null],
  ['garden/p1/humidity', '{"v":80}', 'humidity', 80, null],
  ['garden/p1/humidity', '{"v":80,"t":1778403540}', 'humidity', 80, 1_778_403_540_000],
  ['garden/p1/humidity', '{"v":80,"t":1778403540123}', 'humidity', 80, 1_778_403_540_123],
  [
    'garden/p1/humidity',
    '{"v":80,"t":"2026-05-10T09:59:00+01:00"}',
    'humidity',
    80,
    1_778_403_540_000,
  ],
  ['garden/p1/temperature', '{"v":68,"u":"Fah"}', 'temperature', 20, null],
  ['garden/p1/door', 'true', 'door', 1, null],
  ['garden/p1/door', 'false', 'door', 0, null],
] as const)('%s with %s is %s %d', ([topic, payload, quantity, value, t]) => {
  expect(read(topic, payload)).toEqual({
    readings: [{ probe: 'p1', quantity, value, t }],
    refused: [],
  });
});

test.for([
  ['garden/p1/temperature', '', 'not-json'],
  ['garden/p1/temperature', 'NaN', 'not-json'],
  ['garden/p1/temperature', '21,5', 'not-json'],
  ['garden/p1/temperature', '{"v":', 'not-json'],
  ['garden/p1/temperature', Buffer.from([0xff, 0xfe, 0x80]), 'not-json'],
  ['garden/p1/temperature', '1e999', 'not-a-number'],
  ['garden/p1/temperature', '"21.5"', 'not-a-number'],
  ['garden/p1/temperature', 'null', 'not-a-number'],
  ['garden/p1/temperature', '[21.5]', 'not-a-number'],
  ['garden/p1/temperature', '{"value":21.5}', 'missing-field'],
  ['garden/p1/temperature', '{"__proto__":{"v":21.5}}', 'missing-field'],
  ['garden/p1/temperature', '{"v":{"v":1}}', 'not-a-number'],
  ['garden/p1/temperature', '{"v":1,"t":"noon"}', 'bad-time'],
  ['garden/p1/temperature', '{"v":1,"t":1e999}', 'bad-time'],
  ['garden/p1/temperature', '{"v":1,"u":"lx"}', 'unknown-unit'],
  ['garden/p1/temperature', '{"v":1,"u":"toString"}', 'unknown-unit'],
  ['garden/p1/temperature', '{"v":1,"u":7}', 'unknown-unit'],
  ['garden/p1/temperature', 'true', 'not-a-number'],
  ['garden/p1/rain', '{"v":1e308,"u":"m"}', 'not-a-number'],
  ['garden/p1/pressure', '1', 'unknown-quantity'],
  ['garden/p1/temperature/extra', '1', 'unknown-quantity'],
  ['garden/__proto__/temperature', '1', 'bad-name'],
  ['garden/-p/temperature', '1', 'bad-name'],
  ['garden', '1', 'bad-name'],
  ['garden/', '1', 'bad-name'],
  [`garden/${'p'.repeat(129)}/temperature`, '1', 'bad-name'],
  ['garden/forecast/temperature', '[]', 'missing-field'],
  ['garden/forecast/temperature', '21', 'unknown-form'],
  ['garden/forecast/pressure', '[]', 'unknown-quantity'],
  ['garden/forecast/temperature/low', '[]', 'unknown-quantity'],
  ['elsewhere', '1', 'unknown-form'],
] as const)('%s with %s is counted as %s', ([topic, payload, reason]) => {
  const got = refusalOf(topic, payload);
  expect([got.readings, got.reason]).toEqual([0, reason]);
  expect(got.sentence).toMatch(/^Expected .*(, got |not read)/);
  expect(got.sentence?.length).toBeLessThan(400);
  expect(got.source?.length).toBeLessThanOrEqual(128);
});

test('a message too long to read is refused by its length', () => {
  expect(refusalOf('garden/p1/temperature', `"${'x'.repeat(300_000)}"`)).toMatchObject({
    reason: 'too-long',
    sentence: 'Expected at most 262144 bytes, got 300002',
  });
});

test('a hundred thousand brackets are refused in a sentence about the message', () => {
  const brackets = `${'['.repeat(100_000)}${']'.repeat(100_000)}`;
  for (const topic of ['garden/p1', 'garden/p1/temperature'])
    expect(refusalOf(topic, brackets).sentence).toMatch(/^Expected .*, got /);
});

test('a wet leaf told as true means the same in every form', () => {
  const single = read('garden/p1/leaf-wetness', 'true').readings[0]?.value;
  const senml = read('garden/p1', [{ n: 'leaf-wetness', vb: true }]).readings[0]?.value;
  expect(single).toBe(senml);
});

// Messages of any shape: topics near the known ones, payloads near the known forms.
const anyTopic = fc.oneof(
  fc.string(),
  fc.constantFrom(
    'garden/p1',
    'garden/p1/temperature',
    'weather/a/state',
    'garden/p1/door',
    'lora',
  ),
  fc.tuple(fc.string(), fc.constantFrom(...quantities)).map(([p, q]) => `garden/${p}/${q}`),
);
const oddKeys = fc.constantFrom(
  'n',
  'v',
  't',
  'u',
  'bn',
  'bt',
  'bu',
  'bv',
  'vb',
  's',
  '__proto__',
  'x_',
);
const oddValue = fc.oneof(
  fc.double(),
  fc.string(),
  fc.boolean(),
  fc.constant(null),
  fc.constantFrom('temperature', 'Cel', 'Fah', 1e308, -1e308, 2 ** 28, 5e-324),
);
const anyPayload = fc.oneof(
  fc.uint8Array({ maxLength: 300 }),
  fc.json().map((text) => Buffer.from(text)),
  fc
    .array(fc.dictionary(oddKeys, oddValue), { maxLength: 5 })
    .map((pack) => Buffer.from(JSON.stringify(pack))),
  fc.dictionary(oddKeys, oddValue).map((body) => Buffer.from(JSON.stringify(body))),
);
const mappings = [
  { topic: 'weather/+probe/state', fields: [{ quantity: 'temperature' as const, pointer: '/v' }] },
  {
    topic: 'lora',
    probe: '/n',
    time: '/t',
    fields: [{ quantity: 'rain' as const, pointer: '/v', unit: 'm' }],
  },
];

test('no message of any shape throws, and each reading is a finite number of a known quantity', () => {
  fc.assert(
    fc.property(anyTopic, anyPayload, (topic, payload) => {
      const { readings, refused } = readMessage(message(topic, payload), mappings);
      for (const { quantity, value, t, probe } of readings) {
        expect([...quantities, 'battery-voltage']).toContain(quantity);
        expect(Number.isFinite(value)).toBe(true);
        expect(t === null || typeof t === 'number').toBe(true);
        expect(t).not.toBeNaN();
        expect(probe).not.toBe('');
      }
      for (const { sentence, reason } of refused) {
        expect(sentence).toMatch(/^Expected /);
        expect(reason).not.toBe('');
      }
    }),
    { numRuns: 3000 },
  );
});

test('a number sent bare comes back as it was', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      const { readings } = read('garden/p1/light', JSON.stringify(value));
      expect(readings[0]?.value).toBe(value === 0 ? 0 : value);
    }),
  );
  expect(RECEIVED).toBe(Date.UTC(2026, 4, 10, 9));
});
