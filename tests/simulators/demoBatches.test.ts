import { expect, test } from 'vitest';
import { demoBatches } from '../../simulators/demoBatches.ts';
import { houseYear } from '../../simulators/houseYear.ts';
import { createWorld, scenario } from '../../simulators/index.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;

test('the hours that made-up batches grow by are those that the made-up probes measure', () => {
  const from = Date.UTC(2026, 2, 10);
  const { houses } = houseYear(scenario, from, from + 3 * DAY);
  const world = createWorld(scenario.plan, scenario.seed);
  for (const [name, hours] of Object.entries(houses)) {
    expect(hours, name).toHaveLength(72);
  }
  for (let hour = 0; hour < 72; hour++) {
    let [sum, steps] = [0, 0];
    for (let t = from + hour * HOUR + 300_000; t <= from + (hour + 1) * HOUR; t += 300_000) {
      sum += world.advanceTo(t).tunnels['long-house']?.temperature ?? Number.NaN;
      steps++;
    }
    const own = houses['long-house']?.[hour]?.temperature ?? Number.NaN;
    expect(Math.abs(own - sum / steps), `hour ${hour}`).toBeLessThan(0.5);
  }
});

test('a year of batches is the same each time, and slower where it is colder and duller', () => {
  const csv = demoBatches(scenario);
  expect(demoBatches(scenario)).toBe(csv);
  const rows = csv.split('\n').map((line) => line.split(','));
  const at = new Map<string, number>();
  const days: Record<string, number[]> = {};
  for (const [batch = '', event, time = ''] of rows) {
    if (event === 'sown') at.set(batch, Date.parse(time));
    if (event !== 'cut') continue;
    expect(Date.parse(time)).toBeLessThan(scenario.start);
    const sown = at.get(batch) ?? Number.NaN;
    const key = `${batch.replace(/-\d{4}-\d+$/, '')} ${new Date(sown).getUTCMonth() + 1}`;
    days[key] = [...(days[key] ?? []), (Date.parse(time) - sown) / DAY];
  }
  expect(at.size).toBeGreaterThan(120);
  const mean = (key: string) => {
    const found = days[key] ?? [];
    return found.reduce((sum, one) => sum + one, 0) / found.length;
  };
  expect(mean('pea-shoots 12')).toBeGreaterThan(2 * mean('pea-shoots 6'));
  expect(mean('radish-shoots 12')).toBeGreaterThan(2 * mean('radish-shoots 7'));
});
