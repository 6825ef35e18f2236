import { expect, test } from 'vitest';
import { fruitCounts, scenario, stationDays } from '../../simulators/index.ts';

const made = (years: number) => [...stationDays(scenario, { years, to: scenario.start })];

test('the made-up station has every day once, up to the day before the story begins', () => {
  const [header, ...lines] = made(2);
  expect(header).toBe('date,tmin,tmax,rain\n');
  const days = lines.map((line) => line.slice(0, 10));
  expect(days).toHaveLength(731); // two years of 365.25 days
  expect(days.at(-1)).toBe('2026-04-22');
  for (const [at, day] of days.entries())
    if (at > 0) expect(Date.parse(day) - Date.parse(days[at - 1] ?? '')).toBe(86_400_000);
});

test('its days are those of a mild coast: no day colder at its warmest than at its coldest', () => {
  const rows = made(2)
    .slice(1)
    .map((line) => line.trim().split(',').slice(1).map(Number));
  for (const [min = Number.NaN, max = Number.NaN, rain = Number.NaN] of rows) {
    expect(min).toBeLessThanOrEqual(max);
    expect(min).toBeGreaterThan(-15);
    expect(max).toBeLessThan(35);
    expect(rain).toBeGreaterThanOrEqual(0);
  }
  expect(rows.some(([min]) => (min ?? 0) <= 0)).toBe(true); // a coast that never froze would show no odds
});

test('the same seed makes the same years', () => {
  expect(made(0.1)).toEqual(made(0.1));
});

test('what the made-up grower counted names places of the farm and days before its story', () => {
  const [header, ...lines] = fruitCounts.trim().split('\n');
  expect(header).toBe('counted,place,stage,kg,flowered');
  for (const line of lines) {
    const [counted = '', place = '', , kg = '', flowered = ''] = line.split(',');
    expect(['south-patch', 'far-patch']).toContain(place);
    expect(Date.parse(counted)).toBeLessThan(scenario.start);
    expect(Number(kg)).toBeGreaterThan(0);
    expect(flowered <= counted).toBe(true);
  }
});
