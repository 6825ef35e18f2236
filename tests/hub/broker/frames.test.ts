import fc from 'fast-check';
import { expect, test } from 'vitest';
import { headLength, readOpening, writeOpening } from '../../../hub/broker/frames.ts';

// Lengths and their bytes: OASIS MQTT 3.1.1, table 2.4, both ends of each row.
test.for([
  [0, [0x00]],
  [127, [0x7f]],
  [128, [0x80, 0x01]],
  [16_383, [0xff, 0x7f]],
  [16_384, [0x80, 0x80, 0x01]],
  [2_097_151, [0xff, 0xff, 0x7f]],
  [2_097_152, [0x80, 0x80, 0x80, 0x01]],
  [268_435_455, [0xff, 0xff, 0xff, 0x7f]],
] as const)('a length of %i is read and written as in the standard', ([length, bytes]) => {
  const whole = Buffer.from([0x32, ...bytes]);
  expect(readOpening(whole)).toEqual({ type: 3, flags: 2, length, size: whole.length });
  expect(writeOpening({ type: 3, flags: 2, length })).toEqual(whole);
  for (let cut = 0; cut < whole.length; cut++)
    expect(readOpening(whole.subarray(0, cut))).toBeNull();
});

test('what is written is read back, whatever follows it', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 14 }),
      fc.integer({ min: 0, max: 15 }),
      fc.integer({ min: 0, max: 268_435_455 }),
      fc.uint8Array({ maxLength: 9 }),
      (type, flags, length, more) => {
        const opening = writeOpening({ type, flags, length });
        const read = readOpening(Buffer.concat([opening, more]));
        expect(read).toEqual({ type, flags, length, size: opening.length });
      },
    ),
  );
});

test.for([
  [[0x00, 0x00], 'Expected an MQTT packet of type 1 to 14, got 0'],
  [[0xf0, 0x00], 'Expected an MQTT packet of type 1 to 14, got 15'],
  [[0x10, 0xff, 0xff, 0xff, 0xff], 'Expected a packet length of at most four bytes, got more'],
] as const)('%j begins no packet', ([bytes, sentence]) => {
  expect(() => readOpening(Buffer.from(bytes))).toThrow(sentence);
});

test('the head of a message is its topic, and an id above QoS 0', () => {
  expect(headLength(Buffer.from([0x01]), 0)).toBeNull();
  expect(headLength(Buffer.from([0x00, 0x03, 0x61]), 0)).toBe(5);
  expect(headLength(Buffer.from([0x01, 0x00]), 0b0010)).toBe(2 + 256 + 2);
});
