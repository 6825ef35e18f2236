import type { Evidence } from '../answer.ts';
import { HOUR, type Instant, instant } from '../units.ts';
import { within } from './column.ts';
import { by, put, when } from './how.ts';
import type { Look } from './look.ts';
import { fact } from './say.ts';
import type { PushedForecast } from './snapshot.ts';
import { FORETOLD, OURS } from './sources.ts';

// Ours, from no source: rain that wets ripe fruit, or a bed, through.
export const RAIN = 5; // mm
const RAIN_AHEAD = 24 * HOUR;
const OLDEST_RAIN = 18 * HOUR; // ours: a forecast older than this says nothing of rain

export type Rain = { readonly by: PushedForecast; readonly sum: number; readonly begins: Instant };

/**
 * Rain of the next day by pushed forecasts: the wettest that anybody foretells, and when it begins;
 * null when nobody does, or only one of more than 18 hours ago.
 *
 * Source: as foretold by whoever pushes it, not checked here; the hours are ours.
 */
export function rainAhead({ snapshot: { pushed = [] }, now }: Look): Rain | null {
  let most: Rain | null = null;
  for (const each of pushed) {
    if (now - each.issuedAt > OLDEST_RAIN) continue;
    const { from, to } = within(each.rain, now, now + RAIN_AHEAD);
    let sum = 0;
    let begins: Instant | null = null;
    for (let i = from; i < to; i++) {
      const mm = each.rain.value[i] ?? 0;
      sum += mm;
      // A value tells what fell since the one before it.
      if (mm > 0) begins ??= each.rain.t[i - 1] ?? now;
    }
    if (begins === null || (most !== null && sum <= most.sum)) continue;
    most = { by: each, sum, begins: instant(Math.max(now, begins)) };
  }
  return most;
}

export function rainFact({ by: { source, issuedAt }, sum, begins }: Rain): Evidence {
  const how = by(
    'rainAhead',
    put('foretold-by', source),
    when('foretold-at', issuedAt),
    when('rain-from', begins),
  );
  return fact('rain-ahead', sum, 'mm', RAIN, FORETOLD, how, OURS);
}
