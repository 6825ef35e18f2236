import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  coolingTime,
  fitProduceTimeConstant,
  halfCoolingTime,
  moveProduceBy,
  offPeriodFit,
  produceTime,
  respirationHeat,
  sevenEighthsCoolingTime,
  usualTimeConstant,
  warmedTo,
  warmingTime,
  warmingUnder,
} from '../../../rules/cooler/index.ts';
import { HOUR, instant, MINUTE, minutes } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

const at = (hour: number, value: number | null) => ({ t: instant(hour * HOUR), value });

test.for(truth('cooler/warmedTo.csv', ['inside', 'outside', 'tau_h', 'hours', 'room_c']))(
  'from $inside °C with $outside outside, $hours h on: $room_c °C',
  ({ inside, outside, tau_h, hours, room_c }) => {
    expect(warmedTo({ inside, outside, tauHours: tau_h, after: hours })).toBeCloseTo(room_c, 5);
  },
);

test('the time to a temperature and the temperature after a time turn each other round', () => {
  const tau = fc.double({ min: 0.5, max: 60, noNaN: true });
  fc.assert(
    fc.property(tau, fc.double({ min: 3.1, max: 19, noNaN: true }), (tauHours, target) => {
      const after = warmingTime({ inside: 3, outside: 20, target, tauHours }) ?? -1;
      return Math.abs(warmedTo({ inside: 3, outside: 20, tauHours, after }) - target) < 1e-9;
    }),
  );
});

test('a value that is not known leaves the time unknown, and is not 0 °C', () => {
  expect(warmingTime({ inside: null, outside: 20, target: 5, tauHours: 6 })).toBeNull();
  expect(warmedTo({ inside: 3, outside: null, tauHours: 6, after: 1 })).toBeNull();
  const crate = { air: 3, produce: null, tauHours: 6, produceTauHours: 2, limit: 5 };
  expect(produceTime({ outside: 20, ...crate })).toBeNull();
});

test('outside rising from 15 to 25 and back to 20 °C brings the room to 14.6077 in six hours', () => {
  // SciPy 1.17 (solve_ivp) on the same differential equation; 8 °C after 143.7 min.
  const outside = [
    at(0, 15),
    at(1, 17.5),
    at(2, 20),
    at(3, 22.5),
    at(4, 25),
    at(5, 22.5),
    at(6, 20),
  ];
  const { end, targetAt } = warmingUnder(outside, { inside: 3, target: 8, tauHours: 6 });
  expect(end).toBeCloseTo(14.607699, 5);
  expect(targetAt).toBe(144 * MINUTE);
});

test('with a steady outside it is the closed form', () => {
  const outside = [0, 1, 2, 3].map((hour) => at(hour, 20));
  const { end, targetAt } = warmingUnder(outside, { inside: 3, target: 5, tauHours: 6 });
  expect(end).toBeCloseTo(warmedTo({ inside: 3, outside: 20, tauHours: 6, after: 3 }), 9);
  expect(targetAt).toBe(46 * MINUTE); // 0.7510 h, to the minute after
});

test('beyond a gap or a null in the forecast nothing is said', () => {
  const unknown = { end: null, targetAt: null };
  const room = { inside: 3, target: 5, tauHours: 6 };
  expect(warmingUnder([at(0, 20), at(1, null), at(2, 20)], room)).toEqual(unknown);
  expect(warmingUnder([at(0, 20), at(1.51, 20)], room)).toEqual(unknown);
  expect(warmingUnder([at(0, 20), at(1.5, 20)], room).end).not.toBeNull();
  expect(warmingUnder([], room)).toEqual(unknown);
  expect(warmingUnder([at(0, 20), at(1, 20)], { ...room, inside: null })).toEqual(unknown);
});

test.for(truth('cooler/coolingTime.csv', ['target_c', 'hours']))(
  'a crate at 22 °C in a room at 3 °C reaches $target_c °C in $hours h',
  ({ target_c, hours }) => {
    const crate = { produce: 22, room: 3, target: target_c, produceTauHours: 2.5 };
    expect(coolingTime(crate)).toBeCloseTo(hours, 6);
  },
);

test('half-cooling takes 1.7329 h and seven eighths 5.1986 h at 2.5 h: three halves', () => {
  // SciPy 1.17, as in cooler/coolingTime.csv: 12.5 and 5.375 °C.
  expect(halfCoolingTime(2.5)).toBeCloseTo(1.7328679, 6);
  expect(sevenEighthsCoolingTime(2.5)).toBeCloseTo(5.1986039, 6);
  expect(halfCoolingTime(null)).toBeNull();
});

test('a crate already cold needs no time, and a room no colder than the target never does it', () => {
  expect(coolingTime({ produce: 4, room: 3, target: 5, produceTauHours: 2.5 })).toBe(0);
  expect(coolingTime({ produce: 22, room: 5, target: 5, produceTauHours: 2.5 })).toBeNull();
});

test('the constant of a crate that cools comes out of its readings', () => {
  const readings = [0, 1, 2, 4].map((hour) => at(hour, 3 + 19 * Math.exp(-hour / 2.5)));
  const fit = fitProduceTimeConstant([...readings, at(5, null)], 3);
  expect(fit?.tauHours).toBeCloseTo(2.5, 9);
  expect(fit?.r2).toBeCloseTo(1, 9);
  expect(() => fitProduceTimeConstant([at(0, 2), at(1, 5), at(2, 4)], 3)).toThrow('from above 3');
  expect(fitProduceTimeConstant(readings, null)).toBeNull();
});

