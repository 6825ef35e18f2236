import { expect, test } from 'vitest';
import { decide, type PlaceNow, type Snapshot, taskKey } from '../../../rules/decide/index.ts';
import { damageShare } from '../../../rules/frost/index.ts';
import { celsius, HOUR, MINUTE, minutes } from '../../../rules/units.ts';
import { at, basil, outside, pastNights, patch, snapshot, spot } from './makeSnapshot.ts';

// 45° N, 0° E on 21 December: sunset 16:21, sunrise 07:35 UTC (suncalc, astronomy-engine).
const sunset = at('2025-12-21T16:21');
const afternoon = at('2025-12-21T15:10');
const nights = pastNights(14);

// Cost-loss rule (Murphy 1977), by hand: C 15, L 90, e 0.8 gives 15/72 = 0.2083. 56.25 minutes at 16 an hour are 15.
const worked = { minutes: minutes(56.25), value: 90, damage: celsius(-2.2), effect: 0.8 };

function ask(
  kind: 'cover' | 'uncover',
  now: number,
  wish: Partial<PlaceNow>,
  more: { standing?: string[]; places?: Snapshot['places'] } = {},
) {
  const place = patch(wish);
  const outlook = decide(
    snapshot(now, { places: [place, ...(more.places ?? [])], standing: more.standing ?? [] }),
  );
  expect(outlook.failures).toEqual([]);
  const said = outlook.decisions.find((d) => d.kind === kind);
  if (said === undefined) throw new Error(`Expected a decision on ${kind}, got none`);
  return { said, frost: outlook.frost };
}
const grass = (now: number, temperature: number, more = {}) =>
  spot(now, { spot: 'grass', temperature, nights, ...more });

test('covers are asked for exactly when what the night may take is above cost / (effect x value)', () => {
  const seen = new Set<string>();
  for (let warm = -4; warm <= 22; warm += 0.5) {
    const { said, frost } = ask('cover', afternoon, {
      cover: worked,
      spots: [grass(afternoon, warm)],
    });
    const p = frost[0]?.pBelow.p ?? Number.NaN;
    const low = frost[0]?.low ?? { mean: celsius(0), sd: 1, df: 9 };
    // So mild a frost does not take all: its share is held against its own truth in damageShare.
    const lost = Math.max(0.1 * p, damageShare(low, -2.2));
    if (Math.abs(72 * lost - 15) < 0.5) continue; // on the edge a forecast's rounding decides
    expect(said.verdict, `P ${p}`).toBe(lost > 15 / 72 ? 'act' : 'leave');
    seen.add(said.verdict);
    if (said.verdict === 'act')
      expect(Math.abs((said.saves.money ?? 0) - (72 * lost - 15))).toBeLessThan(0.5);
  }
  expect([...seen].sort()).toEqual(['act', 'leave']);
});

test('covers are due an hour before sunset, told five hours before and laid in the last hour and a half', () => {
  const { said } = ask('cover', afternoon, { spots: [grass(afternoon, 3)] });
  if (said.verdict !== 'act') throw new Error('Expected act');
  expect(Math.abs((said.doBy ?? 0) - (sunset - HOUR))).toBeLessThan(MINUTE);
  expect(Math.abs((said.from ?? 0) - (sunset - 1.5 * HOUR))).toBeLessThan(MINUTE);
  const early = at('2025-12-21T10:30');
  expect(ask('cover', early, { spots: [grass(early, 3)] }).said.verdict).toBe('leave');
});

test('after that hour they are due in time for the crossing', () => {
  const now = at('2025-12-21T18:30');
  const { said, frost } = ask('cover', now, { spots: [grass(now, 1)] });
  if (said.verdict !== 'act') throw new Error('Expected act');
  expect(frost[0]?.crossesAt).not.toBeNull();
  expect(said.doBy).toBe((frost[0]?.crossesAt ?? 0) - (35 / 2) * MINUTE); // laying them is half of the minutes told
});

