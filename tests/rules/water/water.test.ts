import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  availableWater,
  cropWater,
  cropWaters,
  daylightHours,
  evapotranspirationUnderCover,
  extraterrestrialRadiation,
  referenceEvapotranspiration,
  soilBucket,
} from '../../../rules/water/index.ts';
import { truth } from '../../truth/index.ts';

test.for(truth('water/radiation.csv', ['latitude', 'day', 'radiation', 'hours']))(
  'at $latitude° on day $day the sky gives $radiation MJ in $hours h',
  ({ latitude, day, radiation, hours }) => {
    expect(extraterrestrialRadiation(latitude, day)).toBeCloseTo(radiation, 5);
    expect(daylightHours(latitude, day)).toBeCloseTo(hours, 5);
  },
);

test.for(truth('water/evapotranspiration.csv', ['latitude', 'day', 'max', 'min', 'et0']))(
  'a day of $min to $max °C at $latitude° takes $et0 mm',
  ({ latitude, day, max, min, et0 }) => {
    const found = referenceEvapotranspiration({ min, max, latitude, dayOfYear: day });
    expect(found).toBeCloseTo(et0, 5);
  },
);

test('polar night gives nothing, and the longest day does not pass 24 h', () => {
  expect(extraterrestrialRadiation(80, 355)).toBe(0);
  expect(daylightHours(80, 355)).toBe(0);
  expect(daylightHours(80, 172)).toBeCloseTo(24, 9);
  expect(referenceEvapotranspiration({ min: -40, max: -30, latitude: 60, dayOfYear: 30 })).toBe(0);
});

test('a wider or a warmer day never takes less', () => {
  const t = fc.double({ min: -5, max: 20, noNaN: true });
  const more = fc.double({ min: 0.1, max: 15, noNaN: true });
  fc.assert(
    fc.property(t, more, more, fc.integer({ min: 1, max: 365 }), (min, range, by, dayOfYear) => {
      const et = (low: number, high: number) =>
        referenceEvapotranspiration({ min: low, max: high, latitude: 45, dayOfYear });
      const usual = et(min, min + range);
      return (
        et(min, min + range + by) >= usual - 1e-9 && et(min + by, min + by + range) >= usual - 1e-9
      );
    }),
  );
});

test('under a cover it is scaled by the light let through', () => {
  expect(evapotranspirationUnderCover(5, 0.7)).toBeCloseTo(3.5, 12);
  expect(evapotranspirationUnderCover(5, 0.7, 1.2)).toBeCloseTo(4.2, 12);
  expect(evapotranspirationUnderCover(null, 0.7)).toBeNull();
});

const soil = availableWater({
  fieldCapacity: 0.25,
  wiltingPoint: 0.11,
  rootDepth: 0.25,
  depletable: 0.2,
});
const bucket = truth('water/bucket.csv', ['rain', 'use', 'depletion', 'drained', 'water']);

test('strawberry roots find 35 mm, 7 of them readily', () => {
  expect(soil.total).toBeCloseTo(35, 9);
  expect(soil.ready).toBeCloseTo(7, 9);
});

test.for(bucket.map((row, index) => ({ ...row, index })))(
  'day $index ends $depletion mm short',
  (row) => {
    const found = soilBucket(4, bucket, soil)[row.index];
    expect(found?.depletion).toBeCloseTo(row.depletion, 9);
    expect(found?.drained).toBeCloseTo(row.drained, 9);
    expect(found?.water).toBe(row.water === 1);
  },
);

test('it is time to water exactly when the readily available water is gone', () => {
  const [at] = soilBucket(0, [{ rain: 0, use: soil.ready }], soil);
  expect(at?.water).toBe(true);
  const [before] = soilBucket(0, [{ rain: 0, use: soil.ready - 0.01 }], soil);
  expect(before?.water).toBe(false);
});

