import type { LocalTime } from './localTime.ts';
import { createChance } from './seed.ts';

const MINUTE = 60_000;

/** How somebody looks after one tunnel's vents. Habits are ours, from no source. */
export type VentHabit = {
  /** Usual hours of opening and shutting, farm's clock. */
  readonly opens: number;
  readonly shuts: number;
  /** °C inside under which nobody bothers to open. */
  readonly worthIt: number;
  /** Share that stays open whatever is done (torn film, missing door). */
  readonly always: number;
  /** Share of days nobody comes to open, and of evenings nobody comes to shut. */
  readonly forgets: number;
  readonly leftOpen: number;
};

/** A stretch for which the scenario says how the vents stand. */
export type VentPiece = { readonly from: number; readonly to: number; readonly open: number };

/** Share of the vents open at `t`, seen by somebody who comes by each quarter of an hour. */
export function createVents(
  seed: number,
  name: string,
  habit: VentHabit,
  local: LocalTime,
  pieces: readonly VentPiece[] = [],
) {
  const chance = createChance(seed, `vents of ${name}`);
  let open = habit.always;
  return (t: number, inside: number): number => {
    const said = pieces.find(({ from, to }) => t >= from && t < to);
    if (said) {
      open = said.open;
      return open;
    }
    if (t % (15 * MINUTE) !== 0) return open;
    const day = local.day(t);
    const hour = local.hour(t);
    const opens = habit.opens + 0.6 * chance.normal(4 * day);
    const shuts = habit.shuts + 0.5 * chance.normal(4 * day + 1);
    const comes = chance.uniform(4 * day + 2) >= habit.forgets;
    const returns = chance.uniform(4 * day + 3) >= habit.leftOpen;
    if (hour >= opens && hour < shuts && comes && inside > habit.worthIt) open = 1;
    if (hour >= shuts && returns) open = habit.always;
    return open;
  };
}
