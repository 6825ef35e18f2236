import { expect, test } from 'vitest';
import {
  anthracnoseFruitIncidence,
  botrytisFruitIncidence,
  botrytisModel,
  classOfProgress,
  incidenceOfHours,
  infectionParameters,
  infectionProgress,
  infectiousMorning,
  sporulationNight,
} from '../../../rules/disease/index.ts';
import { celsius, hours } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';
import { at } from '../wetness/series.ts';
import { piece, tenMinutes } from './circumstances.ts';

const two = (row: { first_h: number; first_c: number; then_h: number; then_c: number }) => [
  { hours: row.first_h, temperature: celsius(row.first_c) },
  { hours: row.then_h, temperature: celsius(row.then_c) },
];

test.for(truth('disease/hourlyForm.csv', ['first_h', 'first_c', 'then_h', 'then_c', 'index']))(
  '$first_h h at $first_c °C and $then_h h at $then_c °C: index $index',
  (row) => expect(incidenceOfHours(two(row), botrytisModel)).toBeCloseTo(row.index, 6),
);

test.for(truth('disease/incidenceEdges.csv', ['air_c', 'wet_h', 'index'], ['model']))(
  '$model: $wet_h h at $air_c °C, index $index',
  ({ air_c, wet_h, index, model }) => {
    const incidence = model === 'mould' ? botrytisFruitIncidence : anthracnoseFruitIncidence;
    const got = incidence(celsius(air_c), hours(wet_h));
    if (index === 0) expect(got).toBe(0);
    else expect(got).toBeCloseTo(index, 4);
  },
);

test.for(
  truth('disease/progress.csv', ['first_h', 'first_c', 'then_h', 'then_c', 'progress'], ['class']),
)('lettuce, $first_h h at $first_c °C and $then_h h at $then_c °C: $progress, $class', (row) => {
  const progress = infectionProgress(two(row), infectionParameters['lettuce-downy-mildew']);
  expect(Math.abs(progress - row.progress)).toBeLessThan(6e-5);
  expect(classOfProgress(progress)).toBe(row.class);
});

test.for(truth('disease/sporulation.csv', ['damp_h', 'silent_h'], ['verdict']))(
  '$damp_h damp hours of the dark and $silent_h silent ones: $verdict',
  ({ damp_h, silent_h, verdict }) => {
    const air = tenMinutes(24, (hour) => {
      if (hour >= 8 && hour < 8 + damp_h - 1e-3) return [18, 99];
      return hour >= 8 && hour < 8 + damp_h + silent_h - 1e-3 ? null : [18, 70];
    });
    expect(sporulationNight({ air }, { from: at(8), to: at(20) })).toBe(verdict);
  },
);

test.for(truth('disease/wetMorning.csv', ['until_hour', 'air_c', 'later_c'], ['verdict']))(
  'lettuce wet from 06:00 until $until_hour at $air_c °C, then $later_c °C: $verdict',
  ({ until_hour, air_c, later_c, verdict }) => {
    const wetness = [
      piece('wet', 6, 9, air_c),
      piece('wet', 9, until_hour, later_c),
      piece('dry', until_hour, 14, later_c),
    ];
    expect(infectiousMorning(wetness, at(6))).toBe(verdict);
  },
);
