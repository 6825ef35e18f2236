import { type Instant, MINUTE } from '../units.ts';
import type { Room } from './room.ts';

/** Minutes since `from` in which the door's contact said open; 0 without one. */
export function minutesOpen({ door, now }: Room, from: number): number {
  if (door?.latest == null) return 0;
  const { t, value } = door.column;
  let open = 0;
  let end: number = now;
  for (let i = t.length - 1; i >= 0; i--) {
    const at = t[i] as Instant;
    if (at > now) continue;
    if ((value[i] as number) > 0.5) open += Math.max(0, end - Math.max(at, from));
    if (at <= from) break;
    end = at;
  }
  return open / MINUTE;
}
