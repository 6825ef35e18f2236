import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  actThreshold,
  alarmAt,
  coverGain,
  damageLimit,
  damageLimits,
  expectedCosts,
  probabilityBelow,
  probabilityInside,
  relativeValue,
  USUAL_COST_LOSS,
  worthActing,
} from '../../../rules/frost/index.ts';
import { brierScore, brierSkill } from '../../../rules/statistics/index.ts';
import { truth } from '../../truth/index.ts';

test('15 against 90, four fifths prevented: act above 0.2083', () => {
  // By hand: 15 / 72; at 0.3 acting costs 15 + 0.3 x 0.2 x 90, waiting 0.3 x 90.
  const choice = { cost: 15, loss: 90, effect: 0.8 };
  expect(actThreshold(choice)).toBeCloseTo(15 / 72, 12);
  expect(expectedCosts(choice, 0.3).act).toBeCloseTo(20.4, 9);
  expect(expectedCosts(choice, 0.3).wait).toBeCloseTo(27, 9);
  expect(actThreshold({ cost: 72, loss: 90, effect: 0.8 })).toBeNull();
  expect(actThreshold({ cost: null, loss: 90 })).toBeNull();
  expect(USUAL_COST_LOSS).toBe(0.2); // common practice, no source
});

test('acting is worth it exactly when it is expected to cost less', () => {
  const money = fc.double({ min: 0.01, max: 1000, noNaN: true });
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(
    fc.property(money, money, share, share, (cost, loss, effect, probability) => {
      const { act, wait } = expectedCosts({ cost, loss, effect }, probability);
      const pays = worthActing({ cost, loss, effect, probability });
      return Math.abs(act - wait) < 1e-9 || pays === act < wait;
    }),
  );
});

const nights = {
  probabilities: [0.02, 0.1, 0.35, 0.6, 0.15, 0.05, 0.25, 0.01, 0.03, 0.5],
  outcomes: [0, 0, 1, 1, 0, 0, 0, 0, 0, 0],
};

test('ten nights of forecasts are worth three quarters of knowing', () => {
  const found = relativeValue({ ...nights, ratio: 0.2 });
  expect(found.acted).toBe(4);
  expect(found.forecastCost).toBeCloseTo(0.08, 12);
  expect(found.climateCost).toBeCloseTo(0.2, 12);
  expect(found.perfectCost).toBeCloseTo(0.04, 12);
  expect(found.value).toBeCloseTo(0.75, 9);
  expect(brierScore(nights.probabilities, nights.outcomes)).toBeCloseTo(0.09314, 9);
  expect(brierSkill(nights.probabilities, nights.outcomes, 0.2)).toBeCloseTo(0.417875, 6);
});

test('a base rate from elsewhere is used, and knowing what never comes saves nothing', () => {
  expect(relativeValue({ ...nights, ratio: 0.2, baseRate: 0.5 }).climateCost).toBe(0.2);
  expect(relativeValue({ ...nights, ratio: 0.2, baseRate: 0.1 }).climateCost).toBe(0.1);
  const dry = { probabilities: [0.1, 0.3], outcomes: [0, 0], ratio: 0.2 };
  expect(relativeValue(dry).value).toBeNull();
});

test('six nights: Brier 0.0521, skill 0.7917, and 0.8204 against a base rate from outside', () => {
  // NumPy.
  const p = [0.1, 0.3, 0.8, 0.6, 0.05, 0.9];
  const o = [0, 0, 1, 1, 0, 1];
  expect(brierScore(p, o)).toBeCloseTo(0.052083, 6);
  expect(brierSkill(p, o, 0.5)).toBeCloseTo(0.791667, 6);
  expect(brierSkill(p, o, 0.3)).toBeCloseTo(0.820402, 6);
});

const gains = truth('frost/coverGain.csv', ['gain']);
const low = { mean: -0.5, sd: 0.8, df: 8 };

test('plan with the gain that nine nights in ten reach', () => {
  const found = coverGain(gains);
  expect(found.planWith).toBeCloseTo(0.22, 9);
  expect(found.median).toBeCloseTo(1.15, 9);
  expect(found.nights).toBe(10);
  expect(probabilityBelow(low, 0)).toBeCloseTo(0.725311, 6);
  expect(probabilityInside(low, gains, 0)).toBeCloseTo(0.276782, 6);
});

test('eight nights plan with nothing, and a spoilt night does not count', () => {
  expect(coverGain(gains.slice(0, 9)).planWith).toBeGreaterThan(0);
  const eight = gains.slice(0, 8);
  expect(coverGain(eight)).toMatchObject({ planWith: 0, nights: 8 });
  expect(probabilityInside(low, eight, 0)).toBe(probabilityBelow(low, 0));
  expect(coverGain([...eight, { gain: 9, spoilt: true }, { gain: null }]).nights).toBe(8);
  expect(coverGain([])).toEqual({ planWith: 0, median: null, nights: 0 });
});

test('under a cover that always gains, frost is never likelier', () => {
  const gain = fc.record({ gain: fc.double({ min: 0, max: 5, noNaN: true }) });
  fc.assert(
    fc.property(
      fc.array(gain, { minLength: 9, maxLength: 20 }),
      fc.double({ min: -5, max: 5, noNaN: true }),
      (list, at) => probabilityInside(low, list, at) <= probabilityBelow(low, at) + 1e-12,
    ),
  );
});

const limits = truth(
  'frost/damageLimits.csv',
  ['critical', 'coldest', 'warmest'],
  ['crop', 'stage', 'kind'],
);

test.for(limits)('$crop, $stage: $critical °C', (row) => {
  expect(damageLimit(row.crop, row.stage)).toMatchObject({
    critical: row.critical,
    range: [row.coldest, row.warmest],
    kind: row.kind,
  });
});

test('every limit has a check and a source, and none lies outside its range', () => {
  expect(damageLimits).toHaveLength(limits.length);
  for (const { critical, range, source } of damageLimits) {
    expect(source.length).toBeGreaterThan(10);
    expect(critical).toBeGreaterThanOrEqual(range[0]);
    expect(critical).toBeLessThanOrEqual(range[1]);
  }
  expect(damageLimit('moss', 'any')).toBeNull();
});

test('the alarm stands 2 K above for a shielded probe, 1 K for a bare bead', () => {
  expect(alarmAt(-1.1, 'shielded')).toBeCloseTo(0.9, 12);
  expect(alarmAt(-1.1, 'bare')).toBeCloseTo(-0.1, 12);
  expect(alarmAt(null, 'bare')).toBeNull();
});
