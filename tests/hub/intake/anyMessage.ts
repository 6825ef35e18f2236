import fc from 'fast-check';
import { quantities } from '../../../hub/contract/index.ts';

// Messages of every form, whole and broken. What comes out is the same for the same seed.

export type AnyMessage = { readonly topic: string; readonly payload: Buffer };

/** Names of JavaScript's own, and others that mean something to somebody. */
const loaded = [
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  'prototype',
  'null',
  '-',
  '.',
];
const pick = <T>(...items: readonly T[]) => fc.constantFrom(...items);
const oddText = fc.oneof(
  pick(
    '',
    ' ',
    '\u0000',
    '\ufeff',
    '\ud800',
    '\u202e',
    '🌱',
    'İ',
    "'; DROP TABLE readings; --",
    '%s%n',
  ),
  fc.string({ unit: 'binary', maxLength: 20 }),
  fc.string({ maxLength: 12 }),
);
const name = fc.oneof(
  { weight: 4, arbitrary: pick('p1', 'mast', 'cold') },
  { weight: 2, arbitrary: fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9\-:._]{0,12}$/) },
  pick(...loaded),
  oddText,
);
const quantity = fc.oneof(
  { weight: 5, arbitrary: pick(...quantities) },
  pick(...loaded, 'colour', 'Temperature', 'temperature ', ''),
  oddText,
);
const number = fc.oneof(
  fc.double({ min: -50, max: 150, noNaN: true }),
  pick(0, -0, 1e308, -1e308, 5e-324, 85, -127, 2 ** 53, 20),
  fc.double(),
);
const unit = pick(
  'Cel',
  'K',
  'Fah',
  '%RH',
  '%',
  'W',
  'kWh',
  'lx',
  'V',
  'mm',
  'm/s',
  '/',
  '',
  'psi',
  ...loaded,
);
const time = fc.oneof(
  fc.integer({ min: 1_767_225_600, max: 1_800_000_000 }),
  fc.integer({ min: -1e6, max: 1e6 }),
  pick<unknown>(
    '2026-05-10T08:00:00Z',
    '2026-02-30T08:00:00Z',
    '2026-05-10T08:00',
    'now',
    1e18,
    -1,
    2 ** 28,
  ),
);
const anything = fc.oneof(
  { weight: 3, arbitrary: number },
  fc.boolean(),
  oddText,
  fc.jsonValue(),
  pick(null),
);

