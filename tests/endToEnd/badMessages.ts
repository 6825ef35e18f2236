// Messages nobody should send, and the reason each is to be counted under.

export type BadMessage = {
  readonly topic: string;
  readonly payload: string | Buffer;
  readonly reason: string;
};

const senml = (pack: unknown, reason: string): BadMessage => ({
  topic: 'garden/leaf',
  payload: JSON.stringify(pack),
  reason,
});
const single = (payload: string | Buffer, reason: string, quantity = 'temperature') => ({
  topic: `garden/leaf/${quantity}`,
  payload,
  reason,
});
const mapped = (body: unknown, reason: string): BadMessage => ({
  topic: 'shed/leaf/state',
  payload: JSON.stringify(body),
  reason,
});

/** From a probe that also sends good readings. `at`: the farm's time, ms since 1970. */
export const badFromProbe = (at: number): readonly BadMessage[] => [
  // SenML (RFC 8428)
  senml({ n: 'leaf:temperature', v: 20 }, 'unknown-form'),
  senml(['temperature'], 'unknown-form'),
  senml([{ n: 'leaf:colour', v: 20 }], 'unknown-quantity'),
  senml([{ n: 'leaf:temperature', u: 'parsec', v: 20 }], 'unknown-unit'),
  senml([{ n: 'leaf:temperature', v: '20' }], 'not-a-number'),
  senml([{ n: 'leaf:temperature', vs: 'warm' }], 'missing-field'),
  senml([{ n: '?temperature', v: 20 }], 'bad-name'),
  senml([{ bver: 11, n: 'leaf:temperature', v: 20 }], 'unknown-form'),
  senml([{ n: 'leaf:temperature', v: 20, must_: 1 }], 'unknown-form'),
  senml([{ n: 'leaf:temperature', v: 255 }], 'out-of-range'),
  senml([{ n: 'leaf:temperature', v: 20, t: at / 1000 + 86_400 }], 'clock'),
  senml(Array(2001).fill({ n: 'leaf:temperature', v: 20 }), 'too-long'),
  { topic: 'garden/leaf', payload: '[{"n":"leaf:temperature","v":20}', reason: 'not-json' },
  // One value
  single('warm', 'not-json'),
  single('', 'not-json'),
  single('NaN', 'not-json'),
  single(Buffer.from([0xff, 0xfe, 0x00, 0xd8]), 'not-json'),
  single('"21"', 'not-a-number'),
  single('null', 'not-a-number'),
  single('1e999', 'not-a-number'),
  single('[21]', 'not-a-number'),
  single('{"value":21}', 'missing-field'),
  single('{"v":21,"t":"yesterday"}', 'bad-time'),
  single('{"v":21,"u":"psi"}', 'unknown-unit'),
  single('{"v":21,"u":"__proto__"}', 'unknown-unit'),
  single('-127', 'out-of-range'),
  single('21', 'unknown-quantity', 'colour'),
  single('x'.repeat(300_000), 'too-long'),
  // Deeper than any call stack
  single(`${'['.repeat(60_000)}${']'.repeat(60_000)}`, 'not-a-number'),
  // JSON by the farm file's mapping
  mapped({ climate: { celsius: 20 } }, 'missing-field'),
  mapped({ at: 'noon', climate: { celsius: 20 } }, 'bad-time'),
  mapped({ at, climate: { celsius: 'warm' } }, 'not-a-number'),
  mapped({ at, climate: {} }, 'missing-field'),
  mapped([], 'missing-field'),
  { topic: 'shed/leaf/state', payload: '{', reason: 'not-json' },
];

/** From nobody the hub knows: under what name each is to be found. */
export const badFromStrangers: readonly (BadMessage & { readonly source: string })[] = [
  { topic: 'gardn/leaf', payload: '[]', reason: 'unknown-form', source: 'gardn/leaf' },
  { topic: 'garden', payload: '21', reason: 'bad-name', source: 'garden' },
  { topic: 'garden/böse', payload: '[]', reason: 'bad-name', source: 'garden/böse' },
  { topic: 'garden/ghost/colour', payload: '1', reason: 'unknown-quantity', source: 'ghost' },
  {
    topic: 'garden/forecast/temperature',
    payload: '[]',
    reason: 'missing-field',
    source: 'garden/forecast/temperature',
  },
  {
    topic: `far/${'a'.repeat(60_000)}`,
    payload: '1',
    reason: 'unknown-form',
    source: `far/${'a'.repeat(124)}`,
  },
];
