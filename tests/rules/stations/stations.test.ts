import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  isClearCalmAtStation,
  parseDaysCsv,
  parseDly,
  parseDlyLine,
  parseIsdLite,
  parseIsdLiteLine,
  type StationHour,
  stationDays,
} from '../../../rules/stations/index.ts';
import { HOUR, instant } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

// Invented, in the published layout.
const dly = 'XX000012345201904TMIN  -23  S   15 IS-9999       4  S';
const isd = '2019 04 12 05   -12   -25 10213   250    15     0    -1 -9999';
/** A `.dly` line of one value, with its three flags, on the first of the month. */
const one = (element: string, value: number, flags = '   ', month = '201904') =>
  `XX000012345${month}${element}${String(value).padStart(5)}${flags}`;

test.for(truth('stations/dly.csv', ['date'], ['value', 'refused']))(
  'April $date reads $value ($refused)',
  (row) => {
    const found = parseDlyLine(dly, 1)[row.date - 1];
    expect(found).toMatchObject({
      station: 'XX000012345',
      day: `2019-04-0${row.date}`,
      element: 'TMIN',
      value: row.value === 'null' ? null : Number(row.value),
      refused: row.refused === 'none' ? null : row.refused,
    });
  },
);

test('a month has its own days, trimmed or padded, and no more', () => {
  expect(parseDlyLine(dly, 1)).toHaveLength(30);
  expect(parseDlyLine(`${dly.padEnd(269)}\r`, 1)).toEqual(parseDlyLine(dly, 1));
  expect(parseDlyLine(one('TMIN', 5, '   ', '202402'), 1)).toHaveLength(29);
  const longest = `${one('TMAX', 5).slice(0, 21)}${'  101  S'.repeat(30)}-9999   `;
  expect(parseDlyLine(longest, 1).at(-1)).toMatchObject({ day: '2019-04-30', value: 10.1 });
});

test.for([
  ['TMAX', 251, 25.1],
  ['TMIN', -251, -25.1],
  ['TAVG', 7, 0.7],
  ['PRCP', 103, 10.3],
  ['SNOW', 51, 51],
  ['SNWD', 51, 51],
] as const)('%s %d is %d', ([element, count, value]) => {
  expect(parseDlyLine(one(element, count), 1)[0]?.value).toBe(value);
});

test.for([...'DGIKLMNORSTWXZ'])('quality flag %s: not known', (flag) => {
  expect(parseDlyLine(one('TMAX', 251, ` ${flag}S`), 1)[0]).toMatchObject({
    value: null,
    refused: 'failed-check',
  });
});

test('trace rain is wet and nothing; presumed zero is not known; lagged is kept and said', () => {
  expect(parseDlyLine(one('PRCP', 0, 'T  '), 1)[0]).toMatchObject({ value: 0, trace: true });
  expect(parseDlyLine(one('PRCP', 0, 'P  '), 1)[0]).toMatchObject({
    value: null,
    trace: false,
    refused: 'presumed-zero',
  });
  expect(parseDlyLine(one('TMIN', 12, 'L  '), 1)[0]).toMatchObject({ value: 1.2, lagged: true });
  expect(parseDlyLine(one('TMIN', 12, 'H  '), 1)[0]).toMatchObject({ value: 1.2, lagged: false });
  expect(parseDlyLine(one('PRCP', 12, 'B  '), 1)[0]?.value).toBe(1.2);
});

test('elements without a use are passed over, and so are empty lines', () => {
  expect(parseDly(`${one('AWND', 12)}\n\n${one('TMIN', 12)}\n`)).toHaveLength(30);
});

test.for([
  ['"2-5"', `${dly.slice(0, 21)}  2-5`, 'a whole number in TMIN of day 1 of line 3, got "  2-5"'],
  ['month 13', one('TMIN', 5, '   ', '201913'), 'month from 1 to 12 in month of line 3, got "13"'],
  [
    'no year',
    one('TMIN', 5, '   ', '    04'),
    'year from 1700 to 2200 in year of line 3, got "    "',
  ],
  [
    'an odd station',
    'XX0 0012345201904TMIN',
    '11 letters or digits in station of line 3, got "XX0 0012345"',
  ],
  ['an odd element', 'XX000012345201904T IN', '4 letters in element of line 3, got "T IN"'],
  ['a hot day', one('TMAX', 601), '-90 to 60 in TMAX of day 1 of line 3, got "  601   "'],
  ['a cold day', one('TMIN', -901), '-90 to 60 in TMIN of day 1 of line 3, got " -901   "'],
  ['a cold mean', one('TAVG', 601), '-90 to 60 in TAVG of day 1 of line 3, got "  601   "'],
  ['rain below nothing', one('PRCP', -1), '0 to 2000 in PRCP of day 1 of line 3, got "   -1   "'],
  ['a flood', one('PRCP', 20_001), '0 to 2000 in PRCP of day 1 of line 3, got "20001   "'],
  ['much snow', one('SNOW', 5001), '0 to 5000 in SNOW of day 1 of line 3, got " 5001   "'],
  ['deep snow', one('SNWD', 20_001), '0 to 20000 in SNWD of day 1 of line 3, got "20001   "'],
  [
    '31 April',
    `${dly.slice(0, 21)}${'    4  S'.repeat(31)}`,
    'no value past the end of the month in TMIN of day 31 of line 3, got "    4  S"',
  ],
  ['a long line', 'X'.repeat(270), '269 characters in length of line 3, got "270"'],
])('a .dly line with %s is refused by line and field', ([, text = '', sentence]) => {
  expect(() => parseDly(`${dly}\n\n${text}`)).toThrow(new RangeError(`Expected ${sentence}`));
});

