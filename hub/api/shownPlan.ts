import type * as contract from '../contract/index.ts';
import {
  nameOfProduct,
  type PlanDelivery,
  type Planned,
  type PlanPart,
  type PlanSowing,
  sowingCost,
} from '../planning/index.ts';
import {
  deliveryWords,
  planMissing,
  roomWords,
  shortWords,
  sowingWords,
  supplyWords,
  units,
} from '../words/index.ts';
import type { ApiParts } from './parts.ts';
import { iso, nameOf, rounded, roundedOrNull } from './present.ts';

const WEEK = 7;

const FIRST = { sunday: 0, monday: 1, saturday: 6 } as const;

/** The first day of a day's week, on the weekday with which the farm begins one. */
export function firstOfWeek(parts: ApiParts, day: string): string {
  const weekday = new Date(`${day}T00:00:00Z`).getUTCDay();
  return parts.calendar().add(day, -((weekday - FIRST[units().weekStart] + WEEK) % WEEK));
}

/** The plan of the coming weeks as the page shows it, with its words. */
export function shownPlan(parts: ApiParts, weeks: number): contract.SowingPlanShown {
  const planned = parts.planning.planned(parts.clock.now());
  const { at, today, facts, plan } = planned;
  const last = WEEK * weeks;
  const said = parts.planning.said(parts.clock.now());
  const sowings = plan.sowings.filter(({ day }) => day <= last);
  return {
    asOf: iso(at),
    today,
    weeks,
    sowings: sowings.map((one) => shownSowing(parts, planned, one, said)),
    deliveries: plan.deliveries
      .filter(({ ahead }) => ahead <= last)
      .map((one) => shownDelivery(parts, planned, one)),
    work: workOf(parts, planned, sowings),
    rooms: facts.places.map(({ id, name, capacity }) => {
      const free = (plan.free.get(id) ?? []).slice(0, last + 1);
      return { place: id, name, capacity, free, words: roomWords(free, capacity) };
    }),
    products: productsOf(parts),
    missing: missingOf(planned),
  };
}

export const productsOf = (parts: ApiParts) => {
  const { crops, mixes } = parts.farm().file;
  return [...mixes, ...crops].map(({ id }) => ({ id, name: nameOfProduct(parts.farm(), id) }));
};

function missingOf({ facts }: Planned): string[] {
  const wanted = facts.deliveries.some(({ wants }) => wants.length > 0);
  const missing: string[] = [];
  if (facts.deliveries.length === 0) missing.push(planMissing.deliveries);
  else if (!wanted) missing.push(planMissing.wants);
  if (facts.places.length === 0) missing.push(planMissing.places);
  return missing;
}

function shownSowing(
  parts: ApiParts,
  { today, facts }: Planned,
  one: PlanSowing,
  said: ReturnType<ApiParts['planning']['said']>,
): contract.PlannedSowing {
  const dayAt = (ahead: number) => parts.calendar().add(today, ahead);
  const crop = facts.crop(one.crop);
  const half = Math.floor(one.trays / 2);
  const second = one.second === null || half === 0 ? null : { day: dayAt(one.second), trays: half };
  const delivery = dayAt(one.delivery);
  const { late, ready, tooEarly, trays } = one;
  const batches = crop.degreeDays.length;
  const place = nameOf(parts, one.place);
  return {
    day: dayAt(one.day),
    ...{ late, trays, delivery, second, batches },
    ...{ crop: one.crop, name: crop.name, place: one.place, placeName: place },
    kg: rounded(one.expected),
    ready: roundedOrNull(ready, 3),
    tooEarly: roundedOrNull(tooEarly, 3),
    ...sowingCost(crop, one),
    answered: said({ place: one.place, delivery }, crop.name),
    words: sowingWords({
      ...{ crop: crop.name, trays, place, kg: one.expected, delivery },
      ...{ ready, tooEarly, batches, late, second },
    }),
  };
}

