import { mayTell } from './hours.ts';
import type { DeliveryPlan } from './planDeliveries.ts';
import type { AlarmSettings, Delivery } from './types.ts';

const HOUR = 3_600_000; // ms

const COUNTED: ReadonlySet<string> = new Set(['waiting', 'delivered', 'refused']);

/**
 * At most so many messages an hour to one person on one channel: what is more is held back, and told
 * in one summary as soon as there is room again.
 */
export function boundRate(
  settings: AlarmSettings,
  deliveries: readonly Delivery[],
  wanted: readonly Delivery[],
  ends: DeliveryPlan['end'],
  minute: number,
  now: number,
): DeliveryPlan {
  const add: Delivery[] = [];
  const end = [...ends];
  const count = new Map<string, number>();
  const wayOf = ({ person, channel }: Delivery) => `${person}|${channel}`;
  const take = (way: string) => count.set(way, (count.get(way) ?? 0) + 1);
  const room = (way: string) => (count.get(way) ?? 0) < settings.most;
  const dropped = new Set(ends.map(({ id }) => id));
  for (const one of deliveries)
    if (one.what !== 'test' && COUNTED.has(one.state) && one.madeAt > now - HOUR)
      if (!dropped.has(one.id)) take(wayOf(one));

  const held = new Map<string, Delivery[]>();
  for (const one of deliveries)
    if (one.state === 'held') held.set(wayOf(one), [...(held.get(wayOf(one)) ?? []), one]);
  for (const [way, back] of held) {
    const first = back[0] as Delivery;
    const person = settings.people.find(({ id }) => id === first.person);
    if (person && (!room(way) || !mayTell(person, 'urgent', settings, minute))) continue;
    for (const { id } of back) end.push({ id, state: 'summarised', words: '' });
    if (!person) continue;
    add.push({
      ...first,
      id: `summary|${first.id}`,
      what: 'summary',
      alarm: null,
      since: null,
      state: 'waiting',
      madeAt: now,
      nextAt: now,
      words: '',
    });
    take(way);
  }
  for (const one of wanted) {
    const way = wayOf(one);
    if (room(way)) {
      take(way);
      add.push(one);
    } else add.push({ ...one, state: 'held' });
  }
  return { add, end };
}
