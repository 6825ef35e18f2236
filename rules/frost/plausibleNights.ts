import { median } from '../statistics/index.ts';
import { fitLine, leverageAt, type Row, valueAt } from './leastSquares.ts';

// All ours, from no source: a night so far off that weather does not explain it, and never more
// than one in ten, or the fit would choose its own nights.
const FAR = 4; // robust standard deviations
const SHARE = 0.1;
const FEWEST = 10; // below this nothing can be told apart
const SD_OF_MAD = 1.4826; // standard deviation of a normal over its median absolute deviation

/**
 * The nights that agree with the others: those whose error, predicted from the rest, lies within
 * four robust standard deviations. A door left open at dusk, a probe lifted for an hour or a value
 * that passed every check by chance would else bend the line for sixty nights. At most a tenth is
 * left out, the farthest first, one at a time.
 *
 * Source: ours; the robust spread is the median absolute deviation times 1.4826, textbook.
 */
export function plausibleNights<Night>(
  nights: readonly Night[],
  rowOf: (night: Night) => Row,
): readonly Night[] {
  let kept = nights;
  const most = Math.floor(nights.length * SHARE);
  for (let out = 0; out < most && kept.length > FEWEST; out++) {
    const errors = errorsOf(kept.map(rowOf));
    if (errors === null) return kept;
    const spread = SD_OF_MAD * median(errors.map(Math.abs));
    const worst = errors.reduce((far, error, i) => {
      return Math.abs(error) > Math.abs(errors[far] ?? 0) ? i : far;
    }, 0);
    if (spread === 0 || Math.abs(errors[worst] ?? 0) <= FAR * spread) return kept;
    kept = kept.filter((_, i) => i !== worst);
  }
  return kept;
}

/** Each night's error when it is predicted from the others. */
function errorsOf(rows: readonly Row[]): readonly number[] | null {
  const line = fitLine(rows, rows[0]?.x.length ?? 0);
  if (line === null) return null;
  return rows.map(({ x, y }) => (y - valueAt(line, x)) / (1 - leverageAt(line, x)));
}