test('a crossing within two hours, or air all but there, wakes somebody; a far one does not', () => {
  const night = at('2025-12-21T22:00');
  const alarm = (temperature: number, covered: boolean | null = null) => {
    const { said } = ask('cover', night, { covered, spots: [grass(night, temperature)] });
    return said.verdict === 'act' ? said.alarm : said.verdict;
  };
  expect(alarm(-1.8)).toBe('frost');
  expect(alarm(-3)).toBe('frost');
  expect(alarm(0.5)).toBeNull();
  expect(alarm(-3, true)).toBe('leave');
});

test('by day no frost alarm is raised, however sure the frost', () => {
  const { said } = ask('cover', afternoon, { spots: [grass(afternoon, -3)] });
  expect(said.verdict === 'act' && said.alarm).toBeNull();
});

test('once asked, covers stay asked until the chance is clearly under its worth', () => {
  const standing = [taskKey({ kind: 'cover', place: 'south-patch', subject: null })];
  let kept = 0;
  for (let warm = -4; warm <= 22; warm += 0.25) {
    const wish = { cover: worked, spots: [grass(afternoon, warm)] };
    const fresh = ask('cover', afternoon, wish);
    const held = ask('cover', afternoon, wish, { standing });
    if (fresh.said.verdict === 'act') expect(held.said.verdict).toBe('act');
    if (fresh.said.verdict === 'leave' && held.said.verdict === 'act') kept += 1;
  }
  expect(kept).toBeGreaterThan(0);
});

test('the coldest spot in the open decides, and one under the covers does not', () => {
  const low = spot(afternoon, { spot: 'grass', probe: 'a', temperature: 3, nights });
  const high = spot(afternoon, { spot: 'air', probe: 'b', temperature: 16, nights });
  const under = spot(afternoon, { spot: 'under-cover', probe: 'c', temperature: -8, nights });
  const money = (...spots: (typeof low)[]) => {
    const { said } = ask('cover', afternoon, { cover: worked, spots });
    return said.verdict === 'act' ? said.saves.money : null;
  };
  expect(money(high, low)).toBe(money(low));
  expect(money(high, under)).toBeNull();
});

test('without a probe of its own a patch can be called by the one outside, but never called safe', () => {
  const out = (t: number) => outside(spot(afternoon, { spot: 'air', temperature: t, nights }));
  expect(ask('cover', afternoon, {}, { places: [out(3)] }).said.verdict).toBe('act');
  expect(ask('cover', afternoon, {}, { places: [out(25)] }).said).toMatchObject({
    verdict: 'unknown',
    missing: ['night-forecast'],
  });
  expect(ask('cover', afternoon, {}).said.verdict).toBe('unknown');
});

test('the far end of a wide default is no reason to cover, and no reason not to', () => {
  const bed = spot(afternoon, { spot: 'grass', temperature: 20 });
  const cover = { ...worked, value: 2000 };
  const { said, frost } = ask('cover', afternoon, { cover, spots: [bed] });
  expect(frost[0]?.method).toBe('wide-default');
  expect(said).toMatchObject({ verdict: 'unknown', missing: ['own-nights'] });
});

test('nothing at risk is worth no work', () => {
  const cover = { ...worked, value: 0 };
  expect(ask('cover', afternoon, { cover, spots: [grass(afternoon, -5)] }).said.verdict).toBe(
    'leave',
  );
});

const morning = at('2025-12-21T09:30');
const rising = (start: number) => (ago: number) => start - ago / 60;

test('covers come off when the morning is past the damage and warming, three hours after sunrise at the latest', () => {
  const bed = spot(morning, { spot: 'grass', temperature: rising(2) });
  const { said } = ask('uncover', morning, { covered: true, spots: [bed] });
  if (said.verdict !== 'act') throw new Error('Expected act');
  expect(Math.abs((said.doBy ?? 0) - at('2025-12-21T10:35'))).toBeLessThan(MINUTE);
});

test.for([
  ['air still near damage', rising(-1.5), morning],
  ['air falling again', (ago: number) => 2 + ago / 60, morning],
  ['a quarter of an hour after sunrise', rising(2), at('2025-12-21T07:50')],
  ['an afternoon near tonight', rising(2), at('2025-12-21T15:00')],
] as const)('with %s covers stay on', ([, temperature, now]) => {
  const bed = spot(now, { spot: 'grass', temperature });
  expect(ask('uncover', now, { covered: true, spots: [bed] }).said.verdict).toBe('leave');
});

