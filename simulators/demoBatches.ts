import { demoBatch, type Told } from './demoBatch.ts';
import { sowings } from './demoSeason.ts';
import { houseYear } from './houseYear.ts';
import { createLocalTime } from './localTime.ts';
import type { Scenario } from './scenario.ts';

// What the made-up grower wrote down of a year of batches, as a file for `dewpost import`. What grew,
// and when, follows from the weather inside the made-up tunnels; people, weights and money are invented.

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const WEEKS = 51;

const COLUMNS = [
  ...['batch', 'event', 'at', 'crop', 'variety', 'place', 'trays', 'kg', 'minutes', 'price'],
  ...['look', 'note', 'stage', 'clears', 'lost_kg', 'work', 'seed_cost', 'other_cost'],
  ...['part_of', 'into'],
] as const;

/** Trays that each house holds, as the farm file says. */
const CAPACITY: Readonly<Record<string, number>> = {
  ...{ 'long-house': 48, 'sun-house': 30, 'hollow-house': 40 },
};

/** Rows of CSV, oldest batch first. */
export function demoBatches({ plan, seed, ...rest }: Scenario): string {
  const scenario = { plan, seed, ...rest };
  const { start } = scenario;
  const local = createLocalTime(plan.zone);
  const from = start - WEEKS * 7 * DAY;
  const year = houseYear(scenario, from, start);
  /** Trays that stand in a house, by day since `from`. */
  const standing = new Map<string, number[]>();
  const room = (place: string, day: number) =>
    (CAPACITY[place] ?? 0) - Math.max(0, ...(standing.get(place)?.slice(day) ?? []));
  const rows: Told[] = [];
  for (let day = 0; day < WEEKS * 7; day++) {
    // Midnight of the farm: the hour of the day is taken off.
    const noon = from + day * DAY;
    const midnight = noon - local.hour(noon) * HOUR;
    const week = Math.floor(local.day(noon) / 7);
    for (const sowing of sowings) {
      const month = new Date(noon).getUTCMonth() + 1;
      if (local.weekday(noon) !== sowing.weekday || !sowing.months.includes(month)) continue;
      if (week % sowing.every !== 0) continue;
      const sownAt = midnight + sowing.hour * HOUR;
      if (sownAt >= start) continue;
      const turn = Math.floor(week / sowing.every) % sowing.places.length;
      const wanted = [...sowing.places.slice(turn), ...sowing.places.slice(0, turn)];
      const place = wanted.find((one) => room(one, day) >= sowing.trays);
      if (place === undefined) continue;
      const told = demoBatch({ scenario, year, local, sowing, place, sownAt, room, day });
      for (const { house, first, last, trays } of told.stood) {
        const days = standing.get(house) ?? new Array<number>(WEEKS * 7 + 1).fill(0);
        for (let i = first; i <= last; i++) days[i] = (days[i] ?? 0) + trays;
        standing.set(house, days);
      }
      rows.push(...told.rows);
    }
  }
  const cell = (value: string | number | undefined) => {
    const text = value === undefined ? '' : String(value);
    return /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  };
  return [
    COLUMNS.join(','),
    ...rows.map((row) => COLUMNS.map((column) => cell(row[column])).join(',')),
    '',
  ].join('\n');
}
