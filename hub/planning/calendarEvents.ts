import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import { calendarWords } from '../words/index.ts';
import { harvestDay } from './harvestDay.ts';
import type { CalendarEvent } from './iCalendar.ts';
import type { Planned } from './index.ts';

type Said = Omit<CalendarEvent, 'changedAt' | 'uid'> & { readonly name: string };

/** Everything of the plan that has a day: sowings, batches getting ready, harvests, deliveries. */
function eventsOf({ today, facts, plan }: Planned, farm: Farm, calendar: Calendar): Said[] {
  const dayAt = (ahead: number) => calendar.add(today, ahead);
  const placeName = (id: string) => farm.place(id)?.name ?? id;
  const on = (name: string, ahead: number, said: { summary: string; description: string }) => ({
    ...{ name, from: dayAt(ahead), to: dayAt(ahead + 1) },
    ...said,
  });
  const events: Said[] = [];
  for (const one of plan.sowings) {
    const crop = facts.crop(one.crop);
    const delivery = dayAt(one.delivery);
    const said = calendarWords.sow({
      ...{ crop: crop.name, trays: one.trays, place: placeName(one.place), delivery },
      ...{ kg: one.expected, ready: one.ready, late: one.late },
    });
    events.push(on(`sow.${one.crop}.${delivery}.${one.place}`, one.day, said));
  }
  for (const { batch, crop, ready, seenReady, kg } of facts.growing) {
    const grown = { crop: crop.name, trays: batch.traysLeft, place: placeName(batch.place) };
    if (ready !== null && seenReady === null) {
      const from = dayAt(Math.max(0, ready.early));
      const to = dayAt(Math.max(0, ready.early, ready.late) + 1);
      events.push({
        name: `ready.${batch.id}`,
        from,
        to,
        ...calendarWords.ready({ ...grown, kg }),
      });
    }
    for (const { delivery, kilograms } of plan.uses.get(batch.id) ?? [])
      events.push(
        on(
          `harvest.${batch.id}.${dayAt(delivery)}`,
          harvestDay(delivery, ready?.by ?? null),
          calendarWords.harvest({ ...grown, kg: kilograms, delivery: dayAt(delivery) }),
        ),
      );
  }
  for (const { day, ahead, wants, parts } of plan.deliveries) {
    const named = wants.map(({ of, kg }) => ({ name: nameOfProduct(farm, of), kg }));
    const short = parts.flatMap(({ crop, shortfalls }) =>
      shortfalls
        .filter(({ reason }) => reason !== 'little')
        .map(({ kg, reason }) => ({ crop: crop.name, kg, reason })),
    );
    events.push(on(`delivery.${day}`, ahead, calendarWords.delivery(named, short)));
  }
  return events;
}

/** A crop or a mix as people call it. */
export const nameOfProduct = (farm: Farm, id: string): string =>
  farm.file.mixes.find((mix) => mix.id === id)?.name ??
  farm.crop(id)?.name ??
  id.replaceAll('-', ' ');

/** Remembers when what is said of an event last changed, for programs that ask again. */
export function calendarEvents(hub: () => string) {
  const seen = new Map<string, { readonly said: string; readonly at: number }>();
  return (planned: Planned, farm: Farm, calendar: Calendar, now: number): CalendarEvent[] => {
    const events = eventsOf(planned, farm, calendar).map(({ name, ...said }) => {
      const uid = `${name}@${hub()}.dewpost`;
      const key = JSON.stringify(said);
      const known = seen.get(uid);
      const changed = known?.said === key ? known : { said: key, at: now };
      seen.set(uid, changed);
      return { uid, ...said, changedAt: changed.at };
    });
    const there = new Set(events.map(({ uid }) => uid));
    for (const uid of seen.keys()) if (!there.has(uid)) seen.delete(uid);
    return events;
  };
}
