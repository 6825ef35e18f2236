import { createAirMass } from './airMass.ts';
import type { Scenario } from './scenario.ts';
import { createChance } from './seed.ts';
import { firstWeather, nextWeather, STEP } from './weather.ts';

// What ripens on a bed, and how it is picked. The weather is the made-up farm's; every rate is ours,
// from no source, set so that a season looks like one: a flush, a lull, a long autumn that fades.

const HOUR = 3_600_000;
const DAY = 24 * HOUR;

export type Bed = {
  /** kg that come on their way on a day of the year, while it is warm enough. */
  readonly sets: (dayOfYear: number) => number;
  /** °C; nothing grows below, and °C d from its start to ripe. */
  readonly base: number;
  readonly ripensIn: number;
  /** K that it is warmer there than outside. */
  readonly warmer: number;
  /** Share of what hangs ripe that spoils on a dry day, and on a wet one. */
  readonly spoils: readonly [dry: number, wet: number];
  /** kg an hour of somebody who never has to look for it, and kg hanging at which it is half of that. */
  readonly speed: number;
  readonly half: number;
  /** Minutes there and back, and to weigh. */
  readonly walk: number;
  /** Days from one picking to the next, by turns. */
  readonly every: readonly number[];
};

export type Picked = {
  readonly at: number;
  readonly kg: number;
  readonly lostKg: number;
  readonly minutes: number;
};

type Day = { readonly t: number; readonly mean: number; readonly rain: number };

/** Days of the made-up weather: mean temperature and rain. */
function days({ plan, seed }: Scenario, from: number, to: number): Day[] {
  const airMass = createAirMass(seed, plan.weather);
  const found: Day[] = [];
  let t = from;
  let weather = firstWeather(t, airMass(t));
  while (t < to) {
    let [sum, rain, steps] = [0, 0, 0];
    const begins = t;
    for (; t < begins + DAY; t += STEP) {
      weather = nextWeather(weather, airMass(t), plan.lat, plan.lon);
      sum += weather.temperature;
      rain += weather.rain;
      steps += 1;
    }
    found.push({ t: begins, mean: sum / steps, rain });
  }
  return found;
}

const dayOfYear = (t: number) => (t - Date.UTC(new Date(t).getUTCFullYear(), 0, 1)) / DAY;
const round = (value: number, step: number) => Math.round(value / step) * step;

/**
 * The pickings of a bed between two days. How fast somebody picks falls as what hangs gets scarce:
 * a searcher's disc equation (Holling 1959, Canadian Entomologist 91:385; its use here is ours).
 */
export function pickings(
  scenario: Scenario,
  bed: Bed,
  name: string,
  span: { readonly from: number; readonly picksFrom: number; readonly to: number },
): Picked[] {
  const chance = createChance(scenario.seed, `pickings of ${name}`);
  const coming: { left: number; kg: number }[] = [];
  const found: Picked[] = [];
  let [ripe, spoilt, wait] = [0, 0, 0];
  for (const { t, mean, rain } of days(scenario, span.from, span.to)) {
    const warm = Math.max(0, mean + bed.warmer - bed.base);
    coming.push({ left: bed.ripensIn, kg: warm > 0 ? bed.sets(dayOfYear(t)) : 0 });
    for (const cohort of coming) {
      if (cohort.left <= 0) continue;
      cohort.left -= warm;
      if (cohort.left <= 0) ripe += cohort.kg;
    }
    const gone = ripe * bed.spoils[rain > 1 ? 1 : 0];
    [ripe, spoilt] = [ripe - gone, 0.75 * (spoilt + gone)]; // the rest falls off
    wait -= 1;
    if (t < span.picksFrom || wait > 0) continue;
    wait = bed.every[found.length % bed.every.length] ?? 3;
    const kg = 0.92 * ripe + 0.6 * spoilt;
    if (kg < 0.5) continue;
    const speed = (bed.speed * kg) / (kg + bed.half);
    const hands = (60 * kg) / speed;
    const minutes = bed.walk + hands * (1 + 0.08 * chance.normal(found.length));
    found.push({
      at: t + 8 * HOUR,
      kg: round(kg, 0.1),
      lostKg: Math.min(round(kg, 0.1), round(0.6 * spoilt, 0.1)),
      minutes: Math.max(10, round(minutes, 5)),
    });
    [ripe, spoilt] = [0.08 * ripe, 0.4 * spoilt];
  }
  return found;
}
