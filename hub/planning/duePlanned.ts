import type { HarvestNow, Snapshot, SowingNow, UntimedNow } from '../../rules/decide/index.ts';
import { HOUR, instant } from '../../rules/units.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import type { GrowingFacts } from './growingFacts.ts';
import type { Planned } from './index.ts';
import type { SaidOf } from './saidOf.ts';

/** A delivery leaves at noon, as the lots' next sale does. Ours. */
const LEAVES_AT = 12 * HOUR;
/** Today's and tomorrow's are enough for a list of what is due. */
const DUE_WITHIN = 1; // d

/** What of the plan the rules have to know of now. */
export function duePlanned(
  { today, facts, plan }: Planned,
  farm: Farm,
  calendar: Calendar,
  said: SaidOf,
): Pick<Snapshot, 'sowings' | 'harvests'> {
  const beginOf = (ahead: number) => calendar.bounds(calendar.add(today, ahead)).begins;
  const rows = plan.sowings
    .filter(({ day }) => day <= DUE_WITHIN)
    .filter(({ place, crop, delivery }) => {
      const day = calendar.add(today, delivery);
      return said({ place, delivery: day }, facts.crop(crop).name) === null;
    })
    .map((one): SowingNow => {
      const crop = facts.crop(one.crop);
      return {
        place: one.place,
        crop: crop.name,
        ...{ trays: one.trays, kilograms: one.kilograms, pricePerKilogram: crop.price },
        ...{ on: beginOf(one.day), late: one.late, ready: one.ready },
        delivery: calendar.add(today, one.delivery),
        batches: crop.degreeDays.length,
        minutesPerTray: crop.sowMinutes,
      };
    });
  const [house] = facts.places;
  const untimed = new Map<string, UntimedNow>();
  for (const { parts } of plan.deliveries)
    for (const { crop, shortfalls } of parts) {
      if (!shortfalls.some(({ reason }) => reason === 'no-past-batches')) continue;
      const place = farm.places.find((one) => one.kind === 'tunnel' && one.crop === crop.id)?.id;
      const at = place ?? house?.id;
      if (at !== undefined) untimed.set(crop.id, { place: at, id: crop.id, crop: crop.name });
    }

  const harvestOf = (one: GrowingFacts): HarvestNow => {
    const { batch, crop, kg, ready, until, seenReady } = one;
    const [use] = [...(plan.uses.get(batch.id) ?? [])].sort((a, b) => a.delivery - b.delivery);
    const day = use === undefined ? null : calendar.add(today, use.delivery);
    return {
      id: batch.id,
      place: batch.place,
      crop: crop.name,
      trays: batch.traysLeft,
      kilograms: kg,
      pricePerKilogram: crop.price,
      seenReady: seenReady === null ? null : instant(seenReady),
      readyAt: ready === null ? null : instant(beginOf(Math.round(ready.by))),
      ready: one.chanceBy(0),
      overAt: until === null ? null : instant(beginOf(until + 1)),
      delivery: day === null ? null : { day, at: instant(calendar.bounds(day).begins + LEAVES_AT) },
      minutesPerTray: crop.cutMinutes,
    };
  };
  return {
    sowings: { rows, untimed: [...untimed.values()] },
    harvests: facts.growing.map(harvestOf),
  };
}