const sum = (all: readonly number[]) => all.reduce((total, each) => total + each, 0);

export function stateOf({ wants, parts }: PlanDelivery): contract.PlannedDelivery['state'] {
  if (wants.every(({ kg }) => kg === 0)) return 'nothing';
  if (parts.some((part) => part.shortfalls.some(({ reason }) => reason !== 'little')))
    return 'short';
  return parts.some(({ sowings }) => sowings.length > 0) ? 'to-sow' : 'covered';
}

function shownDelivery(
  parts: ApiParts,
  planned: Planned,
  delivery: PlanDelivery,
): contract.PlannedDelivery {
  const state = stateOf(delivery);
  const shorts = delivery.parts.flatMap(({ crop, shortfalls }) =>
    shortfalls
      .filter(({ reason }) => reason !== 'little')
      .map(({ kg, reason }) => ({ crop: crop.name, kg, reason })),
  );
  const chanceShort = delivery.wants.length === 0 ? null : delivery.short;
  return {
    day: delivery.day,
    wants: delivery.wants.map(({ of, kg, usual, change }) => ({
      ...{ of, name: nameOfProduct(parts.farm(), of), kg, usual },
      change: change && { entry: change.entry, who: change.who, at: iso(change.at) },
    })),
    parts: delivery.parts.map((part) => shownPart(parts, planned, part)),
    state,
    chanceShort: roundedOrNull(chanceShort, 3),
    words: deliveryWords({ state, shorts, chanceShort }),
  };
}

function shownPart(parts: ApiParts, { today, facts }: Planned, part: PlanPart) {
  const { crop, covered, sowings, shortfalls } = part;
  return {
    crop: crop.id,
    name: crop.name,
    kg: rounded(part.kg),
    covered: rounded(sum(covered.map(({ kilograms }) => kilograms))),
    toSow: rounded(sum(sowings.map(({ kilograms }) => kilograms))),
    short: rounded(sum(shortfalls.map(({ kg }) => kg))),
    sources: covered.map(({ supply: id, kilograms }) => {
      const grown = facts.growing.find(({ batch }) => batch.id === id);
      const kind = grown ? ('batch' as const) : ('lot' as const);
      const at = grown?.batch.place ?? parts.snapshots.lots.get(id)?.place ?? '';
      const ahead = grown?.seenReady === null ? (grown.ready?.expected ?? null) : null;
      const day = ahead === null ? null : parts.calendar().add(today, Math.max(0, ahead));
      const kg = rounded(kilograms);
      return { kind, id, kg, words: supplyWords({ kind, id, kg, place: nameOf(parts, at), day }) };
    }),
    shortfalls: shortfalls.map(({ kg, trays, reason }) => ({
      ...{ kg: rounded(kg), trays, reason },
      words: shortWords({ crop: crop.name, kg, reason }),
    })),
    chanceShort: roundedOrNull(part.short, 3),
  };
}

/** Minutes and seed of each week's sowings; not known where one of them is not. */
function workOf(parts: ApiParts, { today, facts }: Planned, sowings: readonly PlanSowing[]) {
  const weeks = new Map<string, { trays: number; minutes: number | null; seed: number | null }>();
  for (const one of sowings) {
    const from = firstOfWeek(parts, parts.calendar().add(today, one.day));
    const before = weeks.get(from) ?? { trays: 0, minutes: 0, seed: 0 };
    const { minutes, seed } = sowingCost(facts.crop(one.crop), one);
    const added = (a: number | null, b: number | null) => (a === null || b === null ? null : a + b);
    weeks.set(from, {
      trays: before.trays + one.trays,
      minutes: added(before.minutes, minutes),
      seed: added(before.seed, seed),
    });
  }
  return [...weeks].map(([from, { trays, minutes, seed }]) => ({
    ...{ from, trays, minutes: roundedOrNull(minutes, 0), seed: roundedOrNull(seed) },
  }));
}
