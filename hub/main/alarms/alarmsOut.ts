import type { Logger } from 'pino';
import {
  type Delivery,
  eventSounds,
  planDeliveries,
  sounds,
  testIsDue,
  type Weekday,
} from '../../alarms/index.ts';
import type { AlarmDesk } from '../../api/index.ts';
import type { Calendar, Clock } from '../../clock.ts';
import type { Farm } from '../../farm/index.ts';
import type { MessageRow, Store } from '../../store/index.ts';
import type { Tasks } from '../../tasks/index.ts';
import type { Feed } from '../keeping/feed.ts';
import { makeAlarmDesk } from './alarmDesk.ts';
import { keepAlarms } from './alarmsKept.ts';
import { makeAlive } from './alive.ts';
import { makeDeliver } from './deliver.ts';

const MINUTE = 60_000; // ms
const HOUR = 60 * MINUTE;
/** How long a hub that is told to stop waits for a mail server. Ours. */
const LEAVE_WITHIN = 5000; // ms

export type AlarmsOutParts = {
  readonly store: Store;
  readonly clock: Clock;
  readonly log: Logger;
  readonly feed: Feed;
  readonly tasks: Tasks;
  readonly farm: () => Farm;
  readonly calendar: () => Calendar;
  readonly lastLook: () => { readonly at: number; readonly failure: string | null } | null;
};

/** Alarms on their way to people: plans what is to be told, has it sent, and does what pages ask. */
export function makeAlarmsOut(parts: AlarmsOutParts) {
  const { store, clock, log, feed, calendar } = parts;
  const kept = keepAlarms(store);
  const changed = () => feed.tell('alarms', { at: clock.now() });
  const deliver = makeDeliver({ ...parts, kept, onChange: changed });
  const alive = makeAlive({ ...parts, kept, post: deliver.post });
  const local = (now: number) => {
    const at = new Date(now + calendar().offsetMinutes(now) * MINUTE);
    return {
      minute: at.getUTCHours() * 60 + at.getUTCMinutes(),
      weekday: at.getUTCDay() as Weekday,
    };
  };

  /** Plans, and writes the plan down; nothing leaves the hub here. */
  const settle = (now: number): boolean => {
    const state = kept.state(now);
    const { settings, messages, silences, alarms } = state;
    const { minute, weekday } = local(now);
    if (testIsDue(settings, { minute, weekday }, kept.lastTestAt(now), now)) desk.rehearse('hub');
    const { add, end } = planDeliveries(
      { alarms, settings, silences, deliveries: messages, minute },
      now,
    );
    if (add.length + end.length === 0) return false;
    store.transaction(() => {
      for (const one of add) store.alarmsOut.addMessage(one as MessageRow);
      for (const { id, state: is, words } of end) {
        const before = store.alarmsOut.message(id) as Delivery | undefined;
        if (before) store.alarmsOut.changeMessage({ ...before, state: is, endedAt: now, words });
      }
    });
    changed();
    return true;
  };

  let heard = '';
  /** A silence that ends, or a test nobody answered, changes what pages show without anybody's tap. */
  const tellPages = (now: number) => {
    const { events, settings, silences, tests } = kept.state(now);
    const loud = events.filter((event) => eventSounds(event, settings, silences, now));
    const next = [...loud.map(({ head }) => head.id), '|', ...silences.map(({ id }) => id)]
      .concat(tests.filter(({ at }) => now - at < HOUR).map(({ id }) => id))
      .join(' ');
    if (next !== heard) changed();
    heard = next;
  };

  const work = () => {
    if (!clock.isSet()) return;
    try {
      const now = clock.now();
      settle(now);
      tellPages(now);
      deliver.due(now);
      alive.due(now);
    } catch (error) {
      log.error(error, 'alarms could not be told');
    }
  };
  const desk: AlarmDesk = makeAlarmDesk({ ...parts, kept, deliver, alive, changed, work });

  return {
    ...desk,
    work,
    /** At the start: what was underway when the hub ended is tried at once. */
    begin: () => store.alarmsOut.hurry(clock.now()),
    sounds() {
      const now = clock.now();
      const { alarms, settings, silences } = kept.state(now);
      return sounds(alarms, settings, silences, now);
    },
    /** What the task was answered is as good as "seen". */
    answered: (id: string, who: string) => void desk.see(id, null, who),
    async end() {
      await deliver.settled(LEAVE_WITHIN);
      deliver.stop();
      alive.stop();
    },
  };
}
