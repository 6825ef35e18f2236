import { expect, test } from 'vitest';
import type { Mapping } from '../../../../hub/contract/index.ts';
import { filterOf, matchTopic, pointed, readMapped } from '../../../../hub/intake/forms/mapped.ts';
import { RECEIVED, read, refusalOf } from '../message.ts';

// Source: RFC 6901, JSON Pointer (April 2013), section 5: the document and its table.
const document = {
  foo: ['bar', 'baz'],
  '': 0,
  'a/b': 1,
  'c%d': 2,
  'e^f': 3,
  'g|h': 4,
  'i\\j': 5,
  'k"l': 6,
  ' ': 7,
  'm~n': 8,
};
test.for([
  ['', document],
  ['/foo', ['bar', 'baz']],
  ['/foo/0', 'bar'],
  ['/', 0],
  ['/a~1b', 1],
  ['/c%d', 2],
  ['/e^f', 3],
  ['/g|h', 4],
  ['/i\\j', 5],
  ['/k"l', 6],
  ['/ ', 7],
  ['/m~0n', 8],
] as const)('the pointer %j of RFC 6901 points at %j', ([pointer, value]) => {
  expect(pointed(document, pointer)).toEqual(value);
});

test('~01 is ~1 and not / (section 4)', () => {
  expect(pointed({ '~1': 'right', '/': 'wrong' }, '/~01')).toBe('right');
});

test.for([
  '/foo/2',
  '/foo/00',
  '/foo/-',
  '/foo/length',
  '/nobody',
  '/foo/0/0',
  '/__proto__',
  '/a~1b/toString',
])('the pointer %s points at nothing', (pointer) => {
  expect(pointed(document, pointer)).toBeUndefined();
});

const mapping = (topic: string, more: Partial<Mapping> = {}): Mapping => ({
  topic,
  fields: [{ quantity: 'temperature', pointer: '/t' }],
  ...more,
});

// Source: MQTT 3.1.1 (OASIS, 2014), section 4.7.1: # matches its parent too; + one whole level.
test.for([
  ['farm/+probe', 'farm/a', 'a'],
  ['farm/+probe/state', 'farm/a/state', 'a'],
  ['+/+probe', 'farm/b', 'b'],
  ['farm/+probe/#', 'farm/a/x/y', 'a'],
  ['farm/+probe/#', 'farm/a', 'a'],
  ['farm/#', 'farm', null],
  ['#', 'any/thing', null],
] as const)('the filter %s takes %s from probe %s', ([filter, topic, probe]) => {
  expect(matchTopic(mapping(filter), topic)).toEqual({ probe });
});
test.for([
  ['farm/+probe', 'farm'],
  ['farm/+probe', 'farm/a/b'],
  ['farm/+probe/state', 'farm/a/status'],
  ['farm/+', 'field/a'],
] as const)('the filter %s does not take %s', ([filter, topic]) => {
  expect(matchTopic(mapping(filter), topic)).toBeNull();
});

test('for a broker +probe is a plain +', () => {
  expect(filterOf(mapping('farm/+probe/state/#'))).toBe('farm/+/state/#');
});

const weather: Mapping = {
  topic: 'weather/+probe',
  time: '/meta/at',
  fields: [
    { quantity: 'temperature', pointer: '/air/t', unit: 'Fah' },
    { quantity: 'humidity', pointer: '/air/rh' },
    { quantity: 'door', pointer: '/door' },
  ],
};
const sent = { meta: { at: '2026-05-10T08:59:00+00:00' }, air: { t: 68, rh: 71 }, door: true };

test('each field is read where its pointer says, with its unit', () => {
  const t = Date.UTC(2026, 4, 10, 8, 59);
  expect(read('weather/mast', sent, [weather])).toEqual({
    readings: [
      { probe: 'mast', t, quantity: 'temperature', value: 20 },
      { probe: 'mast', t, quantity: 'humidity', value: 71 },
      { probe: 'mast', t, quantity: 'door', value: 1 },
    ],
    refused: [],
  });
});

