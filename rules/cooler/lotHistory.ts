import { type MaybeTemperature, walkSegments } from '../heat/index.ts';
import { HOUR } from '../units.ts';
import { ANY_GAP } from './seriesBetween.ts';

/** Some hours of a lot at one temperature, °C; null for hours that nobody knows. */
export type LotPiece = { readonly hours: number; readonly temperature: number | null };

const STEP = 0.25; // K; ours: ageing by 3 in 10 K changes by 3 % over it, and its mean is kept

/**
 * A series as few pieces: within each stretch that is known, the hours near each temperature, and
 * that temperature's mean. Life used is a sum of rate x time, so the order within a stretch does not
 * matter; between stretches it does, because unknown hours are taken to be as warm as what was last
 * known. A piece of no length ends each stretch and says what that was.
 * @param series as seriesBetween makes it: a null at every gap
 * @throws RangeError for readings not in order of time
 */
export function lotHistory(series: readonly MaybeTemperature[]): LotPiece[] {
  const pieces: LotPiece[] = [];
  const near = new Map<number, { length: number; sum: number }>();
  const from = series[0]?.t ?? 0;
  const to = series.at(-1)?.t ?? from;
  let cursor: number = from;
  let last: number | null = null;
  const flush = () => {
    for (const { length, sum } of near.values())
      pieces.push({ hours: length / HOUR, temperature: sum / length });
    near.clear();
    if (last !== null) pieces.push({ hours: 0, temperature: last });
    last = null;
  };
  const unknownUntil = (t: number) => {
    if (t <= cursor) return;
    flush();
    pieces.push({ hours: (t - cursor) / HOUR, temperature: null });
  };
  walkSegments(series, ANY_GAP, from, to, (length, start, end, left, right) => {
    unknownUntil(left.t);
    const mean = (start + end) / 2;
    const bin = Math.floor(mean / STEP);
    const held = near.get(bin) ?? { length: 0, sum: 0 };
    near.set(bin, { length: held.length + length, sum: held.sum + mean * length });
    cursor = right.t;
    last = end;
  });
  unknownUntil(to);
  flush();
  return pieces;
}
