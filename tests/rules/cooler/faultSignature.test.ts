import { expect, test } from 'vitest';
import { type Fault, faultSignature, type RoomFacts } from '../../../rules/cooler/index.ts';
import { kelvin, minutes } from '../../../rules/units.ts';

const nothing: RoomFacts = {
  riseIn5Minutes: null,
  minutesToFall: null,
  doorOpen: null,
  humidityJumped: null,
  staysUp: null,
  compressorRuns: null,
  defrostDue: null,
  riseMinutes: null,
  defrostMinutes: null,
  recovers: null,
  supplyOffMinutes: null,
  plannedOff: false,
  logLinearR2: null,
  cycles: null,
  idleWhileWarmMinutes: null,
  dutyRise: null,
  dutyOf3Hours: null,
  bottomsCreepUp: null,
  bandMoved: null,
  shapeKept: null,
  dutyFell: null,
  putAway: null,
  stepDecays: null,
  sensorFlags: [],
};
/** A quiet room of which all is known. */
const quiet: RoomFacts = {
  ...nothing,
  riseIn5Minutes: kelvin(0.2),
  minutesToFall: minutes(10),
  staysUp: false,
  compressorRuns: true,
  defrostDue: false,
  riseMinutes: minutes(20),
  defrostMinutes: minutes(18),
  recovers: true,
  supplyOffMinutes: minutes(0),
  logLinearR2: 0.4,
  cycles: true,
  idleWhileWarmMinutes: minutes(0),
  dutyRise: 0,
  dutyOf3Hours: 0.4,
  bottomsCreepUp: false,
  bandMoved: false,
  shapeKept: true,
  dutyFell: false,
  putAway: false,
  stepDecays: false,
};
const names = (facts: RoomFacts) => faultSignature(facts).fits.map(({ fault }) => fault);

// Thresholds just met and just missed; the signatures are common practice, no source.
const cases: readonly [why: string, change: Partial<RoomFacts>, fits: readonly Fault[]][] = [
  [
    '1 K in 5 min that falls in 30',
    { riseIn5Minutes: kelvin(1), minutesToFall: minutes(30) },
    ['door'],
  ],
  ['0.99 K in 5 min', { riseIn5Minutes: kelvin(0.99) }, []],
  [
    'a steep rise that falls after 30.5',
    { riseIn5Minutes: kelvin(2), minutesToFall: minutes(30.5) },
    [],
  ],
  ['a steep rise, contact says shut', { riseIn5Minutes: kelvin(2), doorOpen: false }, []],
  ['a steep rise, humidity did not jump', { riseIn5Minutes: kelvin(2), humidityJumped: false }, []],
  [
    'a steep rise, both agree',
    { riseIn5Minutes: kelvin(2), doorOpen: true, humidityJumped: true },
    ['door'],
  ],
  [
    'a steep rise that stays up with the compressor running',
    { riseIn5Minutes: kelvin(2), staysUp: true, minutesToFall: minutes(Number.POSITIVE_INFINITY) },
    ['door-ajar'],
  ],
  [
    'the same with the compressor still',
    {
      riseIn5Minutes: kelvin(2),
      staysUp: true,
      compressorRuns: false,
      minutesToFall: minutes(Number.POSITIVE_INFINITY),
    },
    [],
  ],
  [
    'a rise at defrost time, 1.5 times as long',
    { defrostDue: true, riseMinutes: minutes(27) },
    ['defrost'],
  ],
  ['one longer than that', { defrostDue: true, riseMinutes: minutes(27.4) }, []],
  ['one that does not recover', { defrostDue: true, recovers: false }, []],
  ['supply off for 5 min', { supplyOffMinutes: minutes(5) }, ['power-loss']],
  ['supply off for 4.95 min', { supplyOffMinutes: minutes(4.95) }, []],
  ['supply off by plan', { supplyOffMinutes: minutes(60), plannedOff: true }, []],
  ['a log-linear rise without cycles', { logLinearR2: 0.98, cycles: false }, ['power-loss']],
  ['a less straight one', { logLinearR2: 0.979, cycles: false }, []],
  ['a straight one in a room that cycles', { logLinearR2: 0.99, cycles: true }, []],
  ['no current for 10 min while warm', { idleWhileWarmMinutes: minutes(10) }, ['unit-stopped']],
  ['for 9.9 min', { idleWhileWarmMinutes: minutes(9.9) }, []],
  ['running share up by 0.15 in 3 days', { dutyRise: 0.15 }, ['slow-failure']],
  ['up by 0.149', { dutyRise: 0.149 }, []],
  ['running share of 0.91 over 3 h', { dutyOf3Hours: 0.91 }, ['slow-failure']],
  ['running share of 0.9', { dutyOf3Hours: 0.9 }, []],
  ['bottoms creeping up', { bottomsCreepUp: true }, ['slow-failure']],
  [
    'the band moved, shape kept, share fell',
    { bandMoved: true, dutyFell: true },
    ['set-point-change'],
  ],
  ['the band moved out of shape', { bandMoved: true, dutyFell: true, shapeKept: false }, []],
  ['a put-away that decays', { putAway: true, stepDecays: true }, ['warm-load']],
  ['a flag on the probe', { sensorFlags: ['site-range'] }, ['sensor']],
  ['two at once', { dutyRise: 0.2, sensorFlags: ['stuck'] }, ['slow-failure', 'sensor']],
];

test.for(cases)('%s', ([, change, fits]) => {
  expect(names({ ...quiet, ...change })).toEqual(fits);
});

test('a quiet room has no cause, and of an unknown one only the sensor is ruled out', () => {
  expect(faultSignature(quiet)).toEqual({
    fits: [],
    notRuledOut: [],
    unclear: true,
    firstTasks: [],
  });
  const dark = faultSignature(nothing);
  expect(dark.fits).toEqual([]);
  expect(dark.unclear).toBe(true);
  expect(dark.notRuledOut.map(({ fault }) => fault)).toEqual([
    'door',
    'door-ajar',
    'defrost',
    'power-loss',
    'unit-stopped',
    'slow-failure',
    'set-point-change',
    'warm-load',
  ]);
});

test('every cause shows what it was judged by', () => {
  const { fits } = faultSignature({ ...quiet, riseIn5Minutes: kelvin(2), doorOpen: true });
  expect(fits[0]?.checks).toEqual([
    { what: 'rise-in-5-minutes', value: 2, unit: 'K', limit: 1, holds: true },
    { what: 'door-open', value: true, unit: '', limit: true, holds: true },
    { what: 'minutes-to-fall', value: 10, unit: 'min', limit: 30, holds: true },
  ]);
});

test('a door is worth a task only after ten minutes high', () => {
  const open = { ...quiet, riseIn5Minutes: kelvin(2) };
  expect(faultSignature(open).firstTasks).toEqual([]);
  expect(faultSignature(open, 9.9).firstTasks).toEqual([]);
  expect(faultSignature(open, 10).firstTasks).toEqual(['check-door']);
  expect(faultSignature({ ...quiet, supplyOffMinutes: minutes(6) }).firstTasks).toEqual([
    'run-generator',
    'time-to-limit',
  ]);
});
