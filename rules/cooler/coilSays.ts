import { type Instant, MINUTE } from '../units.ts';
import { firstNotBefore, type Trace } from './trace.ts';

/** What a probe on the unit's coil, or in the air it blows, tells of the cooling. */
export type CoilSign = {
  /** K the coil is below the air now. */
  readonly belowAir: number;
  /** Whether it cools; null half-way between. */
  readonly cools: boolean | null;
  /** Since when it has not cooled. */
  readonly idleSince: Instant | null;
  /** Far colder than it ever was: no air goes over it. */
  readonly starvedSince: Instant | null;
};

const COOLS = 0.5; // share of its usual distance below the air. Ours
const IDLES = 0.25;
const STARVED = 4; // K below its coldest, ours: a stopped fan or a coil full of ice
const USUAL = 6; // K below the air, until learned. Ours

/** Whether a coil so many K below the air cools, by how far it usually is; null half-way between. */
export const coolsBy = (below: number, usual: number): boolean | null =>
  below >= COOLS * usual ? true : below <= IDLES * usual ? false : null;

/** How cold the coil is against the air of the same minute. Ours, from no source. */
export function coilSays(
  coil: Trace,
  air: Trace,
  usual: { readonly lowest: number; readonly belowAir: number } | null,
): CoilSign | null {
  const last = coil.t.length - 1;
  if (last < 0 || air.t.length === 0) return null;
  const distance = usual?.belowAir ?? USUAL;
  const below = (i: number) => {
    const at = coil.t[i] as number;
    const j = Math.max(0, firstNotBefore(air.t, at + MINUTE) - 1);
    return (air.value[j] as number) - (coil.value[i] as number);
  };
  const now = below(last);
  let idleSince: Instant | null = null;
  for (let i = last; i >= 0 && below(i) <= COOLS * distance; i--) idleSince = coil.t[i] as Instant;
  let starvedSince: Instant | null = null;
  if (usual !== null) {
    for (let i = last; i >= 0 && (coil.value[i] as number) < usual.lowest - STARVED; i--) {
      starvedSince = coil.t[i] as Instant;
    }
  }
  return { belowAir: now, cools: coolsBy(now, distance), idleSince, starvedSince };
}
