import { expect, test } from 'vitest';
import {
  anomalyWeight,
  batchSpread,
  bestStop,
  daysToHarvest,
  daysToReach,
  flowerToRipe,
  forecastWeight,
  harvestWindow,
  keepCleanOrCut,
  lightTerm,
  mayCutBack,
  placeUnits,
  readyProbability,
  rotChance,
  sowingDay,
  unitsAhead,
} from '../../../rules/batches/index.ts';

const growing = { pastDegreeDays: [100], soFar: 10, perDay: 5, confidence: 0.8, perDaySd: 1 };
const plan = { pastDegreeDays: [100], unitsBefore: [10], keepDays: 2 };
const rot = { rotWet: 0.1, rotDry: 0.1, wetChance: 0.1 };
const patch = {
  ...rot,
  cohorts: [{ mass: 1, units: 3 }],
  units: [5],
  killed: [0.1],
  margin: 1,
  perPicking: 1,
  perDay: 1,
};
const autumn = {
  juneBearing: true,
  daysSinceLastPicking: 1,
  leavesFlatAndRed: null,
  lows: [],
  dayLength: null,
  growerInsists: false,
};
const cut = { hygiene: 1, cost: 1, nextYear: 1, lostShare: 2 };

test.for<[string, () => unknown]>([
  ['number of past batches from 1 to 10000, got 0', () => batchSpread([])],
  ['units of a batch from 1 to 10000 °C d, got 0', () => batchSpread([0])],
  ['units so far from 0 to 10000 °C d, got -1', () => harvestWindow({ ...growing, soFar: -1 })],
  ['units per day from 0 to 60 °C d, got 61', () => daysToHarvest({ ...growing, perDay: 61 })],
  [
    'spread of units per day from 0 to 60 °C d, got 61',
    () => daysToHarvest({ ...growing, perDaySd: 61 }),
  ],
  ['confidence from 0.5 to 0.99, got 1', () => harvestWindow({ ...growing, confidence: 1 })],
  ['units of the batch from 0 to 10000 °C d, got -1', () => readyProbability([100], -1)],
  [
    'forecast anomaly from -60 to 60 °C d, got 61',
    () => anomalyWeight([{ forecast: 61, observed: 0 }]),
  ],
  [
    'observed anomaly from -60 to 60 °C d, got -61',
    () => anomalyWeight([{ forecast: 0, observed: -61 }]),
  ],
  ['days ahead from 0 to 60 d, got 61', () => forecastWeight(61)],
  ['climate units of a day from 0 to 60 °C d, got 61', () => unitsAhead([], [61])],
  ['forecast units of a day from 0 to 60 °C d, got -1', () => unitsAhead([-1], [1])],
  ['weight of a forecast from 0 to 1, got 2', () => unitsAhead([1], [1], () => 2)],
  ['units outdoors from 0 to 60 °C d, got 61', () => placeUnits([], 61)],
  ['units needed from 0 to 10000 °C d, got 10001', () => daysToReach([], 10_001)],
  ['units of a day from 0 to 60 °C d, got 61', () => daysToReach([61], 1)],
  ['wanted chance from 0.5 to 0.99, got 0.4', () => sowingDay({ ...plan, chance: 0.4 })],
  ['chance of being too early from 0 to 1, got 2', () => sowingDay({ ...plan, mostEarly: 2 })],
  ['days it keeps from 0 to 60 d, got 61', () => sowingDay({ ...plan, keepDays: 61 })],
  ['days left from 0 to Infinity d, got -1', () => sowingDay({ ...plan, daysLeft: -1 })],
  ['units of a day from 0 to 60 °C d, got 61', () => sowingDay({ ...plan, unitsBefore: [61] })],
  [
    'daily light integral from 0 to 100 mol m⁻² d⁻¹, got 101',
    () => lightTerm([{ degreeDays: 100, light: 101 }]),
  ],
  ['units of a batch from 1 to 10000 °C d, got 0', () => lightTerm([{ degreeDays: 0, light: 1 }])],
  ['mean temperature from -10 to 40 °C, got 41', () => flowerToRipe(41)],
  ['chance of rot on a wet day from 0 to 1, got 2', () => rotChance({ ...rot, rotWet: 2 })],
  ['chance of rot on a dry day from 0 to 1, got 2', () => rotChance({ ...rot, rotDry: 2 })],
  ['chance of a wet day from 0 to 1, got -1', () => rotChance({ ...rot, wetChance: -1 })],
  ['number of nights from 1 to Infinity, got 0', () => bestStop({ ...patch, killed: [] })],
  ['chance of a killing night from 0 to 1, got 2', () => bestStop({ ...patch, killed: [2] })],
  ['units of a day from 0 to 60 °C d, got 61', () => bestStop({ ...patch, units: [61] })],
  [
    'mass of a cohort from 0 to 1000000 kg, got -1',
    () => bestStop({ ...patch, cohorts: [{ mass: -1, units: 3 }] }),
  ],
  [
    'units to ripe from 0 to 10000 °C d, got -1',
    () => bestStop({ ...patch, cohorts: [{ mass: 1, units: -1 }] }),
  ],
  [
    'share lost by cutting from 0 to 1, got 2',
    () => keepCleanOrCut(patch, { ...rot, cost: 1 }, cut),
  ],
  ['low of a night from -60 to 60 °C, got 61', () => mayCutBack({ ...autumn, lows: [61] })],
  ['length of the day from 0 to 24 h, got 25', () => mayCutBack({ ...autumn, dayLength: 25 })],
  [
    'days since the last picking from 0 to 1000 d, got -1',
    () => mayCutBack({ ...autumn, daysSinceLastPicking: -1 }),
  ],
])('Expected %s', ([sentence, call]) => {
  expect(call).toThrow(new RangeError(`Expected ${sentence}`));
});
