import { lotLife } from '../../rules/cooler/index.ts';
import { standingAt } from '../batches/index.ts';
import type { Day, FarmPlace } from '../contract/index.ts';
import { type CropFacts, cropFacts } from './cropFacts.ts';
import { growingFacts } from './growingFacts.ts';
import type { PlanningParts } from './index.ts';
import type { PlaceFacts, PlanFacts, StoredFacts } from './planTypes.ts';
import { speaksAgainst, swingOf } from './suits.ts';
import { deliveryDays, type WantChange } from './wants.ts';

const DAY = 86_400_000; // ms
/** Days of a place's own that tell of its usual swing between night and noon. Ours. */
const LATELY = 30; // d
/** The mean of so many days to come says whether a crop can stand there; as long as trays stand. Ours. */
const STANDS = 28; // d
/** Degree days above 0 °C of a day are its mean temperature, where it does not freeze. */
const MEAN = { lower: 0, upper: null } as const;

/** Reads all that a plan is made of, once. */
export function gatherFacts(
  parts: PlanningParts,
  changes: readonly WantChange[],
  today: string,
  days: number,
  now: number,
): PlanFacts {
  const { store, calendar, snapshots, batches, growth } = parts;
  const farm = parts.farm();
  const crops = new Map<string, CropFacts>();
  const crop = (id: string): CropFacts => {
    const known = crops.get(id) ?? cropFacts(farm, growth, id);
    crops.set(id, known);
    return known;
  };
  const standing = batches.all().filter(({ state }) => state === 'growing');

  const placeFacts = (place: FarmPlace & { capacity: number }): PlaceFacts => {
    const lately = store.placeFacts
      .days(place.id, calendar().add(today, -LATELY), today)
      .map(({ facts }): Day => JSON.parse(facts));
    const swing = swingOf(lately);
    const coming = growth.ahead(place.id, MEAN, today, STANDS);
    const mean =
      coming === null ? null : coming.reduce((sum, each) => sum + each, 0) / coming.length;
    const found = new Map<string, ReturnType<PlaceFacts['suits']>>();
    const suits = (of: CropFacts) => {
      // A house that the farm file gives to this crop was chosen for it by somebody.
      const own = place.crop === of.id;
      const against = own ? null : speaksAgainst(farm.crop(of.id) ?? {}, mean, swing);
      if (against !== null) return against;
      const units = growth.ahead(place.id, of.base, today, days + 1);
      if (units !== null) return units;
      // Told days need no heat units.
      const byDays = of.degreeDays.length === 0 && of.told !== null;
      return byDays ? Array<number>(days + 1).fill(0) : ('no-climate' as const);
    };
    return {
      id: place.id,
      name: place.name,
      capacity: place.capacity,
      // Where nobody keeps batches the farm file's own count is all that is known.
      others: standingAt(batches.all(), place.id, now) === null ? (place.trays ?? 0) : 0,
      suits: (of) => {
        const known = found.get(of.id) ?? suits(of);
        found.set(of.id, known);
        return known;
      },
    };
  };

  return {
    days,
    crop,
    deliveries: deliveryDays(farm, calendar(), changes, today, days),
    mixes: new Map(farm.file.mixes.map(({ id, parts: of }) => [id, of])),
    growing: standing.map((batch) =>
      growingFacts({
        ...{ batch, now, today, days, crop: crop(batch.crop), calendar: calendar() },
        told: growth.ready(batch, now),
      }),
    ),
    stored: snapshots.lots.inStore().flatMap((lot): StoredFacts[] => {
      const { keeps, history, at, outdoors } = snapshots.lots.now(lot, now);
      const { days: left, risk } = lotLife(keeps, history, { at, outdoors });
      if (risk !== null) return [];
      // Where no probe tells how warm it lay, the room is taken to keep to what it is set to.
      const age = (now - (lot.harvestedAt ?? lot.storedAt)) / DAY;
      const until = Math.floor(left?.least ?? crop(lot.crop).keepDays - Math.floor(age));
      if (until < 0) return [];
      return [{ id: lot.id, crop: lot.crop, kg: lot.kgLeft, until }];
    }),
    places: farm.places.flatMap((place) =>
      place.kind === 'tunnel' && place.capacity !== undefined
        ? [placeFacts({ ...place, capacity: place.capacity })]
        : [],
    ),
  };
}
