import { type Celsius, instant } from '../units.ts';
import type { WetState } from './walkWetness.ts';
import type { WetPiece } from './wetPieces.ts';

/**
 * Two witnesses of one place's leaves (two probes, or one probe at both ends of its error) as one
 * list: wet where both say so, dry where both say so, else unknown. So the least is "both wet" and
 * the most "either wet", and a silent witness never makes the other's time more certain. A probe
 * that was silent for the whole window is no witness: leave it out.
 * @param a, b pieces of the same window
 * @throws RangeError when they do not cover the same time
 */
export function joinPieces(a: readonly WetPiece[], b: readonly WetPiece[]): WetPiece[] {
  const [begins, ends] = [a[0]?.from, a.at(-1)?.to];
  if (begins !== b[0]?.from || ends !== b.at(-1)?.to) {
    throw new RangeError(
      `Expected both from ${begins} to ${ends}, got ${b[0]?.from} to ${b.at(-1)?.to}`,
    );
  }
  const joined: WetPiece[] = [];
  let [i, j] = [0, 0];
  let at: number = begins ?? 0;
  while (true) {
    const [one, other] = [a[i], b[j]];
    if (one === undefined || other === undefined) return joined;
    const to = Math.min(one.to, other.to);
    joined.push({
      state: agreed(one.state, other.state),
      from: instant(at),
      to: instant(to),
      coldest: Math.min(one.coldest, other.coldest) as Celsius,
      warmest: Math.max(one.warmest, other.warmest) as Celsius,
    });
    if (one.to === to) i += 1;
    if (other.to === to) j += 1;
    at = to;
  }
}

const agreed = (a: WetState, b: WetState): WetState => (a === b ? a : 'unknown');
