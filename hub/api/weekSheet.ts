import type * as contract from '../contract/index.ts';
import { harvestDay, nameOfProduct } from '../planning/index.ts';
import { weekWords } from '../words/index.ts';
import type { ApiParts } from './parts.ts';
import { iso, nameOf, openTasks } from './present.ts';
import { firstOfWeek } from './shownPlan.ts';

const DAYS = 7;

/** One week on a sheet of paper: what is sown, cut and delivered on each day, and what else is open. */
export function weekSheet(parts: ApiParts, from: string | undefined): contract.WeekSheet {
  const now = parts.clock.now();
  const calendar = parts.calendar();
  const { today, facts, plan } = parts.planning.planned(now);
  const first = firstOfWeek(parts, from ?? today);
  const names = Array.from({ length: DAYS }, (_, i) => calendar.add(first, i));
  const dayAt = (ahead: number) => calendar.add(today, ahead);
  // The plan speaks of growing and sowing from today on; days that are over have nothing to be done.
  const sow = plan.sowings.map((one) => ({
    day: dayAt(one.day),
    line: weekWords.sow({
      ...{ crop: facts.crop(one.crop).name, trays: one.trays, late: one.late },
      ...{ place: nameOf(parts, one.place), delivery: dayAt(one.delivery) },
    }),
  }));
  const harvest = facts.growing.flatMap(({ batch, crop, ready }) =>
    (plan.uses.get(batch.id) ?? []).map(({ delivery, kilograms }) => ({
      day: dayAt(harvestDay(delivery, ready?.expected ?? null)),
      line: weekWords.harvest({
        ...{ crop: crop.name, trays: batch.traysLeft, kg: kilograms },
        ...{ place: nameOf(parts, batch.place), delivery: dayAt(delivery) },
      }),
    })),
  );
  const deliver = plan.deliveries.flatMap(({ day, wants }) =>
    wants
      .filter(({ kg }) => kg > 0)
      .map(({ of: id, kg }) => ({
        day,
        line: weekWords.deliver(nameOfProduct(parts.farm(), id), kg),
      })),
  );
  const short = plan.deliveries.flatMap(({ day, parts: of }) =>
    of.flatMap(({ crop, shortfalls }) =>
      shortfalls
        .filter(({ reason }) => reason !== 'little')
        .map(({ kg }) => ({ day, line: weekWords.short(crop.name, kg) })),
    ),
  );
  const looked = parts.lastLook();
  const told = new Set<string>();
  const frost = (looked?.outlook.frost ?? []).flatMap(({ place, spot, night, low, pBelow }) => {
    const here = parts.farm().place(place);
    const open = here?.kind === 'patch' || here?.kind === 'outdoor';
    // One line a place: air and leaves before grass, as they come.
    if (!open || spot === 'under-cover' || told.has(place)) return [];
    told.add(place);
    return [{ day: night, line: weekWords.frost(nameOf(parts, place), low.mean, pBelow.p) }];
  });
  const tasks = openTasks(parts)
    // Those stand under their own headings already.
    .filter(({ kind, until }) => kind !== 'sow' && kind !== 'harvest' && until === null)
    .map(({ title, doBy }) => ({
      day: doBy === null ? null : calendar.dayOf(Date.parse(doBy)),
      line: title,
    }));
  const on = (day: string, all: readonly { day: string | null; line: string }[]) => [
    ...new Set(all.filter((one) => one.day === day).map(({ line }) => line)),
  ];
  const thisWeek = first === firstOfWeek(parts, today);
  const other = tasks.filter(({ day }) => day === null || day < first).map(({ line }) => line);
  return {
    farm: parts.farm().file.farm.name,
    from: first,
    to: calendar.add(first, DAYS - 1),
    asOf: iso(now),
    days: names.map((day) => ({
      day,
      sow: on(day, sow),
      harvest: on(day, harvest),
      deliver: on(day, deliver),
      short: on(day, short),
      frost: on(day, frost),
      tasks: on(day, tasks),
    })),
    anyDay: thisWeek ? [...new Set(other)] : [],
    notes: [...(thisWeek ? frostAhead(parts, now) : []), weekWords.unsown],
  };
}

/** The odds of the season's first frost within a week, where one is still to come. */
function frostAhead(parts: ApiParts, now: number): string[] {
  return parts.season.inTheOpen().flatMap((place) => {
    const [frost] = parts.season.outlook(place, now).limits;
    if (frost?.current !== 'first') return [];
    const week = frost.first.ahead.find(({ days }) => days === DAYS);
    return week?.p == null ? [] : [weekWords.frostAhead(place.name, DAYS, week.p)];
  });
}
