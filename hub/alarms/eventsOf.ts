import { chatters } from '../../rules/cooler/index.ts';
import { instant } from '../../rules/units.ts';
import type { SeenAlarm } from './types.ts';

const MINUTE = 60_000; // ms
// Ours, from no source. What came with a power loss and stays this long after it, or a door that
// stood open this long after it came and went, is a trouble of its own.
const OWN_AFTER = 30 * MINUTE;
/** Produce that gets warm this long after somebody saw the cause is news. Ours. */
const NEWS_AFTER = 60 * MINUTE;
/**
 * What follows from what at one place, the first cause first. That a power loss holds the probe and
 * temperature alarms after it is common practice, no source; the other two are ours.
 */
const FOLLOWS: ReadonlyMap<string, readonly string[]> = new Map([
  ['power', ['warm', 'probe', 'unit']],
  ['unit', ['warm']],
  ['door', ['warm']],
]);
const CAUSES = [...FOLLOWS.keys()];
/** What comes in one look is put in order of cause. */
const causeRank = ({ kind }: SeenAlarm) =>
  FOLLOWS.has(kind) ? CAUSES.indexOf(kind) : CAUSES.length;

/** One thing that happened, told once: an alarm, with those that came and went or followed from it. */
export type AlarmEvent = {
  readonly head: SeenAlarm;
  readonly folded: readonly SeenAlarm[];
  readonly standing: boolean;
  /** When the last of it cleared; null while any stands. */
  readonly clearedAt: number | null;
  /** How often it came. */
  readonly count: number;
};

/** Alarms of one task, however often it was asked anew: its id without the time it was opened. */
const stemOf = ({ id }: SeenAlarm) => {
  const at = id.lastIndexOf('~');
  return at < 0 ? id : id.slice(0, at);
};

/**
 * Alarms folded into events, oldest first. An alarm that changes three times in 30 minutes is one
 * with a count; a power loss holds the probe and temperature alarms that follow at its place, a
 * stopped unit or an open door the warm air. What was once an event of its own stays one, so that nothing told is ever taken back.
 */
export function eventsOf(alarms: readonly SeenAlarm[], now: number): AlarmEvent[] {
  const inOrder = [...alarms].sort(
    (a, b) =>
      a.since - b.since || causeRank(a) - causeRank(b) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0),
  );
  const events: { head: SeenAlarm; folded: SeenAlarm[]; count: number }[] = [];
  const eventOf = new Map<SeenAlarm, (typeof events)[number]>();
  const before = new Map<string, SeenAlarm[]>();
  for (const alarm of inOrder) {
    const stem = stemOf(alarm);
    const earlier = before.get(stem) ?? [];
    const last = earlier.at(-1);
    const cause = events.find(({ head }) => follows(alarm, head, now))?.head;
    const again = last && comesAgain(alarm, earlier, now) ? last : undefined;
    const event = eventOf.get((again ?? cause) as SeenAlarm);
    before.set(stem, [...earlier, alarm]);
    if (event) {
      event.folded.push(alarm);
      if (again && stemOf(event.head) === stem) event.count++;
      eventOf.set(alarm, event);
    } else {
      const fresh = { head: alarm, folded: [], count: 1 };
      events.push(fresh);
      eventOf.set(alarm, fresh);
    }
  }
  return events.map(({ head, folded, count }) => {
    const ends = [head, ...folded].map(({ clearedAt }) => clearedAt);
    const standing = ends.includes(null);
    const clearedAt = standing ? null : Math.max(...ends.map((end) => end ?? 0));
    return { head, folded, count, standing, clearedAt };
  });
}

function follows(alarm: SeenAlarm, head: SeenAlarm, now: number): boolean {
  if (head.place !== alarm.place || !FOLLOWS.get(head.kind)?.includes(alarm.kind)) return false;
  if (head.since > alarm.since) return false;
  if (head.clearedAt !== null && head.clearedAt <= alarm.since) return false;
  const known = head.seenAt !== null && alarm.since - head.seenAt > NEWS_AFTER;
  if (alarm.kind === 'warm' && known) return false;
  return head.clearedAt === null || (alarm.clearedAt ?? now) - head.clearedAt < OWN_AFTER;
}

function comesAgain(alarm: SeenAlarm, earlier: readonly SeenAlarm[], now: number): boolean {
  const changes = earlier.flatMap(({ since, clearedAt }) => [since, clearedAt ?? since]);
  const all = [...new Set([...changes, alarm.since])].map(instant);
  if (!chatters(all, instant(alarm.since))) return false;
  return (alarm.clearedAt ?? now) - alarm.since < OWN_AFTER;
}
