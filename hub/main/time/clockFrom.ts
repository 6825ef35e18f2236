import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { type Clock, fastClock, wallClock } from '../../clock.ts';
import type { Settings } from '../../settings.ts';

/** The wall clock, or that of a demonstration (`--clock`). */
export const clockFrom = (given: Settings<'start'>['clock']): Clock =>
  given ? fastClock(given.start, given.real, given.speed) : wallClock;

/**
 * Names this start of the machine, where the system tells it (Linux: proc(5), random/boot_id): the
 * steady count goes on as long as it stays the same. Else, and in demonstrations, this start of the hub.
 */
export function bootOf(given: Settings<'start'>['clock']): string {
  if (given) return randomUUID();
  try {
    return readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
  } catch {
    return randomUUID();
  }
}
