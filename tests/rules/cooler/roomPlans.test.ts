import { expect, test } from 'vitest';
import {
  countedDay,
  drawnDay,
  type EnergyDay,
  energyTrend,
  fitsFor,
  generatorPlan,
  holdOver,
  offFits,
  offSpans,
  powerDay,
  solarSheet,
  type Trace,
} from '../../../rules/cooler/index.ts';
import { HOUR, instant, MINUTE } from '../../../rules/units.ts';

const start = Date.UTC(2026, 5, 1);
const DAY = 24 * HOUR;
const trace = (count: number, step: number, at: (minute: number) => number): Trace => ({
  t: Array.from({ length: count }, (_, i) => instant(start + i * step * MINUTE)),
  value: Array.from({ length: count }, (_, i) => at(i * step)),
});

test('hold-over is told with its range, and with its default until a stop was seen', () => {
  // Newton's law: 3 to 5 °C at 20 °C outside, 6 h: 0.7510 h; a tenth less 0.6759 (method sheet: 0.676)
  const room = { inside: 3, outside: 20, limit: 5 };
  const learned = holdOver([6, 6, 6], room);
  expect(learned.toLimit).toBeCloseTo(0.751, 4);
  expect(learned.shortest).toBeCloseTo(0.6759, 4);
  expect(learned.longest).toBeCloseTo(0.8261, 4);
  const guessed = holdOver([], room);
  expect(guessed).toMatchObject({ tauHours: 6, learnedFrom: 0 });
  expect(guessed.shortest).toBeLessThan(learned.shortest ?? 0);
  // A quick beginning holds the short end: 4 ln(17/15) = 0.5007 h.
  expect(holdOver([6, 6, 6], room, 4).shortest).toBeCloseTo(0.5007, 4);
  expect(holdOver([6, 6, 6], room, 9).shortest).toBeCloseTo(0.6759, 4);
  // Beyond an hour the slow one goes on: at 12 h towards 12 °C, 9 e^(-1/6) = 7.6183 K are left after an
  // hour at 6 h; then 10.8 ln(7.6183/7) = 0.9141 h: 1.9141 h; without 10.8 ln(9/7) = 2.7142 h.
  const slow = { inside: 3, outside: 12, limit: 5 };
  expect(holdOver([12, 12], slow, 6).shortest).toBeCloseTo(1.9141, 3);
  expect(holdOver([12, 12], slow).shortest).toBeCloseTo(2.7142, 3);
  expect(holdOver([6], { ...room, outside: 4 }).toLimit).toBeNull();
  expect(holdOver([6], { ...room, inside: null }).toLimit).toBeNull();
  expect(holdOver([1, 90, 5, 6, 7, 6, 6], room).tauHours).toBe(6); // the middle of the last five
});

test('stops with the same contents speak first', () => {
  const fits = [
    { tauHours: 4, contents: 'empty' },
    { tauHours: 9, contents: 'full' },
    { tauHours: 5, contents: null },
  ];
  expect(fitsFor(fits, 'full')).toEqual([9]);
  expect(fitsFor(fits, 'half')).toEqual([4, 9, 5]);
  expect(fitsFor(fits, null)).toEqual([4, 9, 5]);
});

test('the set runs before the limit, long enough to carry out what came in, and burns its litres', () => {
  // By hand: 2 to 5 °C at 16 °C, 6 h: 6 ln(14/11) = 1.4470 h. Share 0.35 at a difference of 13 K; at
  // 16 - 3.5 = 12.5 K it is 0.3365; 1.4470 x 0.3365 / 0.6635 + 0.25 = 0.9839 h; at 0.5 L/h 0.4919 L;
  // petrol 2.3477 kg/L: 1.155 kg; at 2 a litre 0.984.
  const plan = generatorPlan(
    { inside: 2, outside: 16, limit: 5, bottom: 2, tauHours: 6, share: 0.35, shareGap: 13 },
    { litresPerHour: 0.5, fuel: 'petrol', price: 2 },
  );
  expect(plan.runIn).toBeCloseTo(1.447, 4);
  expect(plan.thenHolds).toBeCloseTo(1.447, 4);
  expect(plan.runFor).toBeCloseTo(0.9839, 3);
  expect(plan.litres).toBeCloseTo(0.4919, 3);
  expect(plan.carbonDioxide).toBeCloseTo(1.155, 3);
  expect(plan.money).toBeCloseTo(0.984, 3);
  const cool = generatorPlan(
    { inside: 2, outside: 4, limit: 5, bottom: 2, tauHours: 6, share: 0.35, shareGap: 13 },
    null,
  );
  expect(cool).toMatchObject({ runIn: null, litres: null });
});

test('on a hot day the set runs as its energy grows, which the weather is a part of', () => {
  // By hand: share 0.35 at 4 K; energy 3 + 0.4 a K. At 25 - 3.5 = 21.5 K it needs 11.6 against 4.6 kWh:
  // 0.35 x 2.5217 = 0.8826. Off 6 ln(23/20) = 0.8386 h: 0.8386 x 0.8826 / 0.1174 + 0.25 = 6.555 h.
  const room = { inside: 2, outside: 25, limit: 5, bottom: 2, tauHours: 6 };
  const need = { slope: 0.4, intercept: 3 };
  const plan = generatorPlan({ ...room, share: 0.35, shareGap: 4, need }, null);
  expect(plan.runFor).toBeCloseTo(6.555, 2);
  // Without a line: twice the usual at the most, 0.7: 0.8386 x 0.7 / 0.3 + 0.25 = 2.207 h.
  const guess = generatorPlan({ ...room, share: 0.35, shareGap: 4 }, null);
  expect(guess.runFor).toBeCloseTo(2.207, 2);
  // A day as mild as 2 K says nothing of proportion: 0.8386 x 0.35 / 0.65 + 0.25 = 0.7016 h.
  expect(generatorPlan({ ...room, share: 0.35, shareGap: 2 }, null).runFor).toBeCloseTo(0.7016, 3);
});

