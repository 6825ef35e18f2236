import { expect, test } from 'vitest';
import {
  actThreshold,
  advectiveFrost,
  alarmAt,
  conditionalOdds,
  coolingCurve,
  coverBy,
  coverGain,
  crossingTime,
  escalates,
  expectedCosts,
  firstFrostFit,
  fitNightLow,
  frostBefore,
  frostDateCurve,
  frostDateQuantile,
  frostDates,
  frostOdds,
  otherNights,
  predictNightLow,
  probabilityBelow,
  probabilityBelowBy,
  refittedLow,
  relativeValue,
  remainingSpread,
  riskOverYears,
  shiftedLow,
  siteFromStation,
  sprinklingSafe,
  thresholdAtStation,
  unsureSky,
  untrainedLow,
  weibullQuantile,
  worthActing,
} from '../../../rules/frost/index.ts';
import { celsius, instant } from '../../../rules/units.ts';

const clear = { start: 1, low: -5, nightHours: 14 };
const low = { mean: -1, sd: 1, df: 8 };
const tonight = { ...low, start: 3, nightHours: 13 };
const sky = { clear: 0.5, radiation: 0.5, other: 0.5 };
const choice = { cost: 1, loss: 2 };
const few = { probabilities: [0.5], outcomes: [1], ratio: 0.2 };
const curve = { mean: 100, sd: 9, df: 14 };
const station = { mean: 100, sd: 9, n: 15 };
const said = { probability: 0.5, crossing: null };
const night = (temperature: number, dew: number | null = null, low = -1) => ({
  temperature: celsius(temperature),
  dewPoint: dew === null ? null : celsius(dew),
  low: celsius(low),
});
const three = [night(1), night(2), night(3)];
const rule = { threshold: 0, hemisphere: 'north', side: 'first' } as const;

