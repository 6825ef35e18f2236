import { type Alarm, type Publish, sendAlarm } from '../../alarms/index.ts';
import { HEARTBEAT } from '../../broker/index.ts';
import type { Clock } from '../../clock.ts';
import type { Task } from '../../contract/index.ts';
import type { Store } from '../../store/index.ts';

/** Alarms that ended this long ago may still stand raised on a broker that was away. Ours. */
const LATELY = 30 * 86_400_000; // ms

export type AnnouncerParts = {
  readonly store: Store;
  readonly clock: Clock;
  readonly publish: Publish;
  readonly lastLook: () => { readonly at: number } | null;
  readonly tasks: () => readonly Task[];
};

/** What the hub says on MQTT of itself, retained: tasks, heartbeat, alarms that stand. */
export function makeAnnouncer({ store, clock, publish, lastLook, tasks }: AnnouncerParts) {
  const retained = { retain: true };
  const sayTasks = () => void publish('dewpost/task', JSON.stringify(tasks()), retained);
  const heartbeat = () => {
    const at = lastLook()?.at;
    const beat = {
      t: new Date(clock.now()).toISOString(),
      evaluatedAt: at === undefined ? null : new Date(at).toISOString(),
    };
    void publish(HEARTBEAT, JSON.stringify(beat), retained);
  };
  return {
    tasks: sayTasks,
    heartbeat,
    /** The broker may be a new one, or one that missed the end of an alarm. */
    everything() {
      const now = clock.now();
      const ended = store.alarms
        .between(now - LATELY, now + 1)
        .filter(({ clearedAt }) => clearedAt !== null);
      const raised = store.alarms.raised();
      const standing = new Set(raised.map(({ id }) => id));
      const alarms: Alarm[] = [...ended.filter(({ id }) => !standing.has(id)), ...raised];
      for (const alarm of alarms) void sendAlarm(publish, alarm);
      sayTasks();
      heartbeat();
    },
    gone: () => publish(HEARTBEAT, '{"gone":true}', retained),
  };
}
