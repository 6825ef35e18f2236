import { median } from '../statistics/index.ts';
import { HOUR, type Instant, MINUTE } from '../units.ts';
import type { Turn } from './cycleTurns.ts';
import type { Cycle } from './learnCycle.ts';

/** A cycle that goes on as it was, only elsewhere: somebody set the controller anew. */
export type BandMoved = {
  /** When the first of its turns was. */
  readonly since: Instant;
  /** K by which the band lies higher (or lower) than learned. */
  readonly by: number;
  readonly top: number;
  readonly bottom: number;
};

// Ours, tried on simulated rooms.
const TURNS = 6; // three tops and three bottoms
const LEAST = 0.5; // K; less is weather, load and a probe's noise
const TOGETHER = 0.45; // of the swing by which top and bottom may have moved apart
const ALIKE = 0.35; // of the swing by which single turns may lie off their middle
const SWING = { least: 0.6, most: 1.5 }; // times the learned one
const SLOWER = 1.6; // times the learned way down: a fading unit takes longer, a set point does not
const QUICKER = 0.5; // times the learned way up: a door ajar makes it steeper
const RESTS = 2.5; // times the learned way up
const RECENT = 3 * HOUR; // ms in which the pattern was seen last
const STILL_TURNS = 1.5; // times the long rise: after it the cycle is over

/**
 * Whether the newest cycles have kept their shape in another place: as high from bottom to top as
 * learned, as quick down, and both ends moved the same way by half a kelvin at least. A door, a load
 * or a defrost lifts the tops alone; a fading unit loses the bottom and is slow.
 *
 * Source: signature of a changed set point, common practice (cycle keeps its shape, whole band
 * moves); the figures are ours, from no source.
 */
export function bandMoved(turns: readonly Turn[], cycle: Cycle, now: Instant): BandMoved | null {
  const newest = turns.at(-1);
  const most = Math.max(cycle.longRise, cycle.fallMinutes) * STILL_TURNS;
  if (newest === undefined || now - newest.t > most * MINUTE) return null;
  for (let end = turns.length; end >= TURNS; end--) {
    const last = turns.slice(end - TURNS, end);
    if ((last.at(-1)?.t ?? 0) < now - RECENT) return null;
    const found = movedIn(last, cycle);
    // A door or a defrost since then hides the pattern, but not where the bottoms lie.
    if (found !== null) return turns.slice(end).every(stays(found, cycle)) ? found : null;
  }
  return null;
}

const stays = ({ by }: BandMoved, { bottom }: Cycle) => {
  const edge = bottom + (Math.sign(by) * LEAST) / 2;
  return ({ top, value }: Turn) => top || (by > 0 ? value > edge : value < edge);
};

function movedIn(last: readonly Turn[], cycle: Cycle): BandMoved | null {
  const [first] = last;
  if (first === undefined) return null;
  const swing = cycle.top - cycle.bottom;
  const tops = last.filter((turn) => turn.top).map(({ value }) => value);
  const bottoms = last.filter((turn) => !turn.top).map(({ value }) => value);
  const top = median(tops);
  const bottom = median(bottoms);
  const [up, down] = [top - cycle.top, bottom - cycle.bottom];
  const ways = (rising: boolean) =>
    last.flatMap((turn, i) => {
      const next = last[i + 1];
      return turn.top !== rising && next !== undefined ? (next.t - turn.t) / MINUTE : [];
    });
  const fall = median(ways(false)) / cycle.fallMinutes;
  const rise = median(ways(true)) / cycle.riseMinutes;
  const shape = (top - bottom) / swing;
  const alike =
    tops.every((value) => Math.abs(value - top) <= ALIKE * swing) &&
    bottoms.every((value) => Math.abs(value - bottom) <= ALIKE * swing);
  const moved = up * down > 0 && Math.min(Math.abs(up), Math.abs(down)) >= LEAST;
  const kept =
    shape >= SWING.least && shape <= SWING.most && Math.abs(up - down) <= TOGETHER * swing;
  const pace = fall <= SLOWER && rise >= QUICKER && rise <= RESTS;
  if (!moved || !kept || !alike || !pace) return null;
  return { since: first.t, by: (up + down) / 2, top, bottom };
}
