import { createLocalTime } from '../../simulators/localTime.ts';
import type { SeasonPlan } from '../../simulators/seasonPlan.ts';
import type { SeasonNow } from '../../simulators/seasonWorld.ts';
import { createChance } from '../../simulators/seed.ts';
import type { Hands } from './seasonHands.ts';

// The grower by the clock and by feel: no fool, and no instrument. Every habit is ours, from no
// source. With the hub, the same person has the same days, forgets the same things, and follows
// tasks besides.

const DAY = 86_400_000;
const OPENS = 8.5; // o'clock
const NOON = 12.5;
const TOO_COLD_TO_OPEN = 9; // °C inside by feel, in the morning
const STUFFY = 22; // °C inside by feel, at noon
const MILD_EVENING = 14; // °C outside by feel: left open overnight
const COVER_BELOW = 7.5; // °C outside by feel on a clear evening while flowers are open
const CLEAR_SKY = 0.5;
/** Days to either side of the middle of flowering in which covers are kept at hand. */
const FLOWERING = 24;
const FEEL = 1.5; // K by which a feeling is off
const FORGETS = 0.06; // share of rounds that somebody misses
const SEES = 0.03; // share that shows before anybody notices mould
/** Hours after noon at which vents are shut and covers laid, by the month: about an hour before sunset. */
const DUSK = [16, 17, 17.5, 18.5, 19.5, 20.5, 20.5, 19.5, 18.5, 17.5, 16.5, 16] as const;

export type Habits = { readonly vents: boolean; readonly covers: boolean };

/** Does at each quarter of an hour what is due at it. `clock`: what the clock and feel still decide. */
export function makeHabit(plan: SeasonPlan, now: SeasonNow, hands: Hands, clock: Habits) {
  const local = createLocalTime(plan.zone);
  const chance = createChance(plan.seed, 'habits');
  const houses = Object.keys(plan.houses);
  const flowers = Object.values(plan.patches)[0]?.bed.peak ?? 0;
  const draw = (day: number, what: number) => day * 64 + what;
  const feels = (value: number, day: number, what: number) =>
    value + FEEL * chance.normal(draw(day, what));
  const comes = (day: number, what: number) => chance.uniform(draw(day, what)) >= FORGETS;

  function sowings(day: number, weekday: number, month: number) {
    const turn = Math.floor(day / 7) % 2;
    if (weekday === 0 && month >= 3 && month <= 10)
      hands.sow('pea-shoots', 10, turn === 0 ? ['damp', 'airy'] : ['airy', 'damp']);
    if (weekday === 2 && month >= 4 && month <= 9)
      hands.sow('basil', 10, turn === 0 ? ['airy', 'hot'] : ['hot', 'airy']);
    if (weekday === 3 && month >= 3 && month <= 10) hands.sow('pea-shoots', 8, ['damp', 'airy']);
    if (weekday === 4 && month >= 5 && month <= 8) hands.sow('basil', 8, ['hot', 'airy']);
  }

  /** The morning's walk: mould is thrown out, and what stands in damp air is carried; ripe is cut. */
  function walk(_day: number, weekday: number) {
    for (const stand of [...now.stands.values()]) {
      if (stand.plant.shown > SEES) {
        hands.throwOut(stand);
        const airier = stand.crop === 'basil' ? ['airy', 'hot'] : ['airy'];
        const to = airier.find((one) => one !== stand.house && hands.room(one) >= stand.trays);
        if (
          stand.trays > 0 &&
          to !== undefined &&
          stand.plant.progress < 0.7 &&
          stand.house !== 'airy'
        )
          hands.carry(stand, to, false);
      }
      if (now.stands.has(stand.id) && stand.plant.progress >= 1 && [1, 3, 4].includes(weekday))
        hands.cut(stand);
    }
  }

  return (): void => {
    const hour = local.hour(now.t);
    const day = local.day(now.t);
    const weekday = local.weekday(now.t);
    const month = new Date(now.t).getUTCMonth() + 1;
    const dusk = DUSK[month - 1] ?? 18;
    const inFlower = Math.abs(now.t - flowers) < FLOWERING * DAY;
    if (hour === 7.5) walk(day, weekday);
    if (hour === 10) sowings(day, weekday, month);
    if (clock.vents)
      for (const [i, house] of houses.entries()) {
        const inside = now.tunnels[house]?.temperature ?? 0;
        const stands = [...now.stands.values()].some((stand) => stand.house === house);
        const warm = (limit: number, what: number) =>
          stands && feels(inside, day, what + i) > limit;
        if (hour === OPENS && comes(day, 10 + i) && warm(TOO_COLD_TO_OPEN, 20))
          hands.vents(house, true);
        if (hour === NOON && comes(day, 30 + i) && warm(STUFFY, 24)) hands.vents(house, true);
        if (hour === dusk && comes(day, 40 + i) && !hands.staysOpen(house))
          if (feels(now.weather.temperature, day, 28) < MILD_EVENING) hands.vents(house, false);
      }
    for (const [i, patch] of Object.keys(plan.patches).entries()) {
      const cold = feels(now.weather.temperature, day, 50) < COVER_BELOW;
      if (clock.covers && hour === dusk + 0.5 && inFlower && cold && now.weather.cloud < CLEAR_SKY)
        if (comes(day, 52 + i)) hands.covers(patch, true);
      if (hour === OPENS && now.covered[patch] && comes(day, 56 + i)) hands.covers(patch, false);
    }
  };
}
/** Whether the farm's patches are told to be in flower. */
export const inFlower = (plan: SeasonPlan, t: number) =>
  Object.values(plan.patches).some(({ bed }) => Math.abs(t - bed.peak) < FLOWERING * DAY);
