import { test } from 'vitest';
import {
  alarmLatch,
  calibrated,
  cycleBottom,
  cycleDrift,
  displayUnit,
  fahrenheit,
  fitDriftMargin,
  isLinkWeak,
  isPowerOnValue,
  isSpike,
  offsetCalibration,
  RESTING,
  silentAfterMinutes,
  toFahrenheit,
  twoPointCalibration,
  unitSwapped,
  worstAlarmLatency,
} from '../../../rules/cooler/index.ts';
import { instant } from '../../../rules/units.ts';
import { type Domain, holdsDomain } from './holdsDomain.ts';

// Bounds as the docstrings give them, ours but where a line says otherwise: wide enough for any
// garden's machines, so that a number past them is a wrong unit or a slip of the finger.
const now = instant(0);
const latch = { limit: 5, side: 'above', holdOffMinutes: 10, everyMinutes: 1 } as const;
const value = { kind: 'value', t: now, value: 3 } as const;
const chain = { sampleSeconds: 60, holdSeconds: 60, pollSeconds: 60 };
const points = { raw1: 0.5, reference1: 0, raw2: 20.5, reference2: 20 };
const window = { windowMinutes: 60, everyMinutes: 5 };
const drift = { setPoint: 3, everyMinutes: 5 };
const five = [3, 3, 3, 3, 3];

const domains: readonly Domain[] = [
  // A day of hold-off; from 0.6 s to a day between samples.
  [
    'alarmLatch',
    'hold-off',
    0,
    1440,
    'min',
    (holdOffMinutes) => alarmLatch(RESTING, value, { ...latch, holdOffMinutes }),
  ],
  [
    'alarmLatch',
    'sample period',
    0.01,
    1440,
    'min',
    (everyMinutes) => alarmLatch(RESTING, value, { ...latch, everyMinutes }),
  ],
  [
    'alarmLatch',
    're-arm distance',
    0,
    50,
    'K',
    (rearm) => alarmLatch(RESTING, value, { ...latch, rearm }),
  ],
  // A day, in seconds.
  [
    'worstAlarmLatency',
    'time between samples',
    0,
    86_400,
    's',
    (sampleSeconds) => worstAlarmLatency({ ...chain, sampleSeconds }),
  ],
  [
    'worstAlarmLatency',
    'window or hold-off',
    0,
    86_400,
    's',
    (holdSeconds) => worstAlarmLatency({ ...chain, holdSeconds }),
  ],
  [
    'worstAlarmLatency',
    'poll',
    0,
    86_400,
    's',
    (pollSeconds) => worstAlarmLatency({ ...chain, pollSeconds }),
  ],
  // A week, in minutes.
  [
    'silentAfterMinutes',
    'report time',
    0,
    10_080,
    'min',
    (reportsEach) => silentAfterMinutes(reportsEach),
  ],
  [
    'silentAfterMinutes',
    'promised time',
    0,
    10_080,
    'min',
    (promised) => silentAfterMinutes(5, promised),
  ],
  [
    'isLinkWeak',
    'report time',
    0.01,
    10_080,
    'min',
    (everyMinutes) => isLinkWeak(now, now, { everyMinutes }),
  ],
  ['offsetCalibration', 'raw value', -100, 200, '', (raw) => offsetCalibration(raw)],
  [
    'offsetCalibration',
    'reference',
    -100,
    200,
    '',
    (reference) => offsetCalibration(0.5, reference),
  ],
  [
    'twoPointCalibration',
    'raw value',
    -100,
    200,
    '',
    (raw1) => twoPointCalibration({ ...points, raw1 }),
  ],
  [
    'twoPointCalibration, second',
    'raw value',
    -100,
    200,
    '',
    (raw2) => twoPointCalibration({ ...points, raw2 }),
  ],
  [
    'twoPointCalibration',
    'reference',
    -100,
    200,
    '',
    (reference1) => twoPointCalibration({ ...points, reference1 }),
  ],
  [
    'twoPointCalibration, second',
    'reference',
    -100,
    200,
    '',
    (reference2) => twoPointCalibration({ ...points, reference2 }),
  ],
  ['calibrated', 'raw value', -300, 300, '', (raw) => calibrated(raw, { slope: 1, intercept: 0 })],
  [
    'cycleBottom',
    'window',
    1,
    1440,
    'min',
    (windowMinutes) => cycleBottom([], now, { ...window, windowMinutes }),
  ],
  [
    'cycleBottom',
    'time between samples',
    0.01,
    1440,
    'min',
    (everyMinutes) => cycleBottom([], now, { ...window, everyMinutes }),
  ],
  // From a deep freezer to a hot store.
  ['fitDriftMargin', 'set point', -30, 40, '°C', (setPoint) => fitDriftMargin([], setPoint, 14)],
  [
    'cycleDrift',
    'set point',
    -30,
    40,
    '°C',
    (setPoint) => cycleDrift([], now, { ...drift, setPoint }),
  ],
  ['cycleDrift', 'margin', 0, 20, 'K', (margin) => cycleDrift([], now, { ...drift, margin })],
  [
    'cycleDrift',
    'running share',
    0,
    1,
    '',
    (runningShare) => cycleDrift([], now, { ...drift, runningShare }),
  ],
  // Absolute zero is -273.15 °C by definition, -459.67 °F.
  ['fahrenheit', 'temperature', -460, 2000, '°F', (given) => fahrenheit(given)],
  ['toFahrenheit', 'temperature', -273.15, 1100, '°C', (given) => toFahrenheit(given)],
  ['displayUnit', 'displayed number', -100, 300, '', (shown) => displayUnit(shown, 3)],
  ['displayUnit', 'probe temperature', -60, 80, '°C', (median) => displayUnit(3, median)],
  ['unitSwapped', 'set value', -100, 300, '', (before) => unitSwapped(before, 3)],
  ['unitSwapped, second', 'set value', -100, 300, '', (after) => unitSwapped(3, after)],
  // Past absolute zero, and far past what any probe of a garden sends.
  ['isPowerOnValue', 'temperature', -300, 300, '°C', (given) => isPowerOnValue(given, 3)],
  ['isSpike', 'temperature', -300, 300, '°C', (given) => isSpike(given, five)],
];

test.for(domains)('%s takes its %s from %s to %s %s and nothing past it', holdsDomain);