const stop = (tau: number, until: number, every = 5) => {
  const readings = [];
  for (let minute = 0; minute <= until; minute += every) {
    readings.push(at(minute / 60, 20 - 17 * Math.exp(-minute / 60 / tau)));
  }
  return readings;
};
const steady = [at(0, 20), at(1, 20), at(2, 20)];

test.for(
  truth('cooler/timeConstant.csv', ['outside', 'tau_h', 'error_h', 'r2'], ['hours', 'values']),
)('a stretch of $values °C has $tau_h h, give or take $error_h', (row) => {
  const values = row.values.split(' ').map(Number);
  const hours = row.hours.split(' ').map(Number);
  // The ten minutes left out are put before it.
  const readings = [at(0, 1.9), ...values.map((value, i) => at((hours[i] ?? 0) + 0.5, value))];
  const fit = offPeriodFit(readings, [at(0, row.outside), at(4, row.outside)]);
  expect(fit.tauHours).toBeCloseTo(row.tau_h, 5);
  expect(fit.seHours).toBeCloseTo(row.error_h, 5);
  expect(fit.r2).toBeCloseTo(row.r2, 6);
  expect(fit.refused).toEqual([]);
});

test('the first ten minutes are left out', () => {
  const odd = stop(6, 60).map((reading) =>
    reading.t < 10 * MINUTE ? { ...reading, value: 9 } : reading,
  );
  expect(offPeriodFit(odd, steady).tauHours).toBeCloseTo(6, 6);
  const odder = stop(6, 60).map((reading) =>
    reading.t <= 10 * MINUTE ? { ...reading, value: 9 } : reading,
  );
  expect(offPeriodFit(odder, steady).tauHours).not.toBeCloseTo(6, 1);
});

test.for([
  ['too-short', stop(2, 29, 1), steady],
  ['too-little-change', stop(6, 56, 1), steady], // 1.98 K after the first ten minutes
  ['outside-moved', stop(6, 120), [at(0, 19), at(1, 21.02)]],
  ['outside-not-known', stop(6, 120), [at(1, null)]],
  ['not-below-outside', stop(6, 120), [at(0, 7.5), at(1, 7.5)]],
  ['too-few-readings', [at(0, 3), at(0.5, 5), at(1, 9)], steady],
] as const)('a stretch is refused: %s', ([why, readings, outside]) => {
  const fit = offPeriodFit(readings, outside);
  expect(fit.refused).toContain(why);
  expect(fit.tauHours).toBeNull();
});

test.for([
  ['30 minutes', stop(2, 30, 1), steady],
  ['2 K', stop(6, 57, 1), steady], // 2.02 K
  ['three readings', [at(0, 3), ...stop(6, 90, 30).slice(1)], steady],
  ['2 K outside', stop(6, 120), [at(0, 19), at(1, 20), at(2, 21)]],
] as const)('just enough of %s is accepted', ([, readings, outside]) => {
  expect(offPeriodFit(readings, outside).refused).toEqual([]);
});

test('a crooked stretch is refused, a nearly straight one not', () => {
  const bent = (size: number) =>
    stop(6, 120).map(({ t, value }, i) => ({
      t,
      value: (value ?? 0) + (i % 2 === 0 ? size : -size),
    }));
  expect(offPeriodFit(bent(0.15), steady).refused).toEqual([]);
  expect(offPeriodFit(bent(0.5), steady).refused).toEqual(['not-straight']);
});

test('the usual constant is the median of the last five', () => {
  expect(usualTimeConstant([99, 6, 7, 5, 8, 6.5])).toBe(6.5);
  expect(usualTimeConstant([99, 1, 7, 5, 8, 6.5])).toBe(6.5);
  expect(usualTimeConstant([])).toBeNull();
});

test('100 kg of strawberries at 75 mg/(kg h) give 22.2 W', () => {
  // 673 kcal a mole of sugar, 264 g CO2: Python, 10.66603 J/mg.
  expect(respirationHeat(75, 100)).toBeCloseTo(22.220896, 5);
  expect(respirationHeat(1, 1000)).toBeCloseTo(2.962786, 5);
  expect(respirationHeat(null, 100)).toBeNull();
});

const room = { outside: 20, air: 3, tauHours: 6, limit: 5 };

test('produce is to be moved before the first crate is warm, less the carrying', () => {
  // cooler/produceTime.csv: 2.3176 h; cooler/warmingTime.csv: 0.7510 h.
  const crates = [
    { produce: 3, produceTauHours: 4 },
    { produce: 3, produceTauHours: 2.5 },
  ];
  const by = moveProduceBy(instant(0), room, crates, minutes(30));
  expect((by.airAt ?? 0) / HOUR).toBeCloseTo(0.751, 4);
  expect((by.produceAt ?? 0) / HOUR).toBeCloseTo(2.3176, 4);
  expect((by.moveBy ?? 0) / HOUR).toBeCloseTo(1.8176, 4);
  expect(by.unknownCrates).toBe(0);
});

test('a crate nobody measured sets no deadline but is counted; a cold day sets none', () => {
  const unknown = { produce: null, produceTauHours: 1 };
  expect(moveProduceBy(instant(0), room, [unknown], minutes(30))).toMatchObject({
    produceAt: null,
    moveBy: null,
    unknownCrates: 1,
  });
  const crates = [{ produce: 3, produceTauHours: 2.5 }];
  expect(moveProduceBy(instant(0), { ...room, outside: 4 }, crates, minutes(30))).toEqual({
    airAt: null,
    produceAt: null,
    moveBy: null,
    unknownCrates: 0,
  });
});
