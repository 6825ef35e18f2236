import { type Clock, fastClock, wallClock } from '../clock.ts';
import type { Settings } from '../settings.ts';

/** The wall clock, or that of a demonstration (`--clock`). */
export const clockFrom = (given: Settings<'start'>['clock']): Clock =>
  given ? fastClock(given.start, given.real, given.speed) : wallClock;
