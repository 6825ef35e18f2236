import {
  type Covered,
  coverWants,
  freeTrays,
  mixParts,
  type StandingTrays,
  type Supply,
  sowingPlan,
  type WantedWeight,
} from '../../rules/batches/index.ts';
import { meanOf } from './cropFacts.ts';
import type { GrowingFacts } from './growingFacts.ts';
import { partShort, together } from './partShort.ts';
import type {
  Plan,
  PlanDelivery,
  PlanFacts,
  PlanPart,
  PlanShortfall,
  PlanSowing,
} from './planTypes.ts';
import { reasonFor, reasonInRoom } from './shortReason.ts';

/** A batch that nobody cleared though it is over is reckoned to stand so much longer. Ours. */
const STILL_STANDS = 7; // d
/** What is open beside what covers is not worth a sowing of its own below these. Ours. */
const LITTLE_OF_TRAY = 0.5;
const LITTLE_OF_WANT = 0.1;

/** Wants of crops, with mixes split into their parts; one for each crop and delivery. */
export function wantedWeights({ deliveries, mixes }: PlanFacts): WantedWeight[] {
  const sums = new Map<string, WantedWeight>();
  for (const { ahead: delivery, wants } of deliveries)
    for (const { of, kg } of wants) {
      const parts = mixes.get(of) ?? [{ crop: of, share: 1 }];
      for (const { crop, kilograms } of mixParts(kg, parts)) {
        const key = `${delivery} ${crop}`;
        const sum = (sums.get(key)?.kilograms ?? 0) + kilograms;
        if (sum > 0) sums.set(key, { delivery, crop, kilograms: sum });
      }
    }
  return [...sums.values()];
}

const supplyOf = (facts: GrowingFacts, aheadOf: ReadonlyMap<string, number>): Supply[] => {
  const { batch, crop, kg, ready, until } = facts;
  if (kg === null || ready === null || until === null || until < 0) return [];
  const meantFor = batch.meantFor === null ? null : (aheadOf.get(batch.meantFor) ?? null);
  const from = Math.max(0, ready.by);
  return [{ id: batch.id, crop: crop.id, kilograms: kg, from, until, meantFor }];
};

/** The plan of the coming weeks. Pure: the same facts give the same plan. */
export function makePlan(facts: PlanFacts): Plan {
  const { days, deliveries, growing, stored, places } = facts;
  const aheadOf = new Map(deliveries.map(({ day, ahead }) => [day, ahead]));
  const wanted = wantedWeights(facts);
  const lots = stored.map(
    ({ id, crop, kg, until }): Supply => ({
      ...{ id, crop, kilograms: kg, from: 0, until, meantFor: null },
    }),
  );
  const supplies = [...lots, ...growing.flatMap((one) => supplyOf(one, aheadOf))];
  const { covered, open } = coverWants(wanted, supplies);
  const uses = new Map<string, Covered[]>();
  for (const one of covered) uses.set(one.supply, [...(uses.get(one.supply) ?? []), one]);

  const begun = new Set(growing.map(({ batch, crop }) => `${batch.meantFor} ${crop.id}`));
  const dayOf = new Map(deliveries.map(({ day, ahead }) => [ahead, day]));
  const little: WantedWeight[] = [];
  const toSow = open.flatMap((want) => {
    const whole = wanted.find((one) => one.delivery === want.delivery && one.crop === want.crop);
    const tray = meanOf(facts.crop(want.crop).perTray) ?? 0;
    const asked = whole?.kilograms ?? want.kilograms;
    const partly = want.kilograms < asked;
    if (partly && want.kilograms < Math.max(LITTLE_OF_TRAY * tray, LITTLE_OF_WANT * asked)) {
      little.push(want);
      return [];
    }
    return [{ ...want, begun: begun.has(`${dayOf.get(want.delivery)} ${want.crop}`) }];
  });

  const standing = (place: string): StandingTrays[] =>
    growing
      .filter(({ batch }) => batch.place === place)
      .map((one) => ({ trays: one.batch.traysLeft, from: 0, until: lastDay(one, uses, facts) }));
  const free = new Map(
    places.map(({ id, capacity, others }) => [
      id,
      freeTrays(Math.max(0, capacity - others), standing(id), days + 1),
    ]),
  );
  const crops = [...new Set(wanted.map(({ crop }) => crop))].map((id) => {
    const { degreeDays, perTray, keepDays, told } = facts.crop(id);
    return { id, pastDegreeDays: degreeDays, perTray, keepDays, told };
  });
  const found = sowingPlan(
    toSow,
    crops,
    places.map((place) => ({
      id: place.id,
      free: free.get(place.id) ?? [],
      unitsOf: (crop) => {
        const units = place.suits(facts.crop(crop));
        return typeof units === 'string' ? null : units;
      },
    })),
  );
  const sowings = found.sowings.map((one): PlanSowing => {
    const expected = one.trays * (meanOf(facts.crop(one.crop).perTray) ?? 0);
    return { ...one, expected };
  });

  const partOf = ({ delivery, crop: id, kilograms }: WantedWeight): PlanPart => {
    const here = (one: { delivery: number; crop: string }) =>
      one.delivery === delivery && one.crop === id;
    const crop = facts.crop(id);
    const shortfalls: PlanShortfall[] = [
      ...found.shortfalls.filter(here).map((one) => ({
        kg: one.kilograms,
        trays: one.trays,
        reason: one.reason === 'no-room' ? reasonInRoom(crop, places) : reasonFor(crop, one.reason),
      })),
      ...little.filter(here).map((one) => ({
        ...{ kg: one.kilograms, trays: 0, reason: 'little' as const },
      })),
    ];
    const part = {
      ...{ crop, kg: kilograms, shortfalls },
      covered: covered.filter(here),
      sowings: sowings.filter(here),
    };
    return { ...part, short: partShort(part, delivery, growing, uses) };
  };
  return {
    sowings,
    free,
    uses,
    deliveries: deliveries.map((delivery): PlanDelivery => {
      const parts = wanted.filter((one) => one.delivery === delivery.ahead).map(partOf);
      return { ...delivery, parts, short: together(parts.map(({ short }) => short)) };
    }),
  };
}

/** The last day on which a growing batch is reckoned to stand. */
function lastDay(
  { batch, until }: GrowingFacts,
  uses: ReadonlyMap<string, readonly Covered[]>,
  { days }: PlanFacts,
): number {
  const used = uses.get(batch.id)?.map(({ delivery }) => delivery) ?? [];
  if (used.length > 0) return Math.max(...used);
  if (until === null) return days; // nobody knows how long it takes: its room is not counted on
  return until < 0 ? STILL_STANDS : until;
}
