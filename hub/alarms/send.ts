import type { Alarm } from './plan.ts';

export type Publish = (
  topic: string,
  payload: string,
  options: { retain: boolean },
) => Promise<void>;

/** What a lamp, a siren or a page is told of an alarm (contract: `dewpost/alarm`). */
export const told = ({ id, place, kind, since, words, clearedAt }: Alarm) => ({
  alarm: clearedAt === null ? ('raised' as const) : ('clear' as const),
  id,
  place,
  kind,
  since: new Date(since).toISOString(),
  words,
});

/**
 * Says an alarm on MQTT, retained: on `dewpost/alarm` the newest change, on `dewpost/alarm/ID` this
 * one. A cleared alarm leaves its own topic empty, so that nothing stale greets a new listener.
 */
export async function sendAlarm(publish: Publish, alarm: Alarm): Promise<void> {
  const payload = JSON.stringify(told(alarm));
  await publish('dewpost/alarm', payload, { retain: true });
  await publish(`dewpost/alarm/${alarm.id}`, payload, { retain: alarm.clearedAt === null });
  if (alarm.clearedAt !== null) await publish(`dewpost/alarm/${alarm.id}`, '', { retain: true });
}
