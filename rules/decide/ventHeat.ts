import type { Evidence } from '../answer.ts';
import { HOUR, type Instant, instant, MINUTE } from '../units.ts';
import { since } from './column.ts';
import { by, put, readBy } from './how.ts';
import { type Look, temperatureIn } from './look.ts';
import { fact } from './say.ts';
import { heatAhead } from './shadeAhead.ts';
import type { Crop, PlaceNow } from './snapshot.ts';
import { OURS, TOLD } from './sources.ts';

// Too warm inside, cooler outside.

// Ours, from no source: a middle of the published starts for mixed houses, 13 to 27 °C (Jett 2010).
export const START_VENTING = 24; // °C, when no crop is told
const LIMIT_ABOVE_START = 6; // K, ours: "do not exceed" where no limit is told
const URGENT_BELOW_LIMIT = 2; // K, ours (a closed tunnel in spring sun gains 10 K in an hour)
export const COOLER = 1; // K, ours: two probes' error
const URGENT_HOURS = 3; // h over the limit, where yesterday was not read. Ours
const GONE = 2; // K, ours: asked until clearly below the start

export type Heat =
  | {
      readonly hot: true;
      readonly urgent: boolean;
      readonly doBy: Instant;
      /** Over the limit, from now to sunset, if nothing is done. */
      readonly hoursAhead: number;
      readonly because: readonly Evidence[];
    }
  | { readonly hot: false; readonly because: readonly Evidence[] }
  | {
      readonly hot: null;
      readonly missing: readonly string[];
      readonly because: readonly Evidence[];
    };

/**
 * Whether it is too warm inside and cooler outside: from the top of the crop's band on, and in a
 * hurry within 2 K of its heat limit.
 *
 * Source: band and limit are the grower's, in the farm file; where none are told 24 °C, ours, a
 * middle of the published starts for mixed houses, 13 to 27 °C (Jett 2010).
 */
export function heatIn(look: Look, place: PlaceNow, crop: Crop | null, standing: boolean): Heat {
  const { now } = look;
  const inside = temperatureIn(place, now);
  if (inside === null) return { hot: null, missing: ['inside-temperature'], because: [] };

  const start = crop?.band?.[1] ?? START_VENTING;
  const limit = crop?.heatLimit ?? start + LIMIT_ABOVE_START;
  const source = crop?.band ? TOLD : OURS;
  const read = readBy(inside.spot.probe, inside.t);
  const because = [fact('inside-temperature', inside.value, '°C', start, source, read)];
  if (inside.value < start - (standing ? GONE : 0)) return { hot: false, because };

  const outside = look.outsideTemperature;
  if (outside === null) return { hot: null, missing: ['outside-temperature'], because };
  const cooler = inside.value - outside;
  because.push(
    fact(
      'outside-cooler-by',
      cooler,
      'K',
      COOLER,
      OURS,
      by(
        'heatIn',
        put('inside-temperature', inside.value, '°C'),
        put('outside-temperature', outside, '°C'),
        ...read.inputs,
        ...look.outsideHow.inputs,
      ),
    ),
  );
  if (cooler < (standing ? 0 : COOLER)) return { hot: false, because };

  // Deadlines count from the moment it became so, so that they stand still while the list is read.
  const startedAt = (from: number) =>
    since(inside.column, now, (value) => value >= from, 30) ?? inside.t;
  const byStart = startedAt(Math.min(start, inside.value)) + HOUR;
  const urgent = inside.value >= limit - URGENT_BELOW_LIMIT;
  if (urgent)
    because.push(
      fact('heat-limit-near', inside.value, '°C', limit, crop?.heatLimit ? TOLD : OURS, read),
    );
  const byLimit = urgent
    ? startedAt(limit - URGENT_BELOW_LIMIT) + 15 * MINUTE
    : Number.POSITIVE_INFINITY;
  const usual = urgent ? URGENT_HOURS : 0;
  const sunk = look.sun !== null && now >= look.sun.set;
  const ahead = sunk ? 0 : (heatAhead(look, inside.column, limit)?.hours ?? usual);
  const hoursAhead = urgent ? Math.max(1, ahead) : ahead;
  return { hot: true, urgent, hoursAhead, doBy: instant(Math.min(byStart, byLimit)), because };
}
