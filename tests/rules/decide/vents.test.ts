import { expect, test } from 'vitest';
import { decide, type PlaceNow, type SpotNow, taskKey } from '../../../rules/decide/index.ts';
import {
  at,
  basil,
  type Course,
  outside,
  pastNights,
  snapshot,
  spot,
  tunnel,
} from './makeSnapshot.ts';

// 45° N, 0° E on 21 June: sunrise 04:13, sunset 19:50 UTC (suncalc 2.0.2 and astronomy-engine).
const morning = at('2025-06-21T09:00');
const evening = at('2025-06-21T18:00');

const inside = (now: number, temperature: Course, humidity: Course, more = {}) =>
  spot(now, { temperature, humidity, ...more });
const open = (now: number, temperature: Course, humidity: Course, more = {}) =>
  outside(spot(now, { spot: 'air', temperature, humidity, ...more }));

function ask(
  kind: 'open-up' | 'close-up',
  now: number,
  house: SpotNow | null,
  out: PlaceNow | null,
  wish: Partial<PlaceNow> = {},
  standing: string[] = [],
) {
  const place = tunnel({ spots: house === null ? [] : [house], ...wish });
  const places = out === null ? [place] : [place, out];
  const { decisions, failures } = decide(snapshot(now, { places, standing }));
  expect(failures).toEqual([]);
  const found = decisions.find((d) => d.kind === kind);
  if (found === undefined) throw new Error(`Expected a decision on ${kind}, got none`);
  return found;
}
const terms = (d: { because: readonly { what: string }[] }) => d.because.map(({ what }) => what);

// 14 °C at 96 % against 9 °C at 85 %: 4.217 g/m³ (FAO-56 eq. 11 by hand; psychrolib 1.1.1 agrees).
const wetFor =
  (hours: number): Course =>
  (ago) =>
    ago <= hours * 60 ? 96 : 75;

test('leaves wet for six hours in the morning and drier air outside ask to open up', () => {
  const said = ask('open-up', morning, inside(morning, 14, wetFor(6)), open(morning, 9, 85));
  expect(said.verdict).toBe('act');
  const gain = said.because.find(({ what }) => what === 'outside-drier-by');
  expect(gain?.value).toBeCloseTo(4.22, 2);
  const wet = said.because.find(({ what }) => what === 'wet-hours');
  expect(wet?.value).toBeCloseTo(6, 0);
});

test.for([
  ['a wet spell of three hours', inside(morning, 14, wetFor(3)), open(morning, 9, 85)],
  // 12 °C at 90 % against 10 °C at 100 %: 0.261, no clear difference (FAO-56 eq. 11 by hand)
  ['outside air that is hardly drier', inside(morning, 12, 90), open(morning, 10, 100)],
  ['dry leaves', inside(morning, 20, 60), open(morning, 15, 50)],
] as const)('%s does not ask to open up', ([, house, out]) => {
  expect(ask('open-up', morning, house, out).verdict).toBe('leave');
});

test('nobody opens a house in the dark because its leaves are wet', () => {
  const night = at('2025-06-21T02:00');
  const said = ask('open-up', night, inside(night, 14, 96), open(night, 9, 85));
  expect(said.verdict).toBe('leave');
  expect(terms(said)).toContain('daylight-in');
});

test.for([
  ['no probe inside', null, open(morning, 9, 85)],
  [
    'an inside probe silent for an hour',
    inside(morning, 14, 96, { silent: 60 }),
    open(morning, 9, 85),
  ],
  ['no probe outside', inside(morning, 14, 96), null],
  [
    'an outside probe silent for an hour',
    inside(morning, 14, 96),
    open(morning, 9, 85, { silent: 60 }),
  ],
  ['readings of the last hour only', inside(morning, 14, 96, { hours: 1 }), open(morning, 9, 85)],
] as const)('with %s nobody can say whether to open, and it says so', ([, house, out]) => {
  const said = ask('open-up', morning, house, out);
  expect(said.verdict).toBe('unknown');
  expect(said.verdict === 'unknown' && said.missing.length).toBeGreaterThan(0);
});

test('a house over the top of its crop and a cooler outside ask to open up, dry or not', () => {
  const said = ask('open-up', morning, inside(morning, 33, 50), open(morning, 22, 50), {
    crop: 'basil',
    trays: 40,
  });
  expect(said).toMatchObject({ verdict: 'act', doBy: expect.any(Number) });
  // 40 trays x 0.35 kg x 30 a kg = 420; above 32 °C from 09:00 to 19:50 as yesterday; 0.2 % an hour
  expect(said.verdict === 'act' && said.saves.money).toBeCloseTo(420 * 0.002 * 10.83, 0);
});

test('a little warmth that spares less than the five minutes is not asked about', () => {
  const said = ask('open-up', morning, inside(morning, 29, 50), open(morning, 22, 50), {
    crop: 'basil',
    trays: 40,
  });
  expect(said.verdict).toBe('leave');
  expect(terms(said)).toContain('work-spares');
});

