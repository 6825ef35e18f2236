import type { Random } from './random.ts';

/** Text that has broken programs before, and some that is right here and there. */
const TEXTS = [
  ...['', ' ', 'null', 'undefined', 'true', '[]', '{}', 'NaN', 'Infinity', '-0', '0x10', '1e309'],
  ...['1e9', '-1', '0', '1', '500', '5000', '5001', '1.5', '9007199254740993', '１２'],
  ...['9999-99-99', '2026-02-30', '0000-01-01', '9999-12-31', '-000001-01-01', '2026-05-10'],
  ...['1970-01-01T00:00:00Z', '2026-05-10T09:00:00Z', '2026-05-11T09:00:00+14:00'],
  ...['9999-12-31T23:59:59.999Z', '+275760-09-13T00:00:00.001Z', '2026-05-10T24:00:00Z'],
  ...['long-house', 'cool-room', 'outside', 'p1', 'temperature', 'canopy', 'air', 'dewPoint'],
  ...['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'prototype'],
  ...['../../../etc/passwd', '..%2f..%2f', '%00', '%', '%zz', '%c0%ae', '//', '\\', '?', '#', ';'],
  ...["' OR 1=1 --", '"; DROP TABLE people; --', '<script>alert(1)</script>', '{{7*7}}'],
  ...['\u0000', '\u0007', '\ud800', '\udfff\ud800', '\u202eabc', '\u200b', '\ufeff', 'e\u0301'],
  ...['🌱', 'ﷺ', 'İ', 'ß', '\u2028', '\r\nX-Odd: 1', '\n', '\t', 'Zoë', 'ᚠ'],
];

export function oddText(random: Random): string {
  const kind = random.below(20);
  if (kind === 0) return 'x'.repeat(random.pick([61, 301, 4000]));
  if (kind === 1) return random.pick(TEXTS) + random.pick(TEXTS);
  if (kind === 2)
    return String.fromCharCode(...Array.from({ length: 8 }, () => random.below(65_536)));
  return random.pick(TEXTS);
}

export const oddValue = (random: Random): unknown =>
  random.pick<() => unknown>([
    () => oddText(random),
    () => random.pick([0, -1, 1.5, 1e9, 1e308, -1e308, 2 ** 53, Number.MIN_VALUE]),
    () => random.pick([true, false, null]),
    () => [],
    () => ({}),
    () => [oddText(random), 1, null],
    () => ({ [oddText(random)]: oddText(random) }),
    () => Array(500).fill(0),
  ])();

const deep = (open: string, close: string, depth: number) =>
  `${open.repeat(depth)}1${close.repeat(depth)}`;

/** Whole bodies that are not what any route expects, most of them not even JSON. */
export const oddBody = (random: Random): string =>
  random.pick<() => string>([
    () => '',
    () => '{',
    () => '[',
    () => '"',
    () => 'null',
    () => 'NaN',
    () => '{"a":NaN}',
    () => '{"a":1e999}',
    () => '[1,]',
    () => "{'a':1}",
    () => '\ufeff{}',
    () => '{"__proto__":{"role":"grower"}}',
    () => '{"constructor":{"prototype":{"role":"grower"}}}',
    () => '{"name":"a","name":"b"}',
    () => deep('[', ']', 10_000),
    () => deep('{"a":', '}', 10_000),
    () => deep('[', '', 20_000),
    () => JSON.stringify('x'.repeat(60_000)),
    () => JSON.stringify('x'.repeat(70_000)),
    () => JSON.stringify(Object.fromEntries(Array.from({ length: 2000 }, (_, i) => [`k${i}`, i]))),
    () => 'a=1&b=2',
    () => '<a/>',
    () => '\u0000\u0001\u0002',
    () => `{"answer":"done","note":"${'\\u0000'.repeat(400)}"}`,
  ])();
