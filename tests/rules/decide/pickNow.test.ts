import { expect, test } from 'vitest';
import {
  decide,
  type PlaceNow,
  type PushedForecast,
  taskKey,
} from '../../../rules/decide/index.ts';
import { celsius, HOUR, instant, MINUTE, minutes } from '../../../rules/units.ts';
import { at, outside, pastNights, patch, snapshot, spot } from './makeSnapshot.ts';

// 45° N, 0° E on 21 December: sunset 16:21, sunrise 07:35 UTC (suncalc, astronomy-engine).
const sunset = at('2025-12-21T16:21');
const afternoon = at('2025-12-21T15:10');
const nights = pastNights(14);
// By hand: 60 minutes at 16 an hour cost 16; of 80 at stake that is worth it from 20 % on.
const picking = {
  minutes: minutes(60),
  value: 80,
  damage: celsius(-2.2),
  damageFrom: 'told in the farm file',
};

function ask(
  wish: Partial<PlaceNow>,
  more: { now?: number; standing?: string[]; pushed?: PushedForecast[]; places?: PlaceNow[] } = {},
) {
  const { now = afternoon, standing = [], pushed = [], places = [] } = more;
  const outlook = decide(snapshot(now, { places: [patch(wish), ...places], standing, pushed }));
  expect(outlook.failures).toEqual([]);
  return {
    said: outlook.decisions.find(({ kind }) => kind === 'pick-now'),
    frost: outlook.frost,
  };
}
const grass = (temperature: number, now = afternoon) =>
  spot(now, { spot: 'grass', temperature, nights });

test('where nobody said that anything is ripe, nobody is asked to pick', () => {
  expect(ask({ spots: [grass(-5)] }).said).toBeUndefined();
  expect(ask({ spots: [grass(-5)], picking: null }).said).toBeUndefined();
});

test('picking is asked for exactly when the chance is above cost / value', () => {
  const seen = new Set<string>();
  for (let warm = -4; warm <= 22; warm += 0.5) {
    const { said, frost } = ask({ spots: [grass(warm)], picking });
    const p = frost[0]?.pBelow.p ?? Number.NaN; // the same limit as the covers' here
    expect(said?.verdict, `P ${p}`).toBe(p > 0.2 ? 'act' : 'leave');
    seen.add(said?.verdict ?? '');
    if (said?.verdict === 'act') expect(said.saves.money).toBeCloseTo(80 * p - 16, 9);
  }
  expect([...seen].sort()).toEqual(['act', 'leave']);
});

test('it is to be done before dark, the hour of work counted in', () => {
  const { said } = ask({ spots: [grass(3)], picking });
  if (said?.verdict !== 'act') throw new Error('Expected act');
  expect(Math.abs((said.doBy ?? 0) - (sunset - HOUR))).toBeLessThan(MINUTE);
  expect(Math.abs((said.from ?? 0) - (sunset - 7 * HOUR))).toBeLessThan(MINUTE);
  const early = at('2025-12-21T09:00');
  expect(ask({ spots: [grass(3, early)], picking }, { now: early }).said?.verdict).toBe('leave');
});

test('covers that are on are no reason to leave ripe fruit out', () => {
  const { said } = ask({ spots: [grass(3)], picking, covered: true });
  expect(said?.verdict).toBe('act');
});

test('without a probe of its own a place can be called by the one outside, but never called safe', () => {
  const out = (t: number) => outside(spot(afternoon, { spot: 'air', temperature: t, nights }));
  expect(ask({ picking }, { places: [out(3)] }).said?.verdict).toBe('act');
  expect(ask({ picking }, { places: [out(25)] }).said).toMatchObject({
    verdict: 'unknown',
    missing: ['night-forecast'],
  });
  expect(ask({ picking }).said?.verdict).toBe('unknown');
});

const rain = (
  mm: readonly number[],
  { issued = afternoon - HOUR, from = Number(afternoon) } = {},
) => ({
  source: 'met',
  issuedAt: instant(issued),
  temperature: { t: [], value: [] },
  rain: { t: mm.map((_, i) => instant(from + (i + 1) * HOUR)), value: mm },
  nights: [],
});
const mild = { spots: [grass(15)], picking };

test('rain that somebody foretells is a reason to pick before it begins', () => {
  const { said } = ask(mild, { pushed: [rain([0, 0, 3, 3])] });
  if (said?.verdict !== 'act') throw new Error('Expected act');
  expect(said.because[0]).toMatchObject({ what: 'rain-ahead', value: 6, limit: 5, unit: 'mm' });
  expect(said.doBy).toBe(afternoon + 2 * HOUR);
});

test.for([
  ['a drizzle', rain([1, 1, 1])],
  ['rain after tomorrow', rain([0, 9], { from: afternoon + 30 * HOUR })],
  ['a forecast of the day before yesterday', rain([9, 9], { issued: afternoon - 40 * HOUR })],
  ['a forecast without rain', rain([])],
] as const)('%s is no reason to pick', ([, pushed]) => {
  expect(ask(mild, { pushed: [pushed] }).said?.verdict).toBe('leave');
});

test('once asked because of rain, it stays asked until clearly less is foretold', () => {
  const standing = [taskKey({ kind: 'pick-now', place: 'south-patch', subject: null })];
  expect(ask(mild, { standing, pushed: [rain([4])] }).said?.verdict).toBe('act');
  expect(ask(mild, { standing, pushed: [rain([2])] }).said?.verdict).toBe('leave');
});