/** A record of RFC 8428 with fields of its own, of later versions and of nobody's. */
const record = fc.record(
  {
    bn: fc.oneof(oddText, pick('p1:', 'urn:dev:ow:10e2073a01080063:')),
    bt: fc.oneof(time, anything),
    bu: fc.oneof(unit, anything),
    bv: anything,
    bs: anything,
    bver: pick<unknown>(5, 10, 11, 1e9, -1, 'ten', null),
    n: fc.oneof({ weight: 4, arbitrary: quantity }, anything),
    u: fc.oneof({ weight: 3, arbitrary: unit }, anything),
    v: fc.oneof({ weight: 4, arbitrary: number }, anything),
    vs: oddText,
    vb: fc.oneof(fc.boolean(), anything),
    vd: pick('AAAA', '', '-_'),
    s: anything,
    t: fc.oneof(time, anything),
    ut: anything,
    must_: anything,
    may: anything,
  },
  { requiredKeys: [] },
);
const pack = fc.oneof(
  { weight: 5, arbitrary: fc.array(record, { maxLength: 6 }) },
  fc.array(anything, { maxLength: 4 }),
  anything,
);
const single = fc.oneof(
  anything,
  fc.record(
    { v: anything, t: fc.oneof(time, anything), u: fc.oneof(unit, anything) },
    { requiredKeys: [] },
  ),
);
const state = fc.oneof(
  fc.record({
    air: fc.oneof(fc.record({ t: anything, rh: anything }, { requiredKeys: [] }), anything),
  }),
  anything,
);
/** Text that is nearly JSON, and bytes that are no text. */
const broken = fc.oneof(
  pick(
    ...[
      'NaN',
      'Infinity',
      '-Infinity',
      '1e999',
      '-1e999',
      '{"v":1e999}',
      '{"v":NaN}',
      '',
      ' ',
      '[',
      '{',
      '"',
    ],
    ...[
      '\ufeff21',
      '\ufeff[{"n":"temperature","v":1}]',
      '01',
      '+1',
      '.5',
      '1.',
      '0x10',
      "{'v':1}",
      '1,2',
    ],
    ...[
      '{"v":1,"v":2}',
      '{"__proto__":{"v":1}}',
      '{"v":{"toString":1}}',
      '[[[[[[]]]]]]',
      'null',
      'tru',
    ],
    ...[
      '"\\ud800"',
      '{"v":"\\u0000"}',
      '{"v":20,"t":"\\ud800"}',
      '99999999999999999999999999',
      '-',
    ],
  ).map((words) => Buffer.from(words)),
  fc.uint8Array({ maxLength: 40 }).map((bytes) => Buffer.from(bytes)),
  pick(
    Buffer.from([0xff, 0xfe, 0x32, 0x00]),
    Buffer.from([0xc0, 0xaf]),
    Buffer.from([0xed, 0xa0, 0x80]),
  ),
);
/** Large and deep; few of them, because each takes its time. */
const heavy = pick(
  () => Buffer.from(`${'['.repeat(60_000)}${']'.repeat(60_000)}`),
  () => Buffer.from(`${'['.repeat(100_000)}`),
  () => Buffer.from(`${'{"v":'.repeat(20_000)}1${'}'.repeat(20_000)}`),
  () => Buffer.from(JSON.stringify({ v: 'x'.repeat(64 * 1024) })),
  () => Buffer.from(JSON.stringify({ ['k'.repeat(64 * 1024)]: 1 })),
  () => Buffer.alloc(200_000, '9'),
  () => Buffer.from(JSON.stringify(Array(2001).fill({ n: 'temperature', v: 1 }))),
).map((make) => make());

const json = (value: unknown) => Buffer.from(JSON.stringify(value) ?? '');
const payload = (body: fc.Arbitrary<unknown>) =>
  fc.oneof(
    { weight: 12, arbitrary: body.map(json) },
    { weight: 4, arbitrary: broken },
    { weight: 1, arbitrary: heavy, withCrossShrink: false },
  );
/** A broker takes no topic with these: such a message never leaves its sender. */
const sendable = (topic: string) => {
  const plain = topic.replaceAll(/[#+]|\0/g, '_').replaceAll(/[\ud800-\udfff]/g, '?');
  return plain === '' || plain.startsWith('$') ? `x${plain}` : plain;
};
const level = fc.oneof(name, quantity, pick('', 'garden', 'dewpost', 'shed'));
const topics = {
  single: fc.tuple(name, quantity).map(([probe, what]) => `garden/${probe}/${what}`),
  pack: name.map((probe) => `garden/${probe}`),
  state: name.map((probe) => `weather/${probe}/state`),
  odd: fc.oneof(
    fc.array(level, { maxLength: 6 }).map((levels) => levels.join('/')),
    pick(
      '/',
      '//',
      'garden/',
      'garden//temperature',
      '/garden/p1',
      'GARDEN/p1',
      'garden/p1/temperature/',
    ),
    pick(`garden/${'n'.repeat(64_000)}`, `far/${'a/'.repeat(90)}`, 'garden/forecast/temperature'),
  ),
};
const message = (
  topic: fc.Arbitrary<string>,
  body: fc.Arbitrary<unknown>,
): fc.Arbitrary<AnyMessage> => fc.record({ topic: topic.map(sendable), payload: payload(body) });

export const anyMessage: fc.Arbitrary<AnyMessage> = fc.oneof(
  { weight: 4, arbitrary: message(topics.single, single) },
  { weight: 4, arbitrary: message(topics.pack, pack) },
  { weight: 2, arbitrary: message(topics.state, state) },
  { weight: 1, arbitrary: message(topics.odd, fc.oneof(single, pack, state)) },
);