test('over 25 °C under the covers they come off sooner', () => {
  const bed = spot(morning, { spot: 'under-cover', temperature: (ago) => (ago > 10 ? 20 : 27) });
  const { said } = ask('uncover', morning, { covered: true, spots: [bed] });
  if (said.verdict !== 'act') throw new Error('Expected act');
  expect(said.doBy).toBe(morning + 20 * MINUTE);
});

test('covers nobody spoke of, and air nobody measures, are unknown', () => {
  const bed = spot(morning, { spot: 'grass', temperature: rising(2) });
  expect(ask('uncover', morning, { spots: [bed] }).said.verdict).toBe('unknown');
  expect(ask('uncover', morning, { covered: true }).said.verdict).toBe('unknown');
  expect(ask('uncover', morning, { covered: false }).said.verdict).toBe('leave');
});

// Gains of ten clear nights and what follows from them: tests/truth/frost/coverGain.csv.
const gains = [1.1, 0.6, 1.8, 0.9, 2.4, 1.3, 0.4, 1.6, 0.2, 1.2].map((gain) => ({ gain }));
const saidOf = (coverNights: PlaceNow['coverNights']) => {
  const { said } = ask('cover', afternoon, { coverNights, spots: [grass(afternoon, 6)] });
  if (said.verdict !== 'act') throw new Error('Expected act');
  return new Map(said.because.map(({ what, value }) => [what, Number(value)]));
};

test('what covers add is said as nine nights in ten reach it, and nothing before nine nights', () => {
  const known = saidOf(gains);
  expect(known.get('cover-gain')).toBeCloseTo(0.22, 9);
  const inside = known.get('chance-under-cover') ?? Number.NaN;
  expect(inside).toBeLessThan(known.get('chance-of-damage') ?? 0);
  expect(inside).toBeGreaterThan(0);
  const few = saidOf(gains.slice(0, 8));
  expect(few.get('cover-gain')).toBe(0);
  expect(few.has('chance-under-cover')).toBe(false);
  expect(saidOf(undefined).has('cover-gain')).toBe(false);
});

test('who set the damage limit is told: the grower, or the stage’s source', () => {
  const limitFrom = (damageFrom: string | undefined) => {
    const cover = { ...worked, damageFrom };
    const { said } = ask('cover', afternoon, { cover, spots: [grass(afternoon, 3)] });
    return said.because.find(({ what }) => what === 'tonight-low')?.limitFrom;
  };
  expect(limitFrom(undefined)).toBe('told in the farm file');
  expect(limitFrom('extension tables')).toBe('extension tables');
});

test('air under the covers that heats up fast is told before it is too hot', () => {
  // 20 °C now and 8 K an hour: 25 °C in 37.5 minutes.
  const bed = spot(morning, { spot: 'under-cover', temperature: (ago) => 20 - (8 * ago) / 60 });
  const { said } = ask('uncover', morning, { covered: true, spots: [bed] });
  if (said.verdict !== 'act') throw new Error('Expected act');
  expect(said.because[0]).toMatchObject({ what: 'under-cover-rising', unit: 'min' });
  expect(said.because[0]?.value).toBeCloseTo(37.5, 1);
  const slow = spot(morning, { spot: 'under-cover', temperature: (ago) => 20 - ago / 60 });
  expect(ask('uncover', morning, { covered: true, spots: [slow] }).said.verdict).toBe('unknown');
});

test('a crop that bears less heat than 25 °C is uncovered at its own limit', () => {
  const bed = spot(morning, { spot: 'under-cover', temperature: 22 });
  const hot = (heatLimit: number) => {
    const crop = { ...basil, id: 'cress', heatLimit: celsius(heatLimit) };
    const place = patch({ covered: true, crop: 'cress', spots: [bed] });
    const { decisions } = decide(snapshot(morning, { places: [place], crops: [crop] }));
    return decisions.find(({ kind }) => kind === 'uncover')?.verdict;
  };
  expect(hot(21)).toBe('act');
  expect(hot(30)).not.toBe('act');
});
