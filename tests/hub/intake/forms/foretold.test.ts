import { expect, test } from 'vitest';
import { RECEIVED, read } from '../message.ts';

const HOUR = 3600; // s, as SenML counts
const seconds = RECEIVED / 1000;
const topic = 'garden/forecast/temperature';
/** What was taken in, and why the rest was not. */
const foretold = (pack: unknown, on = topic) => {
  const { ahead = [], refused, readings } = read(on, pack);
  expect(readings).toEqual([]); // a forecast is never a reading
  return { ahead, reasons: refused.map(({ reason }) => reason) };
};

// Source: RFC 8428 sections 4.1 and 4.5.3 for base fields and relative times.
test('a pack of hours ahead is a forecast, by whoever its base name says', () => {
  const { ahead, reasons } = foretold([
    { bn: 'met:', bu: 'Cel', n: 'temperature', t: HOUR, v: 4 },
    { n: 'temperature', t: 2 * HOUR, v: 3.5 },
  ]);
  expect(reasons).toEqual([]);
  expect(ahead).toEqual([
    { source: 'met', quantity: 'temperature', t: RECEIVED + 3_600_000, value: 4 },
    { source: 'met', quantity: 'temperature', t: RECEIVED + 7_200_000, value: 3.5 },
  ]);
});

test.for([
  ['the quantity in the base name', [{ bn: 'met:temperature', t: HOUR, v: 4 }], 'met'],
  ['no name at all', [{ t: HOUR, v: 4 }], 'forecast'],
  ['only the quantity', [{ n: 'temperature', t: HOUR, v: 4 }], 'forecast'],
  ['a time since 1970', [{ bn: 'met.', n: 'temperature', t: seconds + HOUR, v: 4 }], 'met'],
] as const)('with %s the source is known, or plainly nameless', ([, pack, source]) => {
  const { ahead, reasons } = foretold(pack);
  expect(reasons).toEqual([]);
  expect(ahead).toEqual([{ source, quantity: 'temperature', t: RECEIVED + 3_600_000, value: 4 }]);
});

test('degrees Fahrenheit and kelvins ahead are kept in °C', () => {
  const { ahead } = foretold([
    { n: 'temperature', u: 'Fah', t: HOUR, v: 32 },
    { n: 'temperature', u: 'K', t: 2 * HOUR, v: 273.15 },
  ]);
  expect(ahead.map(({ value }) => value)).toEqual([0, 0]);
});

test('rain and temperature come in one pack where the topic names neither', () => {
  const pack = [
    { bn: 'met:', n: 'temperature', t: HOUR, v: 4 },
    { n: 'rain', u: 'mm', t: HOUR, v: 2 },
  ];
  const { ahead } = foretold(pack, 'garden/forecast');
  expect(ahead.map(({ quantity }) => quantity)).toEqual(['temperature', 'rain']);
  // Where the topic names one, the other is told and not taken.
  expect(foretold(pack).reasons).toEqual(['unknown-quantity']);
});

test.for([
  ['yesterday', [{ n: 'temperature', t: -24 * HOUR, v: 4 }], 'bad-time'],
  ['a month ahead', [{ n: 'temperature', t: 30 * 24 * HOUR, v: 4 }], 'bad-time'],
  ['no weather', [{ n: 'temperature', t: HOUR, v: 400 }], 'out-of-range'],
  ['another unit', [{ n: 'temperature', u: 'lx', t: HOUR, v: 4 }], 'unknown-unit'],
  ['a word', [{ n: 'temperature', t: HOUR, vs: 'cold' }], 'missing-field'],
] as const)('%s is no forecast, and the rest of its pack is still one', ([, bad, reason]) => {
  expect(foretold(bad)).toEqual({ ahead: [], reasons: [reason] });
  const good = { n: 'temperature', t: HOUR, v: 4 };
  expect(foretold([good, ...bad])).toMatchObject({ ahead: [{ value: 4 }], reasons: [reason] });
});
