import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evidenceLabels, inputLabels, missingLabels, why } from '../../../hub/words/en.ts';
import { HOUR, instant } from '../../../rules/units.ts';
import { at } from './makeSnapshot.ts';
import {
  daysOf,
  type HourCurve,
  moves,
  stand,
  swing,
  type TrayWish,
  trayFarm,
} from './trayFarm.ts';

// What holds for any trays anywhere: never full, never mouldy, never back.

const DAY = 24 * HOUR;
const mild = swing(23, 4);
const hot: HourCurve = (day, hour) => {
  const [t, rh] = swing(27, 9)(day, hour) ?? [0, 0];
  return [t + 0.6 * Math.sin(2.1 * day), rh];
};
const days = (curve: HourCurve) => daysOf(curve, '2025-06-11', 10);

const anyWish: fc.Arbitrary<TrayWish> = fc
  .record({
    here: fc.constantFrom(days(hot), days(mild), days(swing(14, 6))),
    there: fc.constantFrom(days(hot), days(mild), days(swing(14, 6))),
    capacity: fc.option(fc.integer({ min: 0, max: 80 })),
    others: fc.integer({ min: 0, max: 40 }),
    stands: fc.array(
      fc.record({
        batch: fc.constant(''),
        trays: fc.integer({ min: 1, max: 40 }),
        daysLeft: fc.option(fc.integer({ min: 0, max: 30 })),
        mouldy: fc.boolean(),
        place: fc.constantFrom('long-house', 'sun-house'),
        askedTo: fc.constantFrom(null, 'sun-house', 'long-house'),
        moved: fc.option(fc.integer({ min: 0, max: 40 })),
      }),
      { minLength: 1, maxLength: 5 },
    ),
  })
  .map(({ stands, ...rest }) => ({
    ...rest,
    stands: stands.map(({ moved, ...one }, i) => {
      const t = moved === null ? null : instant(at('2025-06-21T09:00') - moved * DAY);
      const from = one.place === 'long-house' ? 'sun-house' : 'long-house';
      const left = t === null ? [] : [{ place: from, at: t }];
      return stand({ ...one, batch: `basil-${i}`, movedAt: t, left });
    }),
  }));

test('never to a full place, never with mould, never back, each with its words and its how', () => {
  fc.assert(
    fc.property(anyWish, (wish) => {
      const farm = trayFarm(wish);
      const asked = new Map<string, number>();
      for (const decision of moves(farm)) {
        const missing = decision.verdict === 'unknown' ? decision.missing : [];
        for (const { what, source, method, inputs = [] } of decision.because) {
          expect(evidenceLabels, what).toHaveProperty(what);
          expect(source).not.toBe('');
          if (method === null) expect(source).toBe('entered by the grower');
          for (const input of inputs) expect(inputLabels, input.what).toHaveProperty(input.what);
        }
        for (const term of missing) expect(missingLabels, term).toHaveProperty(term);
        if (decision.verdict !== 'act') continue;
        expect(why('move-trays', decision.because)).not.toMatch(/^$|undefined|NaN|null/);
        const own = wish.stands?.find(({ batch }) => batch === decision.subject);
        const to = decision.because.find(({ what }) => what === 'move-to');
        const id = String(to?.inputs?.find(({ what }) => what === 'place')?.value);
        expect(own?.mouldy).toBe(false);
        expect(own?.daysLeft ?? 0).toBeGreaterThan(4);
        for (const { place, at: when } of own?.left ?? [])
          if (place === id) expect(farm.now - when).toBeGreaterThanOrEqual(21 * DAY);
        asked.set(id, (asked.get(id) ?? 0) + (own?.trays ?? 0));
      }
      for (const [id, trays] of asked) {
        const holds = farm.trays?.places.find((one) => one.id === id);
        expect(trays + (holds?.standing ?? 0)).toBeLessThanOrEqual(holds?.capacity ?? 0);
      }
    }),
    { numRuns: 300, seed: 20260423 },
  );
});

test('carrying trays as asked never leads to being asked to carry them back within three weeks', () => {
  fc.assert(
    fc.property(
      fc.array(fc.boolean(), { minLength: 30, maxLength: 30 }),
      fc.integer({ min: 1, max: 9 }),
      (turns, hold) => {
        // Which house is the bad one changes about, each for some days.
        const bad = (day: number) => turns[Math.floor(Math.max(0, day) / hold) % 30] ?? false;
        const a: HourCurve = (day, hour) => (bad(day) ? hot : mild)(day, hour);
        const b: HourCurve = (day, hour) => (bad(day) ? mild : hot)(day, hour);
        const [long, sun] = [daysOf(a, '2025-05-01', 60), daysOf(b, '2025-05-01', 60)];
        let own = stand({ daysLeft: 30 });
        const carried: { place: string; day: number }[] = [{ place: own.place, day: -99 }];
        for (let day = 10; day < 60; day += 1) {
          const now = at('2025-05-01T09:00') + day * DAY;
          const wish = { here: long.slice(day - 10, day), there: sun.slice(day - 10, day) };
          const [said] = moves(trayFarm({ ...wish, stands: [own], now }));
          if (said?.verdict !== 'act') continue;
          const to = own.place === 'long-house' ? 'sun-house' : 'long-house';
          const before = carried.findLast(({ place }) => place === to);
          if (before !== undefined && before.day >= 0) {
            const leftAt = own.left.findLast(({ place }) => place === to)?.at ?? 0;
            expect(now - leftAt).toBeGreaterThanOrEqual(21 * DAY);
          }
          carried.push({ place: to, day });
          const left = [...own.left, { place: own.place, at: instant(now) }];
          own = { ...own, place: to, movedAt: instant(now), left };
        }
      },
    ),
    { numRuns: 40, seed: 20260424 },
  );
});