test('water is neither made nor lost, and the soil never gives more than it holds', () => {
  const day = fc.record({
    rain: fc.double({ min: 0, max: 30, noNaN: true }),
    irrigation: fc.double({ min: 0, max: 10, noNaN: true }),
    use: fc.double({ min: 0, max: 8, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(day, { maxLength: 30 }), (days) => {
      let before = 0;
      return soilBucket(0, days, soil).every(({ depletion, drained }, index) => {
        const { rain = 0, irrigation = 0, use = 0 } = days[index] ?? {};
        const wanted = before - rain - irrigation + use + (drained ?? 0);
        before = depletion ?? 0;
        return (
          Math.abs(Math.min(wanted, soil.total) - before) < 1e-9 &&
          before >= 0 &&
          before <= soil.total
        );
      });
    }),
  );
});

test('from a day not known on nothing is known', () => {
  const known = { rain: 0, use: 2 };
  const days = soilBucket(0, [known, { rain: null, use: 2 }, known], soil);
  expect(days[0]?.depletion).toBe(2);
  expect(days[1]).toEqual({ depletion: null, drained: null, water: null });
  expect(days[2]?.depletion).toBeNull();
  expect(soilBucket(null, [known], soil)[0]?.water).toBeNull();
  expect(soilBucket(0, [{ rain: 0, irrigation: null, use: 1 }], soil)[0]?.water).toBeNull();
});

const crops = truth(
  'water/cropWater.csv',
  ['initial', 'mid', 'end', 'depletable', 'depth'],
  ['crop'],
);

test.for(crops)('$crop takes $mid of the reference in full leaf', (row) => {
  const { initial, mid, end, depletable, depth } = row;
  expect(cropWater(row.crop)).toEqual({
    crop: row.crop,
    kc: { initial, mid, end },
    depletable,
    rootDepth: depth,
  });
});

test('every crop of the table has a check', () => {
  expect(cropWaters).toHaveLength(crops.length);
  expect(cropWater('moss')).toBeNull();
});

const day = { min: 5, max: 15, latitude: 45, dayOfYear: 100 };
const ground = { fieldCapacity: 0.3, wiltingPoint: 0.1, rootDepth: 0.3, depletable: 0.3 };
const box = { total: 35, ready: 7 };

test.for<[string, () => unknown]>([
  ['latitude from -90 to 90 °, got 91', () => extraterrestrialRadiation(91, 1)],
  ['day of the year from 1 to 366, got 367', () => daylightHours(45, 367)],
  ['minimum from -60 to 60 °C, got -61', () => referenceEvapotranspiration({ ...day, min: -61 })],
  ['maximum from 5 to 60 °C, got 4', () => referenceEvapotranspiration({ ...day, max: 4 })],
  [
    'reference evapotranspiration from 0 to 20 mm/d, got 21',
    () => evapotranspirationUnderCover(21, 1),
  ],
  ['share of light let through from 0 to 1, got 2', () => evapotranspirationUnderCover(2, 2)],
  ['calibration from 0 to 5, got 6', () => evapotranspirationUnderCover(2, 1, 6)],
  ['wilting point from 0 to 0.8, got 0.9', () => availableWater({ ...ground, wiltingPoint: 0.9 })],
  [
    'field capacity from 0.1 to 0.8, got 0.05',
    () => availableWater({ ...ground, fieldCapacity: 0.05 }),
  ],
  ['depth of roots from 0 to 3 m, got 4', () => availableWater({ ...ground, rootDepth: 4 })],
  ['depletable share from 0 to 1, got 2', () => availableWater({ ...ground, depletable: 2 })],
  [
    'available water from 0 to 2400 mm, got 2401',
    () => soilBucket(0, [], { total: 2401, ready: 1 }),
  ],
  [
    'readily available water from 0 to 35 mm, got 36',
    () => soilBucket(0, [], { total: 35, ready: 36 }),
  ],
  ['depletion from 0 to 35 mm, got 36', () => soilBucket(36, [], box)],
  ['rain from 0 to 500 mm, got 501', () => soilBucket(0, [{ rain: 501, use: 0 }], box)],
  [
    'irrigation from 0 to 500 mm, got -1',
    () => soilBucket(0, [{ rain: 0, irrigation: -1, use: 0 }], box),
  ],
  ['water used from 0 to 50 mm, got 51', () => soilBucket(0, [{ rain: 0, use: 51 }], box)],
])('Expected %s', ([sentence, call]) => {
  expect(call).toThrow(new RangeError(`Expected ${sentence}`));
});
