import type { Instant } from '../units.ts';
import { coolsBy } from './coilSays.ts';
import { IDLE } from './powerDay.ts';
import { firstNotBefore, type Trace } from './trace.ts';

const HALF = 0.5; // of the usual running power; common practice

/**
 * Whether the unit works, reading by reading: by a meter where there is one, else by how far its
 * coil is below the air. null half-way between. Ours, from no source.
 */
export function worksBy(
  power: Trace,
  coil: Trace,
  air: Trace,
  usual: { readonly belowAir: number } | null,
): { readonly t: Instant; readonly on: boolean | null }[] {
  if (power.t.length > 0) {
    const most = Math.max(...power.value);
    return power.t.map((t, i) => {
      const watts = power.value[i] as number;
      return { t, on: watts >= HALF * most ? true : watts < IDLE ? false : null };
    });
  }
  if (usual === null || air.t.length === 0) return [];
  return coil.t.map((t, i) => {
    const value = air.value[Math.max(0, firstNotBefore(air.t, t + 60_000) - 1)] as number;
    return { t, on: coolsBy(value - (coil.value[i] as number), usual.belowAir) };
  });
}
