import { expect, test } from 'vitest';
import { kilometresBetween, zoneTowns } from '../../../dashboard/setUp/zoneTowns.ts';

const town = (zone: string) => {
  const found = zoneTowns.find((one) => one.zone === zone);
  if (!found) throw new Error(`Expected ${zone} in the table, got none`);
  return found;
};

test('every town has a position on the globe, and a zone that clocks know', () => {
  expect(zoneTowns.length).toBeGreaterThan(400);
  for (const { zone, lat, lon } of zoneTowns) {
    expect(Math.abs(lat), zone).toBeLessThanOrEqual(90);
    expect(Math.abs(lon), zone).toBeLessThanOrEqual(180);
  }
  const unknown = zoneTowns.filter(({ zone }) => {
    try {
      new Intl.DateTimeFormat('en', { timeZone: zone });
      return false;
    } catch {
      return true;
    }
  });
  // A zone made after the machine's own tables is no fault of the list: Coyhaique is of 2025.
  expect(unknown.map(({ zone }) => zone).filter((zone) => zone !== 'America/Coyhaique')).toEqual(
    [],
  );
});

// Great-circle distances between town centres as atlases print them (from memory). The table has tenths
// of a degree: each end may be 8 km off.
test.for([
  ['Europe/London', 'Europe/Paris', 344],
  ['Europe/London', 'America/New_York', 5570],
  ['Australia/Sydney', 'Pacific/Auckland', 2156],
  ['Africa/Nairobi', 'Africa/Johannesburg', 2913],
] as const)('%s to %s is %d km', ([from, to, km]) => {
  expect(Math.abs(kilometresBetween(town(from), town(to)) - km)).toBeLessThan(16);
});

test('a point is nowhere from itself, and half round the globe from its other side', () => {
  expect(kilometresBetween({ lat: 52, lon: -8 }, { lat: 52, lon: -8 })).toBe(0);
  const half = kilometresBetween({ lat: 52, lon: -8 }, { lat: -52, lon: 172 });
  expect(half).toBeCloseTo(Math.PI * 6371, 0); // mean radius of the earth, IUGG
});
