import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cardinal } from '../../simulators/cardinal.ts';
import { flowersOf, newBed, nextBed } from '../../simulators/flowerBed.ts';
import { nextFilm } from '../../simulators/leafFilm.ts';
import { saturationDensity } from '../../simulators/moistAir.ts';
import { cutOf, nextStanding, sownNow, trayKinds } from '../../simulators/trayCrop.ts';

const DAY = 86_400_000;
const HOURS = 1 / 12;

test('life goes from nothing over all to nothing between its cardinal temperatures', () => {
  for (const [min, best, max] of [
    [9, 26, 37],
    [1.5, 20, 32],
    [0, 20, 31],
  ] as const) {
    expect(cardinal(min, min, best, max)).toBe(0);
    expect(cardinal(best, min, best, max)).toBeCloseTo(1, 9);
    expect(cardinal(max, min, best, max)).toBe(0);
    fc.assert(
      fc.property(fc.double({ min: -30, max: 60, noNaN: true }), (t) => {
        const rate = cardinal(t, min, best, max);
        expect(rate).toBeGreaterThanOrEqual(0);
        expect(rate).toBeLessThanOrEqual(1);
      }),
    );
  }
});

test('leaves that a clear night cools below the dew point gather water, and dry in the sun', () => {
  const air = { temperature: 12, vapour: 0.98 * saturationDensity(12), open: 0 };
  let film = 0;
  for (let i = 0; i < 72; i++) film = nextFilm(film, { ...air, sun: 0, skyLoss: 90 }, 5);
  expect(film).toBeGreaterThan(4);
  const day = { temperature: 22, vapour: 0.5 * saturationDensity(22), open: 1 };
  for (let i = 0; i < 72; i++) film = nextFilm(film, { ...day, sun: 250, skyLoss: 60 }, 5);
  expect(film).toBe(0);
});

const lives = (air: Parameters<typeof nextStanding>[2], days: number) => {
  const plant = sownNow();
  for (let i = 0; i < days * 288; i++) nextStanding(plant, trayKinds.basil, air, 1, HOURS);
  return plant;
};
const fine = { temperature: 22, leaf: 22, light: 150, film: 0 };

test('mould needs water on the leaf, heat and cold hurt, and a fine week does nothing', () => {
  expect(lives(fine, 7).shown).toBe(0);
  const damp = lives({ ...fine, film: 20 }, 14);
  expect(damp.shown).toBeGreaterThan(0.02);
  expect(lives({ ...fine, film: 20, leaf: 2 }, 14).shown).toBeLessThan(damp.shown / 5);
  expect(lives({ ...fine, leaf: 40 }, 1).scorch).toBeGreaterThan(10 * lives(fine, 1).scorch);
  expect(lives({ ...fine, leaf: 2 }, 1).chill).toBeGreaterThan(10 * lives(fine, 1).chill);
});

test('what is cut and what was lost come to the whole tray', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 0.9, noNaN: true }),
      fc.double({ min: 0, max: 2, noNaN: true }),
      fc.double({ min: 0, max: 2, noNaN: true }),
      (shown, scorch, chill) => {
        const { kg, lost } = cutOf(
          { ...sownNow(), progress: 1, shown, scorch, chill },
          trayKinds.basil,
        );
        const sum = kg + lost.mould + lost.scorch + lost.chill;
        expect(sum).toBeCloseTo(trayKinds.basil.perTray, 9);
      },
    ),
  );
});

test('every flower of a patch sets, or is lost to something, or is still open', () => {
  const begins = Date.UTC(2026, 3, 1);
  const kind = { kg: 100, peak: begins + 30 * DAY, spread: 10 };
  const bed = newBed();
  let flowered = 0;
  for (let t = begins; t < begins + 60 * DAY; t += 300_000) {
    const hour = (t / 3_600_000) % 24;
    const before = bed.day;
    nextBed(
      bed,
      kind,
      {
        temperature: hour < 6 ? -1.8 : 12,
        covered: hour < 9,
        sun: hour > 6 && hour < 18 ? 300 : 0,
      },
      t,
      HOURS,
    );
    if (bed.day !== before) flowered += flowersOf(kind, t);
  }
  const open = bed.open.reduce((sum, kg) => sum + kg, 0);
  const { frost, unvisited, scorch } = bed.lost;
  expect(frost).toBeGreaterThan(1);
  expect(unvisited).toBeGreaterThan(0.1);
  expect(bed.set + open + frost + unvisited + scorch).toBeCloseTo(flowered, 6);
});