test.for([
  [1_778_403_540, 1_778_403_540_000],
  [1_778_403_540_123, 1_778_403_540_123],
  ['2026-05-10T08:59:00Z', 1_778_403_540_000],
] as const)('a time of %j is %d ms', ([at, t]) => {
  const { readings } = read('weather/mast', { ...sent, meta: { at } }, [weather]);
  expect(readings[0]?.t).toBe(t);
});

test('without a time pointer the arrival dates the reading', () => {
  const { readings } = read('farm/a', { t: 12 }, [mapping('farm/+probe')]);
  expect(readings).toEqual([{ probe: 'a', quantity: 'temperature', t: null, value: 12 }]);
  expect(RECEIVED).toBeGreaterThan(0);
});

test('the probe may be named in the message', () => {
  const named = mapping('lora', { probe: '/who' });
  expect(read('lora', { who: 'n-7', t: 3 }, [named]).readings[0]?.probe).toBe('n-7');
  expect(read('lora', { who: 7, t: 3 }, [named]).readings[0]?.probe).toBe('7');
  expect(refusalOf('lora', { t: 3 }, [named])).toMatchObject({
    reason: 'bad-name',
    sentence: "Expected a probe's name in /who, got nothing",
  });
});

test.for([
  [{ meta: {}, air: { t: 1 } }, 'missing-field', /time in \/meta\/at, got nothing/],
  [{ ...sent, meta: { at: 'noon' } }, 'bad-time', /in \/meta\/at, got "noon"/],
  [{ ...sent, meta: { at: '2026-05-10T08:59:00' } }, 'bad-time', /with zone/],
  [{ ...sent, meta: { at: '2026-02-30T08:59:00Z' } }, 'bad-time', /2026-02-30/],
  [{ ...sent, meta: { at: -5 } }, 'bad-time', /got -5/],
  [{ ...sent, air: { t: '68' } }, 'not-a-number', /\/air\/t for temperature, got "68"/],
  [{ ...sent, air: { t: null } }, 'not-a-number', /got null/],
  [{ meta: sent.meta, air: {} }, 'missing-field', /one of \/air\/t, \/air\/rh, \/door/],
] as const)('%j is refused as %s', ([body, reason, words]) => {
  const { reason: got, sentence } = refusalOf('weather/mast', body, [weather]);
  expect([got, sentence]).toEqual([reason, expect.stringMatching(words)]);
});

test('one field that is wrong does not take the others with it', () => {
  const { readings, refused } = read('weather/mast', { ...sent, air: { t: 'x', rh: 70 } }, [
    weather,
  ]);
  expect(readings.map(({ quantity }) => quantity)).toEqual(['humidity', 'door']);
  expect(refused).toMatchObject([{ source: 'mast', reason: 'not-a-number' }]);
});

test('the first mapping that fits reads the message', () => {
  const second = mapping('farm/#', { probe: '/who' });
  const { readings } = read('farm/a', { t: 1, who: 'b' }, [mapping('farm/+probe'), second]);
  expect(readings[0]?.probe).toBe('a');
});

test('a probe that signed in speaks for itself only; the sender of a mapping for all', () => {
  const fields: Mapping['fields'] = [{ quantity: 'temperature', pointer: '/t' }];
  const mapping: Mapping = { topic: 'radio/out', probe: '/device', fields };
  const body = { device: 'p1', t: 20 };
  expect(readMapped(body, mapping, null, 'p1').readings).toHaveLength(1);
  expect(readMapped(body, mapping, null, null).readings).toHaveLength(1);
  expect(() => readMapped(body, mapping, null, 'p2')).toThrow(
    'Expected p2 in /device of what p2 sends, got p1',
  );
  const withSender = { ...mapping, sender: 'gateway' };
  expect(readMapped(body, withSender, null, 'gateway').readings).toHaveLength(1);
  expect(() => readMapped(body, withSender, null, 'p2')).toThrow(/got p1$/);
});