test('days are put together; a morning reader saw the maximum the day before', () => {
  const values = [
    ...parseDlyLine(one('TMIN', -12, 'L  '), 1),
    ...parseDlyLine(one('TMAX', 105), 2),
    ...parseDlyLine(one('PRCP', 0, 'T  '), 3),
  ];
  expect(stationDays(values)[0]).toEqual({
    day: '2019-04-01',
    min: -1.2,
    max: 10.5,
    rain: 0,
    trace: true,
  });
  expect(stationDays(values, { readInTheMorning: true }).slice(0, 2)).toMatchObject([
    { day: '2019-03-31', min: null, max: 10.5, rain: null, trace: false },
    { day: '2019-04-01', min: -1.2, max: null },
  ]);
  expect(stationDays(values, { forDates: true })[0]).toMatchObject({ min: null, max: 10.5 });
  expect(() => stationDays([...values, ...parseDlyLine(`Y${dly.slice(1)}`, 4)])).toThrow(
    'Expected values of the station XX000012345, got YX000012345',
  );
});

test('an hour of ISD-Lite, by position', () => {
  expect(parseIsdLiteLine(isd, 1)).toEqual({
    t: Date.UTC(2019, 3, 12, 5),
    temperature: -1.2,
    dewPoint: -2.5,
    pressure: 1021.3,
    windDirection: 250,
    wind: 1.5,
    sky: 0,
    rain: 0,
    rainTrace: true,
    rain6: null,
    rain6Trace: false,
  });
});

test('full columns touch and are still told apart', () => {
  const text = '2019 12 31 23  -512  -598 10899   360   125    19-99999   103';
  expect(() => parseIsdLiteLine(text, 1)).toThrow('0 to 500 in rain of 1 h');
  const full = parseIsdLiteLine(text.replace('-99999', ' -9999'), 1);
  expect(full).toMatchObject({ temperature: -51.2, pressure: 1089.9, sky: 19, rain: null });
  expect(full).toMatchObject({ wind: 12.5, rain6: 10.3, rainTrace: false });
});

test('any hour of any year is the instant the calendar says', () => {
  const hour = fc.integer({ min: Date.UTC(1901, 0, 1) / HOUR, max: Date.UTC(2100, 0, 1) / HOUR });
  fc.assert(
    fc.property(hour, (hours) => {
      const written = new Date(hours * HOUR).toISOString();
      const stamp = written.slice(0, 13).replace(/[-T]/g, ' ');
      return parseIsdLiteLine(`${stamp}${isd.slice(13)}`, 1).t === hours * HOUR;
    }),
  );
});

test('trimmed lines are not known where they end, and empty ones are passed over', () => {
  const [, short] = parseIsdLite(`${isd}\n\n${isd.slice(0, 31)}\r\n`);
  expect(short).toMatchObject({ temperature: -1.2, pressure: 1021.3, wind: null, rain6: null });
});

const change = (from: number, text: string) =>
  `${isd.slice(0, from)}${text}${isd.slice(from + text.length)}`;
