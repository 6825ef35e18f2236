import { expect, test } from 'vitest';
import { HOUR } from '../smallFarm.ts';
import { DAY, growingHub, growingText, noted } from './growingFarm.ts';

// What is learned from readings in a real store: base, light, roll-ups, pushed forecasts. All weather is
// made up, so that every figure can be worked out by hand.

const NOW = Date.UTC(2026, 4, 10, 6);
const MAY = Date.UTC(2026, 4, 1);
const rule = { lower: 10, upper: null };
const daily = (mean: number, swing: number) => (t: number) =>
  mean + swing * Math.sin((2 * Math.PI * (t % DAY)) / DAY - Math.PI / 2);

test('sowings in a warm and a cool house tell the base that the farm file has wrong', () => {
  const { growing, measure, sow, tell } = growingHub({ now: NOW, farm: growingText('base: 8') });
  measure('p1', NOW - 100 * DAY, NOW, () => 20);
  measure('p2', NOW - 100 * DAY, NOW, () => 14);
  // The crop counts from 5 °C and takes 180 units: 12 days at 20 °C, 20 days at 14 °C.
  const ready = (i: number) => {
    const warm = i % 2 === 0;
    const sownAt = NOW - (95 - 7 * i) * DAY;
    sow(`basil-${i}`, { sownAt, place: warm ? 'long-house' : 'sun-house' });
    tell(`basil-${i}`, noted(sownAt + (warm ? 12 : 20) * DAY));
  };
  for (let i = 0; i < 5; i++) ready(i);
  expect(growing.crop('basil').base).toMatchObject({ lower: 8, from: 'told', verdict: 'too-few' });
  for (let i = 5; i < 8; i++) ready(i);
  const { base, past } = growing.crop('basil');
  expect(base).toMatchObject({ from: 'own', verdict: 'learned' });
  expect(base.lower).toBeCloseTo(5, 1);
  for (const { degreeDays } of past) expect(degreeDays).toBeCloseTo(180, 0);
  // Seen in the morning after it was so: of the days of 15 and of 9 units before that half is taken off,
  // half of the 9 of the last batch is put on again (needOf): 180 - 12 / 2 + 9 / 2.
  expect(growing.need('basil').later?.mean).toBeCloseTo(178.5, 6);
});

test('sowings that all stood equally warm tell no base, and it stays as told', () => {
  const { growing, measure, sow, tell } = growingHub({ now: NOW, farm: growingText('base: 8') });
  measure('p1', NOW - 100 * DAY, NOW, () => 20);
  for (let i = 0; i < 8; i++) {
    const sownAt = NOW - (95 - 7 * i) * DAY;
    sow(`basil-${i}`, { sownAt });
    tell(`basil-${i}`, noted(sownAt + 15 * DAY));
  }
  const { base } = growing.crop('basil');
  expect(base).toMatchObject({ lower: 8, from: 'told' });
  expect(base.verdict).not.toBe('learned');
});

test('where a probe measures light, a batch in more of it is told to take less heat', () => {
  const { core, growing, measure, sow, tell } = growingHub({ now: NOW });
  const from = NOW - 130 * DAY;
  const dark = NOW - 62 * DAY;
  measure('p1', from, NOW, () => 20);
  // At 54 lx for 1 µmol m⁻² s⁻¹, 3125 lx all day are 5 mol and 9375 lx are 15 mol.
  measure('p1', from, NOW, (t) => (t < dark ? 3125 : 9375), 'light');
  for (let i = 0; i < 8; i++) {
    const early = i < 4;
    const sownAt = early ? from + (1 + 7 * i) * DAY : dark + (1 + 5 * (i - 4)) * DAY;
    sow(`basil-${i}`, { sownAt });
    tell(`basil-${i}`, noted(sownAt + (early ? 30 : 20) * DAY));
  }
  const { past } = growing.crop('basil');
  expect(past.map(({ light }) => Math.round(light ?? -1))).toEqual([5, 5, 5, 5, 15, 15, 15, 15]);
  sow('basil-new', { sownAt: NOW - 10 * DAY });
  const batch = core.batches.get('basil-new');
  if (!batch) throw new Error('Expected the batch, got none');
  const { later } = growing.ready(batch, NOW);
  expect(later).toMatchObject({ byLight: 'probe', learnedFrom: 8 });
  // By the mean of all it would be 250.
  expect(later.need?.mean).toBeGreaterThan(180);
  expect(later.need?.mean).toBeLessThan(220);
});

