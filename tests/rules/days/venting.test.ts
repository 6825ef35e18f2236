import { expect, test } from 'vitest';
import {
  CLOSED_BEFORE_SUNSET,
  cropFloors,
  cropToVentFor,
  duskVents,
  EGGPLANT_FRUIT_SET,
  morningOpening,
  PURGE_MINUTES,
  reasonOrder,
  strongestReason,
  ventForHeat,
  ventTemperatures,
  windCaution,
} from '../../../rules/days/index.ts';
import { celsius, gramsPerCubicMetre } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

test.for(truth('days/ventTemperatures.csv', ['from_c', 'to_c', 'start_c', 'limit_c'], ['crop']))(
  '$crop wants air from $start_c °C, and never over $limit_c °C',
  (row) => {
    const crop = ventTemperatures[row.crop as keyof typeof ventTemperatures];
    expect(crop).toMatchObject({
      optimum: [row.from_c, row.to_c],
      start: row.start_c,
      limit: row.limit_c,
    });
    expect(crop.source).not.toBe('');
  },
);

test.for(truth('days/cropFloors.csv', ['floor_c'], ['crop']))(
  '$crop is kept at $floor_c °C or more',
  ({ floor_c, crop }) => expect(cropFloors[crop as keyof typeof cropFloors]).toBe(floor_c),
);

test.for(truth('days/duskVents.csv', ['low_c', 'floor_c'], ['does']))(
  'with $low_c °C to come and a floor of $floor_c °C: $does',
  ({ low_c, floor_c, does }) => {
    expect(duskVents(celsius(low_c), celsius(floor_c), null).does).toBe(does);
  },
);

test('before closing, damp air is purged while that dries', () => {
  const purge = (gain: number | null) =>
    duskVents(celsius(8), celsius(12), gain === null ? null : gramsPerCubicMetre(gain)).purge;
  expect([purge(0.3), purge(0.29), purge(null)]).toEqual([true, false, null]);
  expect(duskVents(celsius(20), celsius(12), gramsPerCubicMetre(5)).purge).toBe(false);
  // Ours, after Savage 1980.
  expect([...PURGE_MINUTES, CLOSED_BEFORE_SUNSET]).toEqual([15, 20, 60]);
  expect(EGGPLANT_FRUIT_SET).toBe(15); // Mediterranean greenhouse pollen study, abstract
});

test('without a forecast or an outside probe the grower is asked', () => {
  expect(duskVents(null, celsius(12), gramsPerCubicMetre(2))).toEqual({
    does: 'ask-grower',
    purge: null,
  });
  expect(duskVents(celsius(Number.NaN), celsius(12), null).does).toBe('ask-grower');
});

test('in the morning a house is opened when the sun has warmed it and opening dries', () => {
  const asked = (warmed: number | null, gain: number | null) =>
    morningOpening(warmed, gain === null ? null : gramsPerCubicMetre(gain));
  expect([asked(0.5, 0.3), asked(0.49, 0.3), asked(0.5, 0.29)]).toEqual([true, false, false]);
  expect([asked(null, 0.3), asked(0.5, null), asked(null, null)]).toEqual([null, null, null]);
  expect([asked(0.4, null), asked(null, 0.1)]).toEqual([false, false]);
});

test('heat: from the start while rising, from 3 K above it anyway, urgent 2 K below the limit', () => {
  // Basil: start 27, limit 33 °C (common practice, no source).
  const asked = (now: number | null, earlier: number | null) =>
    ventForHeat(
      now === null ? null : celsius(now),
      earlier === null ? null : celsius(earlier),
      ventTemperatures.basil,
    );
  expect(asked(26.99, 20)).toBe('leave');
  expect(asked(27, 25.99)).toBe('open');
  expect(asked(27, 26)).toBe('leave'); // by 1 K exactly is not more than 1 K
  expect(asked(27, null)).toBe('unknown');
  expect(asked(30, 30)).toBe('open');
  expect(asked(29.99, 29.99)).toBe('leave');
  expect(asked(31, 33)).toBe('urgent');
  expect(asked(30.99, 33)).toBe('open');
  expect(asked(null, 30)).toBe('unknown');
  expect(asked(Number.NaN, 30)).toBe('unknown');
});

test('a mixed house is vented for the most sensitive crop that can not be moved', () => {
  const crops = (...list: readonly [keyof typeof ventTemperatures, boolean][]) =>
    cropToVentFor(list.map(([crop, movable]) => ({ crop, movable })));
  expect(crops(['eggplant', false], ['tomato', false])).toBe('tomato');
  expect(crops(['eggplant', false], ['leafy-greens', true])).toBe('eggplant');
  expect(crops(['eggplant', false], ['cucurbits', false])).toBe('cucurbits'); // same start, lower limit
  expect(crops(['basil', true])).toBeNull();
});

test('no task to open above 40 km/h gusts, and secure above 50', () => {
  // Ours; 40 and 50 km/h are 11.11 and 13.89 m/s.
  expect([11.1, 11.12, 13.88, 13.9].map((gust) => windCaution(gust))).toEqual([
    'no-objection',
    'do-not-open',
    'do-not-open',
    'secure',
  ]);
  expect(windCaution(null)).toBeNull();
  expect(() => windCaution(100.1)).toThrow('Expected wind gust from 0 to 100 m/s, got 100.1');
  expect(() => windCaution(-0.1)).toThrow(RangeError);
  expect(windCaution(100)).toBe('secure');
});

test('danger goes before cold, cold before heat, heat before wetness, wetness before comfort', () => {
  expect(reasonOrder).toEqual(['danger', 'cold', 'heat', 'wetness', 'comfort']);
  const pulls = [
    { reason: 'wetness' as const, does: 'open' },
    { reason: 'danger' as const, does: 'keep shut' },
    { reason: 'heat' as const, does: 'open' },
  ];
  const { winner, overridden } = strongestReason(pulls);
  expect(winner?.does).toBe('keep shut');
  expect(overridden.map(({ reason }) => reason)).toEqual(['heat', 'wetness']);
  expect(strongestReason([])).toEqual({ winner: null, overridden: [] });
});