test.for([
  [change(5, '13'), 'month from 1 to 12 in month of line 2, got "13"'],
  [change(8, '31'), 'day from 1 to 30 in day of line 2, got "31"'],
  [change(11, '24'), 'hour from 0 to 23 in hour of line 2, got "24"'],
  [change(0, '1899'), 'year from 1900 to 2200 in year of line 2, got "1899"'],
  [change(13, '   -x2'), 'a whole number in air temperature of line 2, got "   -x2"'],
  [change(13, '   651'), '-95 to 65 in air temperature of line 2, got "651"'],
  [change(13, '  -951'), '-95 to 65 in air temperature of line 2, got "-951"'],
  [change(19, '   401'), '-99 to 40 in dew point of line 2, got "401"'],
  [change(19, '  -991'), '-99 to 40 in dew point of line 2, got "-991"'],
  [change(25, ' 11001'), '850 to 1100 in sea-level pressure of line 2, got "11001"'],
  [change(25, '  8499'), '850 to 1100 in sea-level pressure of line 2, got "8499"'],
  [change(31, '   361'), '0 to 360 in wind direction of line 2, got "361"'],
  [change(37, '  1101'), '0 to 110 in wind speed of line 2, got "1101"'],
  [change(43, '    20'), '0 to 19 in sky code of line 2, got "20"'],
  [change(49, '  5001'), '0 to 500 in rain of 1 h of line 2, got "5001"'],
  [change(55, ' 10001'), '0 to 1000 in rain of 6 h of line 2, got "10001"'],
  [`${isd} 1`, '61 characters in length of line 2, got "63"'],
])('"%s" is refused by line and field', ([text = '', sentence]) => {
  expect(() => parseIsdLite(`${isd}\n${text}`)).toThrow(new RangeError(`Expected ${sentence}`));
});

const clear: StationHour = { ...parseIsdLiteLine(isd, 1), sky: 2, wind: 2 };
const night = (hours: number) =>
  Array.from({ length: hours }, (_, index) => ({ ...clear, t: instant(index * HOUR) }));
const [sunset, dawn] = [instant(0.5 * HOUR), instant(8.5 * HOUR)];

test('a station night is clear and calm when every hour of it was', () => {
  expect(isClearCalmAtStation(night(10), sunset, dawn)).toBe(true);
  const one = (change: Partial<StationHour>, at = 3) =>
    night(10).map((hour, index) => (index === at ? { ...hour, ...change } : hour));
  expect(isClearCalmAtStation(one({ sky: 3 }), sunset, dawn)).toBe(false);
  expect(isClearCalmAtStation(one({ wind: 2.03 }), sunset, dawn)).toBe(false);
  expect(isClearCalmAtStation(one({ sky: 3 }, 0), sunset, dawn)).toBe(true);
  expect(isClearCalmAtStation(one({ sky: 3 }, 9), sunset, dawn)).toBe(true);
  expect(isClearCalmAtStation(one({ sky: null }), sunset, dawn)).toBeNull();
  expect(isClearCalmAtStation(one({ sky: null, wind: 9 }), sunset, dawn)).toBe(false);
  expect(isClearCalmAtStation(night(8), sunset, dawn)).toBeNull();
  expect(isClearCalmAtStation([], sunset, sunset)).toBeNull();
});

test('a CSV of days is read by the names of its columns', () => {
  const text =
    '\uFEFFdate,max_c,other,min_c\r\n2019-04-01,10.5,x,-1.2\r\n"2019-04-02",, ,"3"\r\n\r\n';
  expect(parseDaysCsv(text)).toEqual([
    { day: '2019-04-01', min: -1.2, max: 10.5, rain: null, trace: false },
    { day: '2019-04-02', min: 3, max: null, rain: null, trace: false },
  ]);
  const header = { day: 'd', min: 'n', max: 'x', rain: 'r' };
  expect(parseDaysCsv('d,n,x,r\n2019-04-01,1,2,0.4', header)[0]?.rain).toBe(0.4);
  expect(parseDaysCsv('date,min_c,max_c,rain_mm\n2019-04-01,1,2,3')[0]?.rain).toBe(3);
});

test.for([
  ['date,min_c\n', 'a column max_c in header of line 1, got "date,min_c"'],
  ['date,min_c,max_c\n1 April,1,2', 'a day like 2025-10-15 in date of line 2, got "1 April"'],
  ['date,min_c,max_c\n2019-04-01,x,2', 'a number from -90 to 60 in min_c of line 2, got "x"'],
  ['date,min_c,max_c\n\n2019-04-01,1,61', 'a number from -90 to 60 in max_c of line 3, got "61"'],
  ['date,min_c,max_c\n2019-04-01,-91,1', 'a number from -90 to 60 in min_c of line 2, got "-91"'],
  ['date,min_c,max_c\n2019-04-01,5,1', 'a maximum from 5 up in max_c of line 2, got "1"'],
  [
    'date,min_c,max_c,rain_mm\n2019-04-01,1,2,2001',
    'a number from 0 to 2000 in rain_mm of line 2, got "2001"',
  ],
])('the CSV %j is refused by line and field', ([text = '', sentence]) => {
  expect(() => parseDaysCsv(text)).toThrow(new RangeError(`Expected ${sentence}`));
});

test('a column for rain that was asked for by name has to be there', () => {
  const header = { day: 'd', min: 'n', max: 'x', rain: 'r' };
  expect(() => parseDaysCsv('d,n,x\n', header)).toThrow('a column r in header of line 1');
});
