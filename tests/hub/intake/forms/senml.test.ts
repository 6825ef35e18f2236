import { expect, test } from 'vitest';
import { RECEIVED, read, refusalOf } from '../message.ts';

// Source: RFC 8428, Sensor Measurement Lists (August 2018); section numbers are its own. Examples
// keep its values, times and base fields; a name is changed where the contract needs a quantity.
const DEVICE = 'urn:dev:ow:10e2073a01080063';
const senml = (pack: unknown) => read('garden/p1', pack);

test('the single data point of section 5.1.1 is read', () => {
  expect(senml([{ n: `${DEVICE}:temperature`, u: 'Cel', v: 23.1 }])).toEqual({
    readings: [{ probe: 'p1', quantity: 'temperature', t: RECEIVED, value: 23.1 }],
    refused: [],
  });
});

test('the names of section 5.1.1 as printed name no quantity, and are refused by name', () => {
  expect(refusalOf('garden/p1', [{ n: DEVICE, u: 'Cel', v: 23.1 }])).toMatchObject({
    readings: 0,
    reason: 'unknown-quantity',
    sentence: expect.stringMatching(/^Expected a name .*temperature.*, got "urn:dev:ow/),
  });
});

test('the many data points of section 5.1.3 share base name and base time', () => {
  const bt = 1.276020076001e9;
  const { readings, refused } = senml([
    { bn: `${DEVICE}:`, bt, bu: 'Cel', bver: 5, n: 'temperature', v: 12.1 },
    ...[-5, -4, -3, -2, -1].map((t, i) => ({ n: 'temperature', t, v: 12 + i / 10 })),
    { n: 'temperature', v: 17 },
  ]);
  expect(refused).toEqual([]);
  expect(readings.map(({ t }) => t)).toEqual(
    [0, -5, -4, -3, -2, -1, 0].map((t) => 1_276_020_076_001 + t * 1000),
  );
});

test('the moving device of section 5.1.4 gives its humidities and refuses what is no quantity', () => {
  const { readings, refused } = senml([
    { bn: DEVICE, bt: 1.320067464e9, bu: '%RH', n: ':humidity', v: 20 },
    { n: ':longitude', u: 'lon', v: 24.30621 },
    { n: ':latitude', u: 'lat', v: 60.07965 },
    { n: ':humidity', t: 60, v: 20.3 },
    { n: ':humidity', t: 120, v: 20.7 },
    { n: ':battery', u: '%EL', t: 150, v: 98 },
  ]);
  expect(readings).toEqual([
    { probe: 'p1', quantity: 'humidity', t: 1_320_067_464_000, value: 20 },
    { probe: 'p1', quantity: 'humidity', t: 1_320_067_524_000, value: 20.3 },
    { probe: 'p1', quantity: 'humidity', t: 1_320_067_584_000, value: 20.7 },
    { probe: 'p1', quantity: 'battery', t: 1_320_067_614_000, value: 98 },
  ]);
  expect(refused).toHaveLength(2);
});

test('of the data types of section 5.3 the numbers and truths are read, text and bytes refused', () => {
  const { readings, refused } = senml([
    { bn: `${DEVICE}:`, n: 'temperature', u: 'Cel', v: 23.1 },
    { n: 'light', vs: 'Machine Room' },
    { n: 'door', vb: false },
    { n: 'wind', vd: 'aGkgCg' },
  ]);
  expect(readings.map(({ quantity, value }) => [quantity, value])).toEqual([
    ['temperature', 23.1],
    ['door', 0],
  ]);
  expect(refused.map(({ reason }) => reason)).toEqual(['missing-field', 'missing-field']);
  expect(refused[0]?.sentence).toMatch(/^Expected .* got "Machine Room"/);
});

test('the base value is added to each value (section 4.1)', () => {
  const { readings } = senml([
    { bv: 20, n: 'temperature', v: 1.5 },
    { n: 'soil-temperature', v: -5 },
  ]);
  expect(readings.map(({ value }) => value)).toEqual([21.5, 15]);
});

test('a base field holds until it comes again, whatever stands between', () => {
  const { readings } = senml([
    { bn: 'a:', bu: 'K', n: 'temperature', v: 273.15 },
    { n: 'soil-temperature', v: 283.15 },
    { bu: 'Cel' },
    { n: 'temperature', t: -1, v: 7 },
  ]);
  expect(readings.map(({ value }) => value)).toEqual([0, 10, 7]);
});

// Section 4.5.3: "values less than 2**28 are relative to the current time".
test.for([
  [0, RECEIVED],
  [-60, RECEIVED - 60_000],
  [2 ** 28 - 1, RECEIVED + (2 ** 28 - 1) * 1000],
  [2 ** 28, 2 ** 28 * 1000],
  [1.778e9, 1.778e12],
])('a time of %d s means %d ms', ([t, ms]) => {
  expect(senml([{ n: 'temperature', v: 1, t }]).readings[0]?.t).toBe(ms);
  expect(senml([{ n: 'temperature', v: 1, bt: t }]).readings[0]?.t).toBe(ms);
});

test('base time and time are added before they are held against 2^28', () => {
  const { readings } = senml([{ n: 'temperature', v: 1, bt: 2 ** 28 - 10, t: 10 }]);
  expect(readings[0]?.t).toBe(2 ** 28 * 1000);
});

test('a pack of a later version is refused as a whole (section 4.4)', () => {
  expect(senml([{ bver: 11, n: 'temperature', v: 20 }])).toEqual({
    readings: [],
    refused: [{ source: 'p1', reason: 'unknown-form', sentence: 'Expected bver up to 10, got 11' }],
  });
  expect(senml([{ bver: 10, n: 'temperature', v: 20 }]).readings).toHaveLength(1);
});

test('a label nobody knows is ignored; one that ends in _ is refused', () => {
  expect(senml([{ n: 'temperature', v: 20, colour: 'red' }]).readings).toHaveLength(1);
  expect(refusalOf('garden/p1', [{ n: 'temperature', v: 20, scale_: 2 }])).toMatchObject({
    readings: 0,
    reason: 'unknown-form',
    sentence: expect.stringContaining('"scale_"'),
  });
});

// Section 4.4: such labels are "mandatory to understand to correctly process the Pack".
test('a label ending in _ in a base record refuses the records that stand on it', () => {
  expect(
    senml([
      { bn: 'a:', scale_: 2 },
      { n: 'temperature', v: 20 },
    ]).readings,
  ).toEqual([]);
});

test('a base unit that is lost with its record is not taken for °C in the next', () => {
  const { readings } = senml([
    { bt: 'yesterday', bu: 'Fah', n: 'temperature', v: 68 },
    { n: 'soil-temperature', v: 50 },
  ]);
  expect(readings).toEqual([]);
});

test('a base time that cannot be read does not date the next record by its arrival', () => {
  const { readings } = senml([
    { bt: '1778400000', n: 'temperature', v: 20 },
    { n: 'humidity', t: 300, v: 80 },
  ]);
  expect(readings).toEqual([]);
});

test.for([
  ['temperature', 'Cel', 20, 20],
  ['temperature', 'K', 293.15, 20],
  ['temperature', 'Fah', 68, 20],
  ['humidity', '%RH', 61, 61],
  ['humidity', '/', 0.61, 61],
  ['energy', 'J', 7_200_000, 2],
  ['energy', 'kWh', 2, 2],
  ['energy', 'Wh', 500, 0.5],
  ['power', 'kW', 1.5, 1500],
  ['wind', 'km/h', 36, 10],
  ['rain', 'mm', 3, 3],
  ['light', 'lx', 900, 900],
  ['battery', '%EL', 40, 40],
] as const)('%s in %s: %d is kept as %d', ([n, u, v, kept]) => {
  const { readings } = senml([{ n, u, v }]);
  expect(readings[0]).toMatchObject({ quantity: n });
  expect(readings[0]?.value).toBeCloseTo(kept, 9);
});

test('a battery in volts is a voltage, never a share', () => {
  expect(senml([{ n: 'battery', u: 'V', v: 3.1 }]).readings[0]).toMatchObject({
    quantity: 'battery-voltage',
    value: 3.1,
  });
  expect(senml([{ n: 'battery', u: 'mV', v: 3100 }]).readings[0]?.value).toBeCloseTo(3.1, 9);
});

test('true and false are 1 and 0 of a door, and wet or dry of a leaf', () => {
  const { readings } = senml([
    { n: 'door', vb: true },
    { n: 'leaf-wetness', vb: true },
  ]);
  expect(readings.map(({ value }) => value)).toEqual([1, 100]);
});

test('true is not a temperature', () => {
  expect(refusalOf('garden/p1', [{ n: 'temperature', vb: true }])).toMatchObject({
    readings: 0,
    reason: expect.any(String),
  });
});

test.for([
  [{ n: 'temperature', v: 'warm' }, 'not-a-number', /in v, got "warm"/],
  [{ n: 'temperature', v: null }, 'not-a-number', /in v, got null/],
  [{ n: 'temperature', v: 1, t: 'now' }, 'not-a-number', /in t, got "now"/],
  [{ n: 'temperature', v: 1, u: 'lx' }, 'unknown-unit', /unit of temperature, got "lx"/],
  [{ n: 'temperature' }, 'missing-field', /v or true\/false in vb/],
  [{ n: 'temperature', v: 1, vb: true }, 'unknown-form', /one value, got v and vb/],
  [{ n: '/temperature', v: 1 }, 'bad-name', /got "\/temperature"/],
  [{ n: 7, v: 1 }, 'unknown-form', /text in n, got 7/],
  [{ v: 1 }, 'bad-name', /name \(bn \+ n\)/],
  ['temperature', 'unknown-form', /SenML record, got "temperature"/],
  [null, 'unknown-form', /SenML record, got null/],
] as const)('the record %j is refused as %s', ([record, reason, words]) => {
  const { readings, refused } = senml([record, { n: 'humidity', v: 50 }]);
  expect(readings).toHaveLength(1); // the good record of the pack is still read
  expect(refused).toMatchObject([{ source: 'p1', reason, sentence: expect.stringMatching(words) }]);
  expect(refused[0]?.sentence).toMatch(/^Expected .*\(record 1\)$/);
});

test('a pack that is no array, or too long, is refused in one sentence', () => {
  expect(refusalOf('garden/p1', { n: 'temperature', v: 1 }).sentence).toMatch(/^Expected a SenML/);
  const long = Array.from({ length: 2001 }, () => ({ n: 'temperature', v: 1 }));
  expect(refusalOf('garden/p1', long)).toMatchObject({ readings: 0, reason: 'too-long' });
});