test('where single readings were let go of, their hours are counted, and said to be', () => {
  const curve = daily(13, 8); // below the base for part of each day
  const whole = growingHub({ now: NOW });
  const trimmed = growingHub({ now: NOW });
  for (const { measure } of [whole, trimmed]) measure('p1', MAY - DAY, NOW, curve);
  const { store } = trimmed;
  store.transaction(() => store.trim.letGo(MAY + 5 * DAY, '2026-05-06'));
  while (store.transaction(() => store.trim.slice()));
  expect(store.readings.allBetween('p1', 'temperature', 0, MAY + 5 * DAY)).toEqual([]);
  const stays = [{ place: 'long-house', from: MAY }];
  const of = ({ growing }: typeof whole) => growing.heat.lived(stays, MAY, MAY + 8 * DAY, rule);
  const [truth, told] = [of(whole), of(trimmed)];
  expect(truth).toMatchObject({ rolledHours: 0, unknownHours: 0 });
  expect(told.rolledHours).toBeCloseTo(5 * 24, 6);
  expect(told.unknownHours).toBe(0);
  expect(Math.abs((told.degreeDays ?? 0) / (truth.degreeDays ?? 1) - 1)).toBeLessThan(0.01);
});

/** Weather that wanders about its season by 4 K with a period of eleven days. */
const season = (t: number) =>
  14 + 8 * Math.sin((2 * Math.PI * (t - Date.UTC(2025, 3, 15))) / (365.25 * DAY));
const wandering = (t: number) =>
  season(t) + 4 * Math.sin((2 * Math.PI * t) / (11 * DAY)) + daily(0, 4)(t);

/** A year of it, and a forecast each morning of fifty days; the newest says how warm it is to be. */
function foretold(says: (t: number) => number, newest: (t: number) => number) {
  const hub = growingHub({ now: NOW });
  for (const probe of ['p1', 'mast']) hub.measure(probe, NOW - 400 * DAY, NOW, wandering);
  hub.store.transaction(() => {
    for (let back = 50; back >= 0; back--) {
      const issuedAt = NOW - back * DAY;
      const curve = back === 0 ? newest : says;
      const rows = Array.from({ length: 48 }, (_, i) => {
        const t = issuedAt - 6 * HOUR + i * 3 * HOUR;
        return { source: 'met', quantity: 'temperature', issuedAt, t, value: curve(t) };
      });
      hub.store.foretold.add(rows);
    }
  });
  return hub.growing.heat.ahead('long-house', rule, '2026-05-10', 12);
}
const warm = (t: number) => season(t) + 9 + daily(0, 4)(t);

test('a pushed forecast that was right is believed; one that was wrong is not', () => {
  const without = foretold(wandering, wandering).mean ?? [];
  const right = foretold(wandering, warm).mean ?? [];
  const wrong = foretold((t) => 2 * season(t) + 2 * daily(0, 4)(t) - wandering(t), warm).mean ?? [];
  const dayOf = (mean: readonly number[], ahead: number) => mean[ahead] ?? Number.NaN;
  // Nine kelvins warmer than the season: nine units a day more than usual.
  expect(dayOf(right, 1) - dayOf(wrong, 1)).toBeGreaterThan(5);
  expect(dayOf(right, 1)).toBeGreaterThan(dayOf(without, 1) + 2);
  // Six days on nobody is believed, whatever the record.
  for (const day of [8, 10]) expect(dayOf(right, day)).toBeCloseTo(dayOf(wrong, day), 6);
});

test('a warm forecast that is believed brings the day nearer', () => {
  const days = [warm, (t: number) => season(t) - 6].map((newest) => {
    const { mean } = { mean: foretold(wandering, newest).mean ?? [] };
    let left = 60;
    return mean.findIndex((units) => {
      left -= units;
      return left <= 0;
    });
  });
  expect(days[0]).toBeLessThan(days[1] ?? 0);
});
