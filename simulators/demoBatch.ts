import type { Sowing } from './demoSeason.ts';
import { luckOf } from './demoSeason.ts';
import {
  type Growing,
  type GrowthKind,
  grow,
  growthKinds,
  meanLight,
  seedling,
  yieldOf,
} from './growth.ts';
import type { HouseYear } from './houseYear.ts';
import type { LocalTime } from './localTime.ts';
import type { Scenario } from './scenario.ts';

// The life of one made-up batch: it grows by the hours of its house, and the grower looks each morning.

const HOUR = 3_600_000;
const MINUTE = 60_000;
const MORNING = 7; // hour at which the grower looks
const CUT_DAYS = [1, 2, 3, 4]; // Tuesday to Friday: before and on the days of delivery

/** One row, by column. */
export type Told = Readonly<Record<string, string | number>>;
type Stood = {
  readonly house: string;
  readonly first: number;
  readonly last: number;
  readonly trays: number;
};
export type Asked = {
  readonly scenario: Scenario;
  readonly year: HouseYear;
  readonly local: LocalTime;
  readonly sowing: Sowing;
  readonly place: string;
  readonly sownAt: number;
  /** Trays that a house has room for from a day on. */
  readonly room: (place: string, day: number) => number;
  readonly day: number;
};

const iso = (t: number) => new Date(t).toISOString();
const gram = (kg: number) => Number(kg.toFixed(2));

/** What the grower wrote of it, and which trays stood where from day to day. */
export function demoBatch(asked: Asked): { rows: Told[]; stood: Stood[] } {
  const { scenario, year, local, sowing, sownAt, room } = asked;
  const kind = growthKinds[sowing.crop] as GrowthKind;
  const id = `${sowing.crop}-${iso(sownAt).slice(5, 10).replace('-', '')}-1`;
  const luck = luckOf(scenario.seed, id);
  const wants = kind.needs * (1 + 0.05 * luck.normal(1));
  const aim = sowing.crop === 'salad-leaves' && luck.uniform(2) < 0.3 ? kind.young : 1;
  const rows: Told[] = [];
  const stood: Stood[] = [];
  const { trays, variety, seed, other } = sowing;
  const tell = (event: string, at: number, more: Told = {}) =>
    rows.push({ batch: id, event, at: iso(at), ...more });
  tell('sown', sownAt, {
    ...{ crop: sowing.crop, variety: variety ?? '', place: asked.place, trays },
    ...{ seed_cost: gram(seed * trays), other_cost: gram(other * trays) },
  });
  const took = Math.round(trays * (3.5 + luck.uniform(3)));
  tell('worked', sownAt, { work: 'sowing', minutes: took });

  const plant: Growing = seedling();
  let place = asked.place;
  let left = trays;
  let since = asked.day;
  let said = { ready: false, mould: false, leggy: false, cold: false };
  const leaves = (day: number) => {
    stood.push({ house: place, first: since, last: day, trays: left });
    since = day + 1;
  };
  const dayOf = (t: number) => asked.day + local.day(t) - local.day(sownAt);
  for (let t = Math.ceil(sownAt / HOUR) * HOUR; t < scenario.start - HOUR; t += HOUR) {
    const index = Math.round((t - year.from) / HOUR);
    const hours = year.houses[place] ?? [];
    const hour = hours[index];
    if (!hour) break;
    const daylight = hours
      .slice(Math.max(0, index - 24), index)
      .reduce((sum, one) => sum + one.light, 0);
    grow(plant, kind, hour, daylight);
    if (local.hour(t) !== MORNING) continue;
    const at = t + 10 * MINUTE + Math.floor(20 * luck.uniform(index)) * MINUTE;
    const share = plant.heat / (wants * aim);
    // Mould shows where it was damp for long; some trays go, or all of them to an airier house.
    if (
      !said.mould &&
      plant.damp > 90 &&
      luck.uniform(10) < 1 - Math.exp(-(plant.damp - 90) / 260)
    ) {
      said = { ...said, mould: true };
      tell('noted', at, { look: 'mould', note: 'between the stems' });
      const lost = Math.min(left - 1, 1 + Math.floor(2 * luck.uniform(11)));
      if (lost > 0) {
        tell('thrown-out', at + 5 * MINUTE, { trays: lost, look: 'mould' });
        left -= lost;
      }
      if (place === 'hollow-house' && share < 0.8 && room('long-house', dayOf(t)) >= left) {
        leaves(dayOf(t));
        place = 'long-house';
        tell('moved', at + 15 * MINUTE, { place, minutes: 2 * left });
      }
    }
    const dull = plant.hours > 8 * 24 && meanLight(plant) < 0.7 * kind.light;
    if (!said.leggy && dull && luck.uniform(12) < 0.5) {
      said = { ...said, leggy: true };
      tell('noted', at, { look: 'leggy' });
    }
    if (!said.cold && plant.coldest < kind.chill) {
      said = { ...said, cold: true };
      tell('noted', at, { look: 'cold-hurt' });
    }
    if (share < 1) continue;
    if (!said.ready && luck.uniform(13) < 0.75) {
      said = { ...said, ready: true };
      if (aim === 1) tell('noted', at, { look: 'ready' });
    }
    if (!CUT_DAYS.includes(local.weekday(t))) continue;
    const kg = gram(left * yieldOf(plant, kind) * (1 + 0.07 * luck.normal(14)));
    const weeks = (at - sownAt) / (7 * 24 * HOUR);
    tell('worked', at, { work: 'tending', minutes: Math.max(5, Math.round(2.5 * trays * weeks)) });
    tell('cut', at + 20 * MINUTE, {
      ...{ kg, trays: left, stage: aim === 1 ? 'later' : 'young' },
      minutes: Math.round(left * (2.5 + luck.uniform(15))),
      ...lostOf(kg, luck.uniform(16), luck.uniform(17)),
    });
    tell('worked', at + 60 * MINUTE, { work: 'packing', minutes: Math.max(3, Math.round(6 * kg)) });
    leaves(dayOf(t));
    return { rows, stood };
  }
  stood.push({ house: place, first: since, last: Number.MAX_SAFE_INTEGER, trays: left });
  return { rows, stood: stood.map((one) => ({ ...one, last: Math.min(one.last, 366) })) };
}

/** Most cuts are sold whole, some in part; now and then nobody writes down which. */
function lostOf(kg: number, chance: number, share: number): { lost_kg?: number } {
  if (chance > 0.92) return {};
  return { lost_kg: chance < 0.12 ? gram(kg * 0.15 * share) : 0 };
}
