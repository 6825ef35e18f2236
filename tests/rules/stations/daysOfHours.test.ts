import { expect, test } from 'vitest';
import {
  daysCsvLines,
  daysOfHours,
  morningReadersDays,
  parseIsdLiteLine,
  STATION_HEADER,
  type StationHour,
  stationDays,
} from '../../../rules/stations/index.ts';
import { HOUR, instant } from '../../../rules/units.ts';

// Invented hours of a station at 45° N on the zero meridian, whose sun time is UTC.
const empty = parseIsdLiteLine('2019 04 12 05', 1);
const begins = Date.UTC(2019, 3, 10);
const hours = (count: number, at: (hour: number) => Partial<StationHour>): StationHour[] =>
  Array.from({ length: count }, (_, hour) => ({
    ...{ ...empty, t: instant(begins + hour * HOUR), temperature: 8, wind: 1, sky: 0, rain: 0 },
    ...at(hour),
  }));
const third = (read: readonly StationHour[]) =>
  daysOfHours(read, 45, 0).find(({ day }) => day === '2019-04-11');

test('a night’s low belongs to the morning that ends it, also when it comes before midnight', () => {
  const cold = hours(72, (hour) => (hour === 23 ? { temperature: -1.5 } : {}));
  expect(third(cold)).toMatchObject({ min: -1.5, max: 8, calm: true });
  expect(daysOfHours(cold, 45, 0)[0]?.min).toBeNull(); // its evening was not measured
});

test('a cold afternoon is no night, and the warmest hour is of the day by the sun', () => {
  const odd = hours(72, (hour) =>
    hour === 36 ? { temperature: -4 } : hour === 38 ? { temperature: 19 } : {},
  );
  expect(third(odd)).toMatchObject({ min: 8, max: 19 });
});

test('a gap of more than two hours hides the low; wind or cloud is seen', () => {
  const gap = hours(72, (hour) => (hour >= 25 && hour <= 27 ? { temperature: null } : {}));
  expect(third(gap)?.min).toBeNull();
  const short = hours(72, (hour) => (hour === 26 ? { temperature: null } : {}));
  expect(third(short)?.min).toBe(8);
  expect(third(hours(72, (hour) => (hour === 26 ? { wind: 5 } : {})))?.calm).toBe(false);
  expect(third(hours(72, (hour) => (hour === 26 ? { sky: null } : {})))?.calm).toBeNull();
});

test('rain adds up; what was not seen is not dry', () => {
  expect(third(hours(72, (hour) => ({ rain: hour === 30 ? 1.2 : 0 })))?.rain).toBeCloseTo(1.2, 9);
  expect(third(hours(72, () => ({ rain: null })))?.rain).toBeNull();
  const partly = hours(72, (hour) => ({ rain: hour === 30 ? 2 : hour < 40 ? 0 : null }));
  expect(third(partly)?.rain).toBe(2);
  const six = hours(72, (hour) => ({ rain: null, rain6: hour % 6 === 0 ? 0.5 : null }));
  expect(third(six)?.rain).toBeCloseTo(2, 9);
  const trace = hours(72, (hour) => ({ rain: 0, rainTrace: hour === 30 }));
  expect(third(trace)).toMatchObject({ rain: 0, trace: true });
});

test('the days of a far longitude are those of its own sun', () => {
  // 147° E, 42° S: 23:00 UTC of the 10th is the morning of the 11th there.
  const days = daysOfHours(
    hours(96, (hour) => (hour === 20 ? { temperature: -2 } : {})), // 20 UTC: before sunrise there
    -42,
    147,
  );
  expect(days.find(({ day }) => day === '2019-04-11')?.min).toBe(-2);
  expect(daysOfHours([], 45, 0)).toEqual([]);
});

test('a morning reader’s maximum moves to the day before, from CSV as from an archive', () => {
  const read = daysCsvLines('date,tmin,tmax,tavg,rain', STATION_HEADER);
  const days = [read('2019-04-01,1,12,6,0.4', 2), read('2019-04-02,2,14,,', 3)].flatMap(
    (day) => day ?? [],
  );
  expect(morningReadersDays(days)).toEqual([
    { day: '2019-03-31', min: null, max: 12, rain: null, trace: false },
    { day: '2019-04-01', min: 1, max: 14, mean: 6, rain: 0.4, trace: false },
    { day: '2019-04-02', min: 2, max: null, mean: null, rain: null, trace: false },
  ]);
});

test('a station file may go without mean and rain, not without its lows', () => {
  expect(daysCsvLines('date,tmin,tmax', STATION_HEADER)('2019-04-01,1,2', 2)?.rain).toBeNull();
  expect(() => daysCsvLines('date,tmax', STATION_HEADER)).toThrow(
    'Expected a column tmin in header of line 1, got "date,tmax"',
  );
  expect(() => daysCsvLines('date,tmin,tmax', STATION_HEADER)('2019-04-01,1,99', 7)).toThrow(
    'Expected a number from -90 to 60 in tmax of line 7, got "99"',
  );
});

test('mean temperatures of an archive are kept beside the extremes', () => {
  const value = { station: 'XX000012345', day: '2019-04-01', trace: false, lagged: false };
  const of = (element: 'TMIN' | 'TAVG', number: number) =>
    ({ ...value, element, value: number, refused: null }) as const;
  expect(stationDays([of('TMIN', -1), of('TAVG', 4)])[0]).toMatchObject({ min: -1, mean: 4 });
});
