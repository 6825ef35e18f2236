import type { AlarmEvent } from './eventsOf.ts';
import { rankOf } from './ranks.ts';
import { silentUntil } from './silences.ts';
import type { AlarmSettings, Rank, SeenAlarm, Silence } from './types.ts';

const ORDER: readonly Rank[] = ['urgent', 'today', 'note'];

const all = ({ head, folded }: AlarmEvent): readonly SeenAlarm[] => [head, ...folded];

/** The highest rank of what is in an event: warm produce is urgent whatever it followed from. */
export function rankOfEvent(event: AlarmEvent, settings: Pick<AlarmSettings, 'ranks'>): Rank {
  const ranks = all(event).map(({ kind }) => rankOf(kind, settings));
  return ORDER.find((rank) => ranks.includes(rank)) ?? 'urgent';
}

/** Until when all that stands of an event is silent; null while anything of it is not. */
export function eventSilentUntil(
  event: AlarmEvent,
  silences: readonly Silence[],
  now: number,
): number | null {
  const standing = all(event).filter(({ clearedAt }) => clearedAt === null);
  const ends = standing.map((alarm) => silentUntil(alarm, silences, now));
  return ends.length === 0 || ends.includes(null) ? null : Math.min(...ends.map((end) => end ?? 0));
}
