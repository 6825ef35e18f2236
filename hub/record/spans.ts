import type { Point } from '../store/index.ts';

export type Span = { readonly from: number; readonly to: number };

/**
 * Stretches in which readings hold: each reading speaks until the next, but no longer than a gap may
 * be. Two that touch are one.
 */
export function spansWhere(
  points: readonly Point[],
  holds: (value: number) => boolean,
  { from, to, gap }: { readonly from: number; readonly to: number; readonly gap: number },
): Span[] {
  const spans: { from: number; to: number }[] = [];
  for (const [i, { t, value }] of points.entries()) {
    if (!holds(value)) continue;
    const until = Math.min(points[i + 1]?.t ?? to, t + gap);
    const begins = Math.max(from, t);
    const ends = Math.min(to, until);
    if (ends <= begins) continue;
    const last = spans.at(-1);
    if (last && last.to >= begins) last.to = ends;
    else spans.push({ from: begins, to: ends });
  }
  return spans;
}

export const lengthOf = (spans: readonly Span[]) =>
  spans.reduce((sum, { from, to }) => sum + (to - from), 0);
