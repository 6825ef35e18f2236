import {
  Body,
  EquatorFromVector,
  GeoVector,
  MakeTime,
  Observer,
  RotateVector,
  Rotation_EQJ_EQD,
  SearchHourAngle,
  SiderealTime,
} from 'astronomy-engine';
import { expect, test } from 'vitest';
import { sunTimes } from '../../../rules/heat/index.ts';
import { sunPosition } from '../../../rules/heat/sunPosition.ts';
import { instant, MINUTE } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

const DAY = 86_400_000;
const CENTURY = 36_525 * DAY;
const degrees = (radians: number) => (radians * 180) / Math.PI;

test('the worked example of 13 October 1992 comes out to its last printed digit', () => {
  // Meeus 1998, Astronomical Algorithms, 2nd ed., example 25.a: -7.78507° (from memory).
  const { declination } = sunPosition(Date.UTC(1992, 9, 13));
  expect(Math.abs(degrees(declination) + 7.78507)).toBeLessThan(5e-6);
});

test.for(truth('heat/sunPosition.csv', ['ms', 'declination', 'equation']))(
  'at $ms ms the sun stands at $declination° and is $equation min ahead of the clock',
  ({ ms, declination, equation }) => {
    const found = sunPosition(ms);
    // Far out the printed arcseconds of the obliquity and our rounded degrees part: 2.5e-5°.
    const near = Math.abs(ms - Date.UTC(2000, 0, 1, 12)) < 1.01 * CENTURY;
    expect(Math.abs(degrees(found.declination) - declination)).toBeLessThan(near ? 2e-7 : 3e-5);
    expect(Math.abs(found.equationOfTime - equation)).toBeLessThan(near ? 1e-6 : 5e-5);
  },
);

test('from 1900 to 2100 astronomy-engine, another route to the sun, agrees to 0.004° and 4 s', () => {
  for (let ms = Date.UTC(1900, 0, 3); ms < Date.UTC(2100, 0, 1); ms += 37.3 * DAY) {
    const time = MakeTime(new Date(ms));
    const vector = RotateVector(Rotation_EQJ_EQD(time), GeoVector(Body.Sun, time, true));
    const { ra, dec } = EquatorFromVector(vector);
    const clock = (time.date.getTime() % DAY) / 3_600_000;
    // Hours of the true sun less those of the clock, turned to 0..24 with 12 where they agree.
    const ahead = (((SiderealTime(time) - ra - clock) % 24) + 48) % 24;
    const found = sunPosition(ms);
    expect(Math.abs(degrees(found.declination) - dec)).toBeLessThan(0.004);
    expect(Math.abs(found.equationOfTime - (ahead - 12) * 60)).toBeLessThan(4 / 60);
  }
});

test.for([-170, -60, 0, 60, 170])(
  'five minutes short of half a day from noon at %d° it is still the sun of that noon',
  (lon) => {
    // Noon by astronomy-engine: the transit of the sun.
    const here = new Observer(0, lon, 0);
    for (const month of [1, 6, 10]) {
      const from = new Date(Date.UTC(2025, month, 5));
      const noon = SearchHourAngle(Body.Sun, here, 0, from).time.date.getTime();
      for (const away of [-DAY / 2 + 5 * MINUTE, DAY / 2 - 5 * MINUTE]) {
        const { rise, set } = sunTimes(instant(Math.round(noon + away)), 0, lon);
        expect(Math.abs(((rise ?? 0) + (set ?? 0)) / 2 - noon)).toBeLessThan(MINUTE);
      }
    }
  },
);