test.for<[string, () => unknown]>([
  [
    'cost from 0 to 1.7976931348623157e+308 of money, got -1',
    () => actThreshold({ ...choice, cost: -1 }),
  ],
  [
    'loss from 0 to 1.7976931348623157e+308 of money, got -1',
    () => actThreshold({ ...choice, loss: -1 }),
  ],
  ['effect from 0 to 1, got 2', () => expectedCosts({ ...choice, effect: 2 }, 0.5)],
  ['probability from 0 to 1, got 2', () => expectedCosts(choice, 2)],
  ['probability from 0 to 1, got -1', () => worthActing({ ...choice, probability: -1 })],
  ['effect from 0 to 1, got 2', () => worthActing({ ...choice, probability: 1, effect: 2 })],
  ['air temperature from -100 to 100 °C, got 101', () => advectiveFrost(101, 3, 0)],
  ['wind from 0 to 100 m/s, got 101', () => advectiveFrost(1, 101, 0)],
  ['threshold from -100 to 100 °C, got 101', () => advectiveFrost(1, 3, 101)],
  ['critical temperature from -40 to 20 °C, got 21', () => alarmAt(21, 'bare')],
  [
    'chance of being spared until now from 0 to 1, got 2',
    () => conditionalOdds({ now: 2, later: 0 }),
  ],
  [
    'chance of being spared until later from 0 to 0.5, got 0.6',
    () => conditionalOdds({ now: 0.5, later: 0.6 }),
  ],
  [
    'share of seasons from 0 to 1, got 2',
    () => conditionalOdds({ now: 0.5, later: 0.4, share: 2 }),
  ],
  [
    'start of the night from -100 to 100 °C, got 101',
    () => coolingCurve({ ...clear, start: 101 }, 3),
  ],
  [
    'low of the night from -100 to 100 °C, got -101',
    () => coolingCurve({ ...clear, low: -101 }, 3),
  ],
  [
    'length of the night from 0 to 24 h, got 25',
    () => coolingCurve({ ...clear, nightHours: 25 }, 3),
  ],
  ['hours after sunset from 2 to 14 h, got 1', () => coolingCurve(clear, 1)],
  ['threshold from -100 to 100 °C, got -101', () => crossingTime(clear, -101)],
  ['time the work takes from 0 to 1440 min, got 1441', () => coverBy(instant(0), null, 1441)],
  ['gain of a cover from -20 to 20 K, got 21', () => coverGain([{ gain: 21 }])],
  ['probability said from 0 to 1, got 2', () => escalates({ ...said, probability: 2 }, said)],
  ['probability from 0 to 1, got 2', () => escalates(said, { ...said, probability: 2 })],
  ['number of nights from 3 to 10000, got 2', () => fitNightLow(three.slice(1))],
  ['evening temperature from -60 to 60 °C, got 61', () => fitNightLow([...three, night(61)])],
  ['dew point from -80 to 60 °C, got -81', () => fitNightLow([...three, night(1, -81)])],
  ['low of the night from -60 to 60 °C, got -61', () => fitNightLow([...three, night(1, 0, -61)])],
  [
    'evening temperature from -60 to 60 °C, got 61',
    () => predictNightLow(fitNightLow(three), night(61)),
  ],
  ['dew point from -80 to 60 °C, got 61', () => predictNightLow(fitNightLow(three), night(1, 61))],
  ['evening temperature from -60 to 60 °C, got -61', () => untrainedLow(-61)],
  ['season day of frost from 0 to 366, got 367', () => firstFrostFit([367])],
  ['number of seasons from 2 to 10000, got 1', () => frostDateCurve({ ...station, n: 1 })],
  ['spread of frost dates from 5e-324 to 366 d, got 0', () => frostBefore({ ...curve, sd: 0 }, 1)],
  ['season day from 0 to 366, got 367', () => frostBefore(curve, 367)],
  ['share of seasons from 0 to 1, got 2', () => frostBefore(curve, 1, 2)],
  ['share of seasons from 0 to 1, got 2', () => frostDateQuantile([], 0.5, { share: 2 })],
  ['probability from above 0 to below 1, got 1', () => frostDateQuantile([], 1)],
  ['threshold from -100 to 100 °C, got 101', () => frostDates([], { ...rule, threshold: 101 })],
  [
    'end of the frost window from 9 to 366, got 8',
    () => frostDates([], { ...rule, window: [9, 8] }),
  ],
  ['season day of frost from 0 to 366, got 367', () => frostOdds([367], { day: 1, days: 1 })],
  ['season day from 0 to 366, got 367', () => frostOdds([], { day: 367, days: 1 })],
  ['days ahead from 0 to 366, got 367', () => frostOdds([], { day: 1, days: 367 })],
  ['threshold from -100 to 100 °C, got 101', () => otherNights([], 101, '2025-11-03')],
  ['mean from -100 to 100 °C, got 101', () => probabilityBelow({ ...low, mean: 101 }, 0)],
  ['spread from 0 to 100 K, got 101', () => probabilityBelow({ ...low, sd: 101 }, 0)],
  ['threshold from -100 to 100 °C, got 101', () => probabilityBelow(low, 101)],
  [
    'start of the night from -100 to 100 °C, got 101',
    () => probabilityBelowBy({ ...tonight, start: 101 }, 0, 5),
  ],
  [
    'length of the night from 2.1 to 24 h, got 2',
    () => probabilityBelowBy({ ...tonight, nightHours: 2 }, 0, 2),
  ],
  ['hours after sunset from 2 to 13 h, got 14', () => probabilityBelowBy(tonight, 0, 14)],
  ['threshold from -100 to 100 °C, got -101', () => probabilityBelowBy(tonight, -101, 5)],
  [
    'reading of the night from -100 to 100 °C, got 101',
    () => shiftedLow(clear, { after: 3, value: 101 }),
  ],
  [
    'hours after sunset from 0 to 14 h, got 15',
    () => refittedLow(clear, [{ after: 15, value: 1 }]),
  ],
  [
    'reading of the night from -100 to 100 °C, got -101',
    () => refittedLow(clear, [{ after: 5, value: -101 }]),
  ],
  [
    'number of forecasts from 1 to Infinity, got 0',
    () => relativeValue({ ...few, probabilities: [] }),
  ],
  ['number of outcomes from 1 to 1, got 0', () => relativeValue({ ...few, outcomes: [] })],
  ['cost-loss ratio from 0 to 1, got 2', () => relativeValue({ ...few, ratio: 2 })],
  ['probability from 0 to 1, got 2', () => relativeValue({ ...few, probabilities: [2] })],
  ['outcome from 0 to 1, got 2', () => relativeValue({ ...few, outcomes: [2] })],
  ['base rate from 0 to 1, got 2', () => relativeValue({ ...few, baseRate: 2 })],
  ['spread from 0 to 100 K, got 101', () => remainingSpread(101, 3, 14)],
  ['length of the night from 2.1 to 24 h, got 25', () => remainingSpread(1, 3, 25)],
  ['hours after sunset from 2 to 14 h, got 15', () => remainingSpread(1, 15, 14)],
  ['probability from 0 to 1, got 2', () => riskOverYears(2, 5)],
  ['years from 0 to 1000, got 1001', () => riskOverYears(0.2, 1001)],
  ['number of seasons from 2 to 10000, got 1', () => siteFromStation({ ...station, n: 1 }, [])],
  ['offset of frost dates from -183 to 183 d, got 184', () => siteFromStation(station, [184])],
  ['wet-bulb temperature from -60 to 60 °C, got 61', () => sprinklingSafe(61, 0)],
  ['critical temperature from -60 to 60 °C, got -61', () => sprinklingSafe(0, -61)],
  ['threshold from -100 to 100 °C, got 101', () => thresholdAtStation(101, [])],
  ['chance of a clear night from 0 to 1, got 2', () => unsureSky({ ...sky, clear: 2 })],
  ['chance on a clear night from 0 to 1, got 2', () => unsureSky({ ...sky, radiation: 2 })],
  ['chance on other nights from 0 to 1, got 2', () => unsureSky({ ...sky, other: 2 })],
  ['probability from 0 to 1, got 2', () => weibullQuantile([], 2)],
])('Expected %s', ([sentence, call]) => {
  expect(call).toThrow(new RangeError(`Expected ${sentence}`));
});

test('unknown in, unknown out', () => {
  expect(coolingCurve({ ...clear, start: null }, 3)).toBeNull();
  expect(crossingTime(clear, null)).toBeNull();
  expect(probabilityBelow({ ...low, mean: null }, 0)).toBeNull();
  expect(probabilityBelowBy(tonight, 0, null)).toBeNull();
  expect(worthActing({ ...choice, probability: null })).toBeNull();
  expect(conditionalOdds({ now: null, later: 0.2 })).toBeNull();
  expect(frostOdds([1, 2], { day: null, days: 7 })).toBeNull();
  expect(remainingSpread(null, 3, 14)).toBeNull();
  expect(untrainedLow(null)).toBeNull();
  expect(otherNights([], null, '2025-11-03')).toBeNull();
  expect(sprinklingSafe(null, 0)).toBeNull();
  expect(predictNightLow(fitNightLow(three), { temperature: null })).toBeNull();
});