test('a counter that rolls over or is reset within the day loses nothing it does not have to', () => {
  // 0.25 kWh an hour: 6 a day
  const hours = (at: (hour: number) => number) => trace(25, 60, (minute) => at(minute / 60));
  expect(countedDay(hours((h) => 100 + h / 4))).toEqual({ kilowattHours: 6, minimum: false });
  const rolled = countedDay(hours((h) => (999_997 + h / 4) % 1_000_000));
  expect(rolled?.kilowattHours).toBeCloseTo(6, 6);
  expect(rolled?.minimum).toBe(false);
  const reset = countedDay(hours((h) => (h < 12 ? 5000 + h / 4 : (h - 12) / 4)));
  expect(reset?.minimum).toBe(true);
  expect(reset?.kilowattHours).toBeCloseTo(5.75, 6); // the hour of the reset is lost
  expect(countedDay(hours((h) => (h === 7 ? 90_000 : 100 + h / 4)))?.kilowattHours).toBeCloseTo(
    6,
    6,
  );
  expect(countedDay(trace(5, 60, (minute) => minute))).toBeNull();
});

test('energy by power is scaled for holes, and too little of the day gives none', () => {
  const whole = trace(1441, 1, () => 250);
  expect(drawnDay(whole, 10 * MINUTE)?.kilowattHours).toBeCloseTo(6, 6);
  const cut = { t: whole.t.slice(0, 900), value: whole.value.slice(0, 900) };
  expect(drawnDay(cut, 10 * MINUTE)).toBeNull();
});

test('pauses and stops are told apart by a meter, and stops teach the time constant', () => {
  // Running 20 of 60 minutes; from 12:00 on nothing for two hours.
  const watts = trace(1440, 1, (m) => (m >= 720 && m < 840 ? 0 : m % 60 < 20 ? 600 : 5));
  const day = powerDay(watts, 10 * MINUTE);
  expect(day).toMatchObject({ running: 600, waiting: 5 });
  expect(day?.longestPause).toBe(40);
  expect(offSpans(watts, 10 * MINUTE).some(({ from, to }) => to - from > 100 * MINUTE)).toBe(true);
  // Newton's law with 4 h towards 20 °C
  const air = trace(1440, 1, (m) => (m < 720 ? 3 : 20 - 17 * Math.exp(-(m - 720) / 240)));
  const outside = trace(288, 5, () => 20);
  const off = [{ from: instant(start + 720 * MINUTE), to: instant(start + 840 * MINUTE) }];
  const [fit] = offFits(off, { air, outside, door: null });
  expect(fit?.tauHours).toBeCloseTo(4, 6);
  expect(fit?.at).toBe(off[0]?.from);
  expect(fit?.swiftHours).toBeCloseTo(4, 6); // one constant from the first minute on
  // The air is 1 K warmer from five minutes after the stop on: after 50 minutes 20 - 17 e^(-50/240) + 1.
  const jump = trace(1440, 1, (m) => (air.value[m] ?? 3) + (m >= 725 ? 1 : 0));
  const quick = offFits(off, { air: jump, outside, door: null })[0]?.swiftHours;
  const reached = 21 - 17 * Math.exp(-50 / 240);
  expect(quick).toBeCloseTo(50 / 60 / Math.log(17 / (20 - reached)), 4);
  const door = trace(1440, 1, (m) => (m === 760 ? 1 : 0));
  expect(offFits(off, { air, outside, door })).toEqual([]);
});

const days = (count: number, more: (day: number) => number): EnergyDay[] =>
  Array.from({ length: count }, (_, day) => {
    const gap = 8 + ((day * 5) % 9);
    const wobble = 0.15 * Math.sin(day * 2.3);
    return {
      from: instant(start + day * DAY),
      kilowattHours: 1.58 + 0.23 * gap + wobble + more(day),
      gap,
      duty: null,
    };
  });

test('ice on the coil shows as energy that the weather does not explain, and is dated', () => {
  expect(energyTrend(days(28, () => 0)).signal).toBeNull();
  const iced = energyTrend(days(28, (day) => Math.max(0, 0.12 * (day - 16))));
  expect(iced.signal).toBe('more');
  expect(iced.share).toBeGreaterThan(0.1);
  const since = ((iced.since ?? 0) - start) / DAY;
  expect(since).toBeGreaterThanOrEqual(14);
  expect(since).toBeLessThanOrEqual(22);
  expect(energyTrend(days(9, () => 0)).signal).toBeNull();
});

test('panels and battery come from the measured line at the difference asked for', () => {
  // Method sheet: 6 kWh/d, 3 h, 0.75 -> 2.667 kW; 2 days, 0.8, 0.9 -> 16.667 kWh
  const sheet = solarSheet({ line: null, mean: 6, gap: null });
  expect(sheet?.panels).toBeCloseTo(2.6667, 4);
  expect(sheet?.battery).toBeCloseTo(16.6667, 4);
  // Method sheet's line: slope 0.23, intercept 1.58, at 13 K 4.57 kWh
  const line = energyTrend(days(28, () => 0)).line;
  const byLine = solarSheet({
    line: line && { ...line, slope: 0.23, intercept: 1.58 },
    mean: 6,
    gap: 13,
  });
  expect(byLine?.kilowattHours).toBeCloseTo(4.57, 6);
  expect(solarSheet({ line: null, mean: null, gap: 13 })).toBeNull();
});
