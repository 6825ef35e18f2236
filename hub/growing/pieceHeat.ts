import {
  dayHeat,
  degreeDays,
  type FilledReading,
  fillGaps,
  hourlyOffsets,
  sunTimes,
  walkSegments,
} from '../../rules/heat/index.ts';
import { HOUR, type Instant, instant, MINUTE } from '../../rules/units.ts';
import type { Farm } from '../farm/index.ts';
import type { Spots } from '../snapshot/index.ts';
import type { Rollup, Store } from '../store/index.ts';
import { type HeatRule, limitsOf, ruleKey } from './heatRule.ts';
import { hourHeat } from './hourHeat.ts';
import { hoursOfPlace } from './hourlyDays.ts';

/** Which spot speaks for the plants of a place: at the crop first. */
export const OF_PLANTS = ['canopy', 'air', 'under-cover', 'grass', 'product'];
/** Over more a line between two readings is a guess: sheet of heat units, common practice, no source. */
const LONGEST_LINE = 90; // min
const LONGEST_GAP = 1440; // min; a reading never speaks for more than a day: ours
const LOOK_BACK = 14 * 24 * HOUR; // of the offsets between two probes; common practice, no source
const HIDES = 6; // h unknown in a part of a day, from which on it says little; as for whole days

/** Heat of one place over a day or a part of one. */
export type PieceHeat = {
  /** Over the time known, °C d. */
  readonly degreeDays: number;
  readonly unknownHours: number;
  /** Filled in from another probe of the place, by their usual difference. */
  readonly filledHours: number;
  /** Counted from hourly roll-ups, because single readings are no longer kept. */
  readonly rolledHours: number;
  /** Its gaps hide dawn or afternoon, or more than six hours: what is known does not tell the day. */
  readonly hidden: boolean;
};

export type PieceParts = {
  readonly store: Store;
  readonly spots: Spots;
  readonly farm: () => Farm;
};

/**
 * Heat of a place from `from` to `to`, within one day, for each of some rules: readings joined by
 * straight lines and integrated exactly; a gap of 90 minutes to 6 h filled in from another probe of
 * the place; from hourly roll-ups where readings were let go of.
 */
export function pieceHeat(
  parts: PieceParts,
  place: string,
  from: number,
  to: number,
  rules: readonly HeatRule[],
): Map<string, PieceHeat> {
  const { store, spots, farm } = parts;
  const here = OF_PLANTS.filter((spot) => spots.overlapping(place, spot, from, to).length > 0);
  const kept = store.trim.kept()?.from ?? Number.NEGATIVE_INFINITY;
  const out = new Map<string, PieceHeat>();
  if (from < kept) {
    const hours = hoursOfPlace(parts, place, from, to);
    for (const rule of rules) out.set(ruleKey(rule), rolled(hours, from, to, rule));
    return out;
  }
  const { readings, longest } = readingsOf(here, from, to);
  const { lat, lon } = farm().file.farm;
  const rise = sunTimes(instant((from + to) / 2), lat, lon)?.rise ?? null;
  for (const rule of rules) {
    const { degreeDays: known, unknownHours } = degreeDays(readings, {
      ...limitsOf(rule),
      maxGapMinutes: longest,
      from: instant(from),
      to: instant(to),
    });
    let hidden = unknownHours > HIDES;
    let filledHours = 0;
    if (to - from > 22 * HOUR && to - from <= 25 * HOUR) {
      const day = { readings, from: instant(from), to: instant(to), rise, ...limitsOf(rule) };
      const told = dayHeat(day);
      filledHours = (told.filled * (to - from)) / HOUR;
      // A probe that means to report more seldom than every 90 min hides nothing by doing so.
      hidden = told.basis === 'unknown' && unknownHours > 0;
    }
    const facts = { degreeDays: known, unknownHours, filledHours, rolledHours: 0, hidden };
    out.set(ruleKey(rule), facts);
  }
  return out;

  /** The first spot that speaks for (nearly) all of the time, filled from the others; else the best. */
  function readingsOf(order: readonly string[], begins: number, ends: number) {
    let best = { readings: [] as readonly FilledReading[], longest: LONGEST_LINE, unknown: 1e12 };
    for (const spot of order) {
      const every = everyOf(spot, begins, ends);
      const longest = Math.min(LONGEST_GAP, Math.max(LONGEST_LINE, (2.5 * every) / MINUTE));
      const margin = longest * MINUTE;
      let readings: readonly FilledReading[] = pointsOf(spot, begins - margin, ends + margin).map(
        (one) => ({ ...one, filled: false }),
      );
      const unknownIn = () =>
        ends - begins - walkSegments(readings, longest, begins, ends, () => {});
      for (const other of order) {
        if (readings.length === 0 || other === spot || unknownIn() === 0) continue;
        readings = filled(readings, spot, other, begins, ends, longest);
      }
      const unknown = unknownIn();
      if (unknown < best.unknown) best = { readings, longest, unknown };
      if (best.unknown <= HIDES * HOUR) break;
    }
    return best;
  }

  function filled(
    readings: readonly FilledReading[],
    spot: string,
    other: string,
    begins: number,
    ends: number,
    longestLineMinutes: number,
  ) {
    // Offsets by hour of the day: a zone's own offset changes nothing, as long as both use the same.
    const rule = { until: instant(begins), standardOffsetMinutes: 0 };
    const before = begins - LOOK_BACK;
    const offsets = hourlyOffsets(
      pointsOf(spot, before, begins),
      pointsOf(other, before, begins),
      rule,
    );
    const paired = pointsOf(other, begins, ends);
    return fillGaps(readings, paired, { offsets, ...rule, longestLineMinutes });
  }

  function pointsOf(spot: string, begins: number, ends: number) {
    return spots.points(place, spot, 'temperature', begins, ends) as {
      t: Instant;
      value: number;
    }[];
  }

  function everyOf(spot: string, begins: number, ends: number) {
    const probes = spots.overlapping(place, spot, begins, ends).map(({ probe }) => probe);
    return Math.max(0, ...probes.map((probe) => store.probes.get(probe)?.everyMs ?? 0));
  }
}

function rolled(hours: readonly Rollup[], from: number, to: number, rule: HeatRule): PieceHeat {
  let [degreeDays, known] = [0, 0];
  for (const hour of hours) {
    const { t } = hour;
    const share = (Math.min(to, t + HOUR) - Math.max(from, t)) / HOUR;
    if (share <= 0) continue;
    known += share;
    degreeDays += share * hourHeat(hour, rule);
  }
  const unknownHours = Math.max(0, (to - from) / HOUR - known);
  const facts = { degreeDays, unknownHours, filledHours: 0, rolledHours: known };
  return { ...facts, hidden: unknownHours > HIDES };
}
