import type { Farm } from '../farm/index.ts';
import { damageAt, WET } from '../farm/index.ts';
import type { StoredReading } from '../store/index.ts';
import type { Spots } from './spots.ts';

/** Below this a power meter says: the compressor does not run. W, ours. */
const IDLE = 10;

/** The values of a quantity that matter at a place: passing one is worth a look at once. */
function limitsOf(farm: Farm, placeId: string, quantity: string): number[] {
  const place = farm.place(placeId);
  if (!place) return [];
  if (quantity === 'door') return [0.5];
  if (quantity === 'power') return [0.5, IDLE];
  if (quantity === 'humidity' && place.kind === 'tunnel') return [(place.wet ?? WET).at];
  if (quantity !== 'temperature') return [];
  const crop = farm.crop(place.crop);
  const damage = damageAt(farm, place)?.at;
  return [place.limit, damage, crop?.chill, crop?.heatLimit, crop?.band?.[1]].filter(
    (limit) => limit !== undefined,
  );
}

/** After a silence this long a reading is news, whatever it says. Ours. */
const SILENCE = 30 * 60_000; // ms

/** What a door or a lost supply has to last for before it is told: a look comes when it has. Rules hold
 *  four and five minutes; a quarter less, so that the look that follows a second later finds them past. */
const LASTED = [3.75 * 60_000, 4.75 * 60_000]; // ms
const LASTING = new Set(['door', 'power']);

/** Tells, reading by reading, whether a limit that matters has just been passed, or a silence ended. */
export function makeCrossings(spots: Spots, farm: () => Farm) {
  const newest = new Map<string, { t: number; value: number }>();
  /** Moments from which on another look is wanted; any reading tells that one has come. */
  let due: number[] = [];
  return function crossed(readings: readonly StoredReading[]): boolean {
    let any = false;
    for (const { probe, quantity, t, value, flag } of readings) {
      if (flag !== null) continue;
      const key = `${probe}\n${quantity}`;
      const before = newest.get(key);
      if (before && t <= before.t) continue;
      newest.set(key, { t, value });
      if (due.some((at) => t >= at)) {
        due = due.filter((at) => t < at);
        any = true;
      }
      if (any && !LASTING.has(quantity)) continue;
      const here = spots.currentOf(probe);
      if (!here) continue;
      if (!before || t - before.t > SILENCE) {
        any = true;
        continue;
      }
      const passed = limitsOf(farm(), here.place, quantity).some(
        (limit) => before.value > limit !== value > limit,
      );
      any ||= passed;
      // A handful at most: a door that flaps keeps the first and the newest.
      if (passed && LASTING.has(quantity))
        due = [...due.slice(-6), ...LASTED.map((lasted) => t + lasted)];
    }
    return any;
  };
}
