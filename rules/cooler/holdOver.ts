import { meanOf } from '../statistics/index.ts';
import { type Hours, hours } from '../units.ts';
import { usualTimeConstant } from './offPeriodFit.ts';
import { warmingTime } from './warmingTime.ts';

export type HoldOver = {
  readonly tauHours: Hours;
  /** Whether tau is this room's own, and from how many stops. */
  readonly learnedFrom: number;
  /** Hours until the air is at the limit; null for never, or not known. */
  readonly toLimit: Hours | null;
  /** The short and the long end, tau a tenth or its own spread either way. */
  readonly shortest: Hours | null;
  readonly longest: Hours | null;
};

/** Ours, from no source, until the room has shown its own: a walk-in room half full. */
export const USUAL_TAU = hours(6);
const LEAST_SPREAD = 0.1; // of tau; the sheet's own example takes a tenth. Common practice
const USUAL_SPREAD = 0.4; // of tau, while nothing was learned. Ours
const LAST_FITS = 5;

/**
 * How long the room stays below its limit once nothing cools: the middle of the last five time
 * constants learned, and a range by how far these lie apart, a tenth at least. To be careful give the
 * warmest outside temperature to be expected, and go by the shortest.
 *
 * Source: Newton's law of cooling; the spread is common practice and ours.
 * @param fits time constants learned from stops, oldest first, h
 * @param swift the constant of the first hour of such stops, h, for one that is about to begin: the
 *   short end goes by it through that hour
 */
export function holdOver(
  fits: readonly number[],
  room: {
    readonly inside: number | null;
    readonly outside: number | null;
    readonly limit: number;
  },
  swift: number | null = null,
): HoldOver {
  const last = fits.slice(-LAST_FITS);
  const tauHours = usualTimeConstant(last) ?? USUAL_TAU;
  const apart =
    last.length === 0
      ? USUAL_SPREAD
      : meanOf(last.map((tau) => Math.abs(tau - tauHours))) / tauHours;
  const spread = Math.min(0.8, Math.max(LEAST_SPREAD, apart));
  const { inside, outside, limit } = room;
  const at = (tau: number) =>
    inside === null || outside === null
      ? null
      : warmingTime({ inside, outside, target: limit, tauHours: tau });
  return {
    tauHours,
    learnedFrom: last.length,
    toLimit: at(tauHours),
    shortest: sooner(at(tauHours * (1 - spread)), swiftly(room, tauHours * (1 - spread), swift)),
    longest: at(tauHours * (1 + spread)),
  };
}

const FIRST = 1; // h that a quick beginning lasts, as offFits measures it. Ours

/** Through a first hour of the quick constant, then on with the slow one. */
function swiftly(
  { inside, outside, limit }: Parameters<typeof holdOver>[1],
  tauHours: number,
  swift: number | null,
): Hours | null {
  if (swift === null || inside === null || outside === null) return null;
  const quick = warmingTime({ inside, outside, target: limit, tauHours: swift });
  if (quick === null || quick <= FIRST) return quick;
  const after = outside - (outside - inside) * Math.exp(-FIRST / swift);
  const rest = warmingTime({ inside: after, outside, target: limit, tauHours });
  return rest === null ? null : hours(FIRST + rest);
}

const sooner = (a: Hours | null, b: Hours | null) =>
  a === null ? b : b === null ? a : hours(Math.min(a, b));

/** The fits that speak for what is inside now: those made with the same contents where any is known. */
export function fitsFor<Contents>(
  fits: readonly { readonly tauHours: number; readonly contents: Contents | null }[],
  contents: Contents | null,
): number[] {
  const same = fits.filter((fit) => contents !== null && fit.contents === contents);
  return (same.length > 0 ? same : fits).map(({ tauHours }) => tauHours);
}
