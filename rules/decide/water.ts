import type { Answer, Evidence } from '../answer.ts';
import { HOUR, type Instant, instant } from '../units.ts';
import { type SoilDrying, soilDrying } from '../water/index.ts';
import { fresh, readAt, within } from './column.ts';
import { by, put, readBy, when } from './how.ts';
import { cropOf, type Look, stands } from './look.ts';
import { bySun } from './night.ts';
import { RAIN, rainAhead, rainFact } from './rainAhead.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { Column, PlaceNow, SpotNow } from './snapshot.ts';
import { OURS, PRACTICE, TOLD } from './sources.ts';
import { dropInRisk, sparedTrays } from './worth.ts';

// All ours, from no source.
const VALID = 180; // min; soil changes slowly, and its probes report seldom
const MISSED = 2.5; // reports that may be missing before the probe is silent
const PACE = 24 * HOUR; // soil dries by day and rests by night
const STANDING = 2; // percentage points above the limit: once asked, asked until it is clearly wetter
const MINUTES_OF_WORK = 15;
const DROP = 0.2; // share of the trays' worth
/** Watered so long before the sun is highest, it is there before the heat; so long before sunset,
 *  leaves are dry by night. Common practice, no source for the hours. */
const BEFORE_NOON = 2 * HOUR;
const BEFORE_SET = 2 * HOUR;

/**
 * A place is to be watered: its driest soil probe is below the limit told in the farm file, or will
 * be before this day's sun is low, at the pace of the last day. In the morning, before the heat; later
 * on so early that leaves are dry by night; else the next morning. Where rain falls on the place and
 * enough of it is foretold, it waits. One probe tells of one spot: unknown where none speaks.
 *
 * Source: the limit is told; the pace is soilDrying; watering in the morning is common practice, no
 * source; hours and margins are ours.
 */
export function water(look: Look, place: PlaceNow): Answer {
  const { now } = look;
  const limit = place.water?.below;
  if (limit === undefined) return leave();
  const driest = driestSoil(place, now);
  if (driest === null) return unknown(['soil-moisture-here']);
  const { spot, column, t, value } = driest;
  const because: Evidence[] = [
    fact('soil-moisture-now', value, '%', limit, TOLD, readBy(spot.probe, t)),
  ];
  const drying = soilDrying(readsOf(column, now - PACE, now), limit);
  const standing = stands(look, 'water', place.id);
  const dry = value < limit + (standing ? STANDING : 0);
  const slot = slotOf(look, standing);
  const dryAt = drying?.dryAt ?? null;
  const today = dryAt !== null && slot.ahead !== null && dryAt < slot.ahead;
  if (drying !== null) because.push(...paceOf(drying, spot, limit, dryAt, now));
  if (!dry && !today) return leave(...because);

  const rain = place.kind === 'tunnel' ? null : rainAhead(look);
  if (rain !== null && rain.sum >= RAIN) return leave(...because, rainFact(rain));
  because.push(slot.why, dropInRisk(DROP));
  const soon = dry ? slot.doBy : Math.min(slot.doBy, dryAt ?? slot.doBy);
  return act(because, {
    minutes: place.water?.minutes ?? MINUTES_OF_WORK,
    from: slot.from,
    doBy: instant(Math.max(now, soon)),
    saves: sparedTrays(place, cropOf(look, place), DROP),
  });
}

/** The driest of the place's soil probes that speak; null where none does. */
function driestSoil({ spots }: PlaceNow, now: Instant) {
  const read = spots.flatMap((spot) => {
    const column = spot.columns['soil-moisture'];
    const found = fresh(column, now, Math.max(VALID, MISSED * spot.every));
    return column === undefined || found === null ? [] : [{ spot, column, ...found }];
  });
  return read.reduce<(typeof read)[number] | null>(
    (best, one) => (best === null || one.value < best.value ? one : best),
    null,
  );
}

const readsOf = (column: Column, from: number, to: number) => {
  const window = within(column, from, to);
  return Array.from({ length: window.to - window.from }, (_, i) =>
    readAt(column, window.from + i),
  ).filter((read) => read !== null);
};

function paceOf(
  drying: SoilDrying,
  spot: SpotNow,
  limit: number,
  dryAt: Instant | null,
  now: Instant,
): Evidence[] {
  const inputs = [put('probe', spot.probe), put('limit', limit, '%'), when('now', now)];
  const how = by('soilDrying', ...inputs);
  const pace = fact('soil-dries', drying.perDay, '% a day', null, OURS, how);
  if (dryAt === null || dryAt <= now) return [pace];
  return [pace, fact('soil-dry-in', (dryAt - now) / HOUR, 'h', null, OURS, how)];
}

type Slot = {
  readonly from: Instant | null;
  readonly doBy: Instant;
  /** Soil that is dry before then is watered ahead of it; null when it is too late for that today. */
  readonly ahead: number | null;
  readonly why: Evidence;
};

/** When to water: this morning, still today, or tomorrow morning. */
function slotOf({ sun, now, snapshot }: Look, standing: boolean): Slot {
  if (sun === null) {
    const how = by('water', when('now', now));
    const why = fact('water-today', null, '', null, OURS, how);
    return { from: null, doBy: snapshot.day.ends, ahead: snapshot.day.ends, why };
  }
  const morning = Math.max(sun.rise, (sun.rise + sun.set) / 2 - BEFORE_NOON);
  const evening = sun.set - BEFORE_SET;
  const said = (what: string, to: 'sunrise' | 'sunset', at: Instant) =>
    fact(what, Math.abs(at - now) / HOUR, 'h', null, PRACTICE, bySun(snapshot, to, at));
  if (now < morning) {
    const why = said('water-before-the-heat', 'sunset', sun.set);
    const from = now < sun.rise ? sun.rise : null;
    return { from, doBy: instant(morning), ahead: evening, why };
  }
  if (now < evening) {
    const why = said('water-before-evening', 'sunset', sun.set);
    // What was asked for this morning is still to be done.
    return { from: null, doBy: instant(evening), ahead: standing ? evening : null, why };
  }
  const { rise } = sun.night;
  const why = said('water-in-the-morning', 'sunrise', rise);
  return { from: rise, doBy: instant(rise + (morning - sun.rise)), ahead: null, why };
}
