import {
  type Delivery,
  type DeliveryPlan,
  planDeliveries,
  type SeenAlarm,
  type ToldState,
  usualSettings,
} from '../../../hub/alarms/index.ts';

// Three people, and what they are told while the minutes pass.

export const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;
export const T = Date.UTC(2026, 4, 10, 2); // 02:00, and the farm's clock here is UTC
export const ALWAYS = { from: 0, to: 0 };
export const DAYTIME = { from: 7 * 60, to: 21 * 60 };

export const person = (id: string, more: object = {}) => ({
  id,
  name: id.toUpperCase(),
  email: `${id}@example.org`,
  webhook: null as string | null,
  hours: { urgent: ALWAYS, today: DAYTIME },
  ...more,
});
export const ann = person('ann');
export const ben = person('ben');
export const cid = person('cid');
export const settings = { ...usualSettings, people: [ann, ben, cid] };

export const alarm = (id: string, since: number, more: Partial<SeenAlarm> = {}): SeenAlarm => ({
  ...{ id, place: 'cool-room', kind: 'door', since, words: `words of ${id}`, clearedAt: null },
  ...{ seenBy: null, seenAt: null, was: null },
  ...more,
});
export const minuteOf = (t: number) => Math.floor((t % 86_400_000) / MINUTE);
export const stateAt = (
  now: number,
  alarms: readonly SeenAlarm[],
  deliveries: readonly Delivery[] = [],
  more: Partial<ToldState> = {},
): ToldState => ({
  ...{ alarms, deliveries, settings, silences: [], minute: minuteOf(now) },
  ...more,
});
/** What is in the queue when a plan was written down and, unless told otherwise, sent. */
export const carriedOut = (
  before: readonly Delivery[],
  plan: DeliveryPlan,
  now: number,
  sent: Delivery['state'] = 'delivered',
): Delivery[] =>
  [...before, ...plan.add]
    .map((one) => {
      const end = plan.end.find(({ id }) => id === one.id);
      return end ? { ...one, state: end.state, endedAt: now, words: end.words } : one;
    })
    .map((one) =>
      one.state === 'waiting' && sent !== 'waiting'
        ? { ...one, state: sent, endedAt: now, tries: 1 }
        : one,
    );
/** Who was told what, minute by minute from `from` to `to`. */
export function lived(
  from: number,
  to: number,
  alarmsAt: (t: number) => readonly SeenAlarm[],
  more: Partial<ToldState> = {},
  sent: Delivery['state'] = 'delivered',
) {
  let queue: Delivery[] = [];
  const told: [number, string, string][] = [];
  for (let t = from; t <= to; t += MINUTE) {
    const plan = planDeliveries(stateAt(t, alarmsAt(t), queue, more), t);
    for (const one of plan.add)
      if (one.state !== 'held') told.push([(t - from) / MINUTE, one.what, one.person]);
    queue = carriedOut(queue, plan, t, sent);
  }
  return { told, queue };
}
