import { getPosition } from 'suncalc';
import { expect, test } from 'vitest';
import { declination, globalRadiation, skyLoss, sunHeight } from '../../simulators/sun.ts';

const HOUR = 3_600_000;

test('the sun stands where suncalc puts it, within a third of a degree', () => {
  // Spencer has one year for all, so the sun's place is up to a day old: 0.3° or more where it
  // moves fastest, in March and September.
  // suncalc 2 gives degrees and lifts the sun by refraction; above 15° that is below 0.06°.
  const begins = Date.parse('2026-01-01T00:00:00Z');
  let compared = 0;
  for (let t = begins; t < begins + 365 * 24 * HOUR; t += 5 * HOUR) {
    const { altitude } = getPosition(new Date(t), 52, -10.5);
    if (altitude < 15) continue;
    const ours = (Math.asin(sunHeight(t, 52, -10.5)) * 180) / Math.PI;
    expect(Math.abs(ours - altitude)).toBeLessThan(0.34);
    compared++;
  }
  expect(compared).toBeGreaterThan(400);
});

test('at the solstices the sun stands 23.44 degrees from the equator', () => {
  // Obliquity of the ecliptic, 23.44° (IAU 2006, rounded); Spencer's own fit is good to 0.035°.
  const degrees = (iso: string) => (declination(Date.parse(iso)) * 180) / Math.PI;
  expect(Math.abs(degrees('2026-06-21T12:00:00Z') - 23.44)).toBeLessThan(0.05);
  expect(Math.abs(degrees('2026-12-21T12:00:00Z') + 23.44)).toBeLessThan(0.05);
});

test('cloud takes sun by day and keeps heat by night', () => {
  let brighter = Number.POSITIVE_INFINITY;
  let colder = Number.POSITIVE_INFINITY;
  for (let cloud = 0; cloud <= 1; cloud += 0.1) {
    const sun = globalRadiation(0.7, cloud);
    const loss = skyLoss(5, 7, cloud);
    expect(sun).toBeLessThanOrEqual(brighter);
    expect(loss).toBeLessThan(colder);
    [brighter, colder] = [sun, loss];
  }
  expect(globalRadiation(-0.1, 0)).toBe(0);
});

test('a clear sky overhead gives about a thousand watts and takes about a hundred', () => {
  // Common practice, no source: some 1000 W/m² under high sun, 60 to 110 W/m² net loss at night.
  expect(globalRadiation(0.95, 0)).toBeGreaterThan(930);
  expect(globalRadiation(0.95, 0)).toBeLessThan(1100);
  expect(skyLoss(5, 7, 0)).toBeGreaterThan(60);
  expect(skyLoss(5, 7, 0)).toBeLessThan(110);
});
