import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evidenceLabels, inputLabels, why } from '../../../hub/words/en.ts';
import { decide, type PlaceNow, type Snapshot } from '../../../rules/decide/index.ts';
import { celsius, HOUR, instant } from '../../../rules/units.ts';
import { at, type Course, outside, snapshot, spot, tunnel } from './makeSnapshot.ts';

// Basil's limit is 32 °C (makeSnapshot). At 45° N on 21 June the sun rises about 4:14 and sets 19:50.
const TEN = at('2025-06-21T10:00');

/** A house warmest at 14:00; `top` yesterday, and today by `warmer` more. */
const sunny =
  (now: number, top: number, warmer = 0): Course =>
  (ago) => {
    const t = now - ago * 60_000;
    const hour = (t / HOUR) % 24;
    const today = t >= at('2025-06-21T00:00');
    return top - 9 + 9 * Math.cos(((hour - 14) / 12) * Math.PI) + (today ? warmer : 0);
  };

type Wish = {
  readonly now?: number;
  readonly top?: number;
  readonly warmer?: number;
  readonly open?: boolean | null;
  readonly out?: number;
  readonly place?: Partial<PlaceNow>;
  readonly more?: Partial<Snapshot>;
};
function shading({ now = TEN, top = 35, warmer = 0, open = true, out = 22, ...wish }: Wish = {}) {
  const house = tunnel({
    ...{ crop: 'basil', trays: 30, opened: open },
    spots: [spot(now, { temperature: sunny(now, top, warmer), humidity: 55 })],
    ...wish.place,
  });
  const mast = outside(spot(now, { spot: 'air', probe: 'mast', temperature: out, humidity: 55 }));
  const { decisions } = decide(snapshot(now, { places: [house, mast], ...wish.more }));
  const found = decisions.find(({ kind }) => kind === 'shade');
  if (found === undefined) throw new Error('Expected a decision on shade, got none');
  return found;
}
const saysOf = (decision: ReturnType<typeof shading>) => decision.because.map(({ what }) => what);

test('a house that is open, was over the limit yesterday and is as warm today is to be shaded', () => {
  const asked = shading();
  expect(asked).toMatchObject({ verdict: 'act', minutes: 20 });
  expect(why('shade', asked.because)).toBe(
    'About 35\u00a0°C is to come inside; the crop’s limit is 32\u00a0°C. Take it off again in the evening.',
  );
  for (const { what, inputs = [] } of asked.because) {
    expect(evidenceLabels).toHaveProperty(what);
    for (const input of inputs) expect(inputLabels).toHaveProperty(input.what);
  }
});

// By hand: 26 + 9 cos((hour − 14) π / 12) passes 32 °C where the cosine is 2/3, 3.2 h before 14:00.
test('it is to be done before the heat comes, not after', () => {
  const asked = shading();
  if (asked.verdict !== 'act' || asked.doBy === null) throw new Error('Expected a deadline');
  expect(asked.doBy).toBeGreaterThan(at('2025-06-21T10:40'));
  expect(asked.doBy).toBeLessThanOrEqual(at('2025-06-21T11:00'));
});

test('a cooler morning than yesterday’s, or a mild day, asks for no shade', () => {
  expect(shading({ warmer: -5 }).verdict).toBe('leave');
  expect(shading({ top: 30 }).verdict).toBe('leave');
  expect(shading({ top: 31, warmer: 4 }).verdict).toBe('act');
});

test('opening up goes first, unless it is done, there are no vents, or outside is no cooler', () => {
  expect(shading({ open: false }).verdict).toBe('leave');
  expect(saysOf(shading({ open: null }))).toContain('open-up-first');
  expect(shading({ open: null, place: { vents: false } }).verdict).toBe('act');
  expect(shading({ now: at('2025-06-21T13:00'), open: false, out: 36 }).verdict).toBe('act');
});

test('nothing is asked at night, late in the day, where it is shaded, or where no crop stands', () => {
  expect(shading({ now: at('2025-06-21T03:00') }).verdict).toBe('leave');
  expect(shading({ now: at('2025-06-21T17:30') }).verdict).toBe('leave');
  expect(shading({ place: { shaded: true } }).verdict).toBe('leave');
  const bare = decide(snapshot(TEN, { places: [tunnel({ crop: null })] })).decisions;
  expect(bare.some(({ kind }) => kind === 'shade')).toBe(false);
});

test('without a reading now, or of yesterday, nobody can say', () => {
  expect(shading({ place: { spots: [] } })).toMatchObject({
    verdict: 'unknown',
    missing: ['inside-temperature'],
  });
  const short = spot(TEN, { temperature: 30, humidity: 50, hours: 3 });
  expect(shading({ place: { spots: [short] } })).toMatchObject({
    verdict: 'unknown',
    missing: ['yesterday-at-this-hour'],
  });
});

test('a pushed forecast of a much cooler afternoon is believed before the morning is', () => {
  const t = [11, 13, 15, 17].map((hour) => instant(at('2025-06-21T00:00') + hour * HOUR));
  const issue = (top: number) => ({
    pushed: [
      {
        ...{ source: 'met', issuedAt: instant(TEN - HOUR), nights: [] },
        temperature: { t, value: t.map(() => celsius(top)) },
        rain: { t: [], value: [] },
      },
    ],
  });
  expect(shading({ more: issue(17) }).verdict).toBe('leave'); // 5 K under yesterday's 22
  expect(shading({ warmer: -4, more: issue(22) }).verdict).toBe('act');
});

test('a warmer house is never less asked to be shaded', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 25, max: 40, noNaN: true }),
      fc.integer({ min: 5, max: 17 }),
      (top, hour) => {
        const now = at('2025-06-21T00:00') + hour * HOUR;
        const cooler = shading({ now, top });
        if (cooler.verdict === 'act') expect(shading({ now, top: top + 2 }).verdict).toBe('act');
      },
    ),
    { numRuns: 60, seed: 7 },
  );
});

test('once asked it is asked while 2 °C h are left of the day, so that it does not flicker', () => {
  const top = 33.05; // between 2 and 3 °C h over the limit
  const load = shading({ top }).because.find(({ what }) => what === 'heat-of-the-day');
  expect(Number(load?.value)).toBeGreaterThan(2);
  expect(Number(load?.value)).toBeLessThan(3);
  expect(shading({ top }).verdict).toBe('leave');
  expect(shading({ top, more: { standing: ['shade:long-house'] } }).verdict).toBe('act');
});