test('two degrees under the heat limit it is urgent: due a quarter of an hour after it became so', () => {
  const course: Course = (ago) => (ago > 20 ? 27 : 30.5);
  const said = ask('open-up', morning, inside(morning, course, 50), open(morning, 22, 50), {
    crop: 'basil',
  });
  expect(terms(said)).toContain('heat-limit-near');
  expect(said.verdict === 'act' && said.doBy).toBe(morning - 20 * 60_000 + 15 * 60_000);
});

test('heat says open although outside would add water, and says what is traded', () => {
  // 25 °C at 70 % holds 2.22 kPa, 30 °C at 40 % 1.70 (FAO-56 table 2.3, from memory): outside is damper
  const said = ask('open-up', morning, inside(morning, 30, 40), open(morning, 25, 70), {
    crop: 'basil',
  });
  expect(said.verdict).toBe('act');
  expect(terms(said)).toContain('outside-damper-by');
});

test('no cooler outside, no opening for heat', () => {
  const said = ask('open-up', morning, inside(morning, 29, 30), open(morning, 28.5, 30), {
    crop: 'basil',
  });
  expect(said.verdict).toBe('leave');
});

test('a house without a told crop is opened from 24 °C, a limit that says it is ours', () => {
  const said = ask('open-up', morning, inside(morning, 24.5, 50), open(morning, 20, 50));
  expect(said.verdict).toBe('act');
  expect(said.because[0]).toMatchObject({ limit: 24, source: 'ours, from no source' });
});

test('a standing task stays asked until it is clearly cooler, two degrees below the start', () => {
  const standing = [taskKey({ kind: 'open-up', place: 'long-house', subject: null })];
  const asked = (t: number, keys: string[]) =>
    ask('open-up', morning, inside(morning, t, 50), open(morning, 20, 50), { crop: 'basil' }, keys)
      .verdict;
  expect(asked(27, [])).toBe('leave');
  expect(asked(27, standing)).toBe('act');
  expect(asked(25.9, standing)).toBe('leave');
});

test('a standing task outlives a damp dip between the two levels, and ends below the lower', () => {
  const standing = [taskKey({ kind: 'open-up', place: 'long-house', subject: null })];
  const asked = (now: number) =>
    ask(
      'open-up',
      morning,
      inside(morning, 14, (ago) => (ago <= 10 ? now : 96)),
      open(morning, 9, 85),
      {},
      standing,
    ).verdict;
  expect(asked(88)).toBe('act');
  expect(asked(86.5)).toBe('leave');
});

test('what the grower said ends the question: opened, nobody asks to open; closed, nobody to close', () => {
  const hot = inside(morning, 30, 50);
  expect(ask('open-up', morning, hot, open(morning, 20, 50), { opened: true }).verdict).toBe(
    'leave',
  );
  const cold = open(evening, 6, 85, { nights: pastNights(12) });
  const said = ask('close-up', evening, inside(evening, 15, 80), cold, {
    opened: false,
    crop: 'basil',
  });
  expect(said.verdict).toBe('leave');
});

test('a night near the floor of the crop asks to close, an hour before sunset', () => {
  const out = open(evening, 14, 60, { nights: pastNights(12) });
  const said = ask('close-up', evening, inside(evening, 18, 80), out, { crop: 'basil' });
  expect(said.verdict).toBe('act');
  const sunset = at('2025-06-21T19:50');
  if (said.verdict !== 'act' || said.doBy === null) throw new Error('Expected a deadline');
  expect(Math.abs(said.doBy - (sunset - 3_600_000))).toBeLessThan(60_000 + 26_000);
  expect(terms(said)).toContain('film-not-enough'); // far below 11 - 1.5
});

test('a mild night asks for nothing: open vents keep the house dry', () => {
  const out = open(evening, 24, 60);
  const said = ask('close-up', evening, inside(evening, 24, 80), out);
  expect(said.verdict).toBe('leave');
  expect(terms(said)).toContain('stay-open-dry');
});

test('nobody guesses the night: no outside probe in the evening is unknown', () => {
  expect(ask('close-up', evening, inside(evening, 18, 80), null)).toMatchObject({
    verdict: 'unknown',
    missing: ['tonight-outside-low'],
  });
});

test('when nobody said how the vents stand, opening and closing are never both asked', () => {
  for (let minutes = 0; minutes < 24 * 60; minutes += 20) {
    const now = at('2025-06-21T00:00') + minutes * 60_000;
    for (const [t, rh] of [
      [31, 50],
      [14, 97],
      [18, 92],
    ] as const) {
      const place = tunnel({ spots: [inside(now, t, rh)], crop: 'basil' });
      const out = open(now, 9, 80, { nights: pastNights(12) });
      const acts = decide(snapshot(now, { places: [place, out], crops: [basil] }))
        .decisions.filter((d) => d.verdict === 'act')
        .map(({ kind }) => kind);
      expect(acts.length, `at ${new Date(now).toISOString()}, ${t} °C`).toBeLessThan(2);
    }
  }
});
