import {
  fitLine,
  type Line,
  leaveOneOutRmse,
  leverageAt,
  type Row,
  valueAt,
} from './leastSquares.ts';

// Which of several clues to believe, decided by the nights themselves.

/** One past night: what was known beforehand (null where it was not), and what came of it. */
export type Clued<Clue extends string> = {
  readonly clues: Readonly<Record<Clue, number | null>>;
  readonly y: number;
};

/** A straight line in the clues that earned their place; plain data. */
export type ChosenModel<Clue extends string> = {
  readonly n: number;
  readonly df: number;
  /** Error of predicting each night from the others, K; the spread of a forecast rests on it. */
  readonly leaveOneOutRmse: number;
  readonly chosen: readonly Clue[];
  readonly line: Line;
};

const WORTH_IT = 0.98; // as in fitNightLow: a clue has to lower the error by more than 2 %; ours
const SHARE_KNOWN = 0.8; // ours: a clue missing on a fifth of the nights would throw too many away
const FEWEST_TO_SPARE = 5; // residual degrees of freedom; ours

/**
 * The line in the clues that lower the leave-one-out error, taken in one at a time, the best first,
 * until none lowers it by more than 2 % on nights that have it. null when `base`, which is always
 * in, is known on fewer than `fewest` nights, or does not vary.
 *
 * Source: the rule of admission is ours, after Snyder & de Melo-Abreu 2005, FAO vol. 1, which takes
 * the dew point in only where it helps; leave-one-out by leverage is textbook least squares.
 */
export function fitChosen<Clue extends string>(
  nights: readonly Clued<Clue>[],
  { base, pool, fewest }: Choice<Clue>,
): ChosenModel<Clue> | null {
  let best = fitted(nights, base, fewest);
  if (best === null) return null;
  for (;;) {
    let better: ChosenModel<Clue> | null = null;
    for (const clue of pool) {
      if (best.chosen.includes(clue)) continue;
      const tried: ChosenModel<Clue> | null = fitted(nights, [...best.chosen, clue], fewest);
      if (tried === null || tried.n < SHARE_KNOWN * best.n) continue;
      // Held against the line without it, on the very nights that have it.
      const without = fitted(withAll(nights, tried.chosen), best.chosen, fewest);
      const toBeat = Math.min(best.leaveOneOutRmse, without?.leaveOneOutRmse ?? 0);
      if (tried.leaveOneOutRmse >= WORTH_IT * toBeat) continue;
      if (better === null || tried.leaveOneOutRmse < better.leaveOneOutRmse) better = tried;
    }
    if (better === null) return best;
    best = better;
  }
}

export type Choice<Clue extends string> = {
  readonly base: readonly Clue[];
  readonly pool: readonly Clue[];
  readonly fewest: number;
};

/**
 * What the line says of one more night, as Student's t around `mean`; null when a clue it uses is
 * not known.
 *
 * Source: prediction interval of least squares, with the leave-one-out error for the residual
 * spread: choosing among clues makes residuals look smaller than they are. Ours.
 */
export function predictChosen<Clue extends string>(
  { chosen, line, leaveOneOutRmse: error, df }: ChosenModel<Clue>,
  clues: Readonly<Record<Clue, number | null>>,
): { readonly mean: number; readonly sd: number; readonly df: number } | null {
  const x: number[] = [];
  for (const clue of chosen) {
    const value = clues[clue];
    if (value === null) return null;
    x.push(value);
  }
  return { mean: valueAt(line, x), sd: error * Math.sqrt(1 + leverageAt(line, x)), df };
}

const withAll = <Clue extends string>(nights: readonly Clued<Clue>[], clues: readonly Clue[]) =>
  nights.filter((night) => clues.every((clue) => night.clues[clue] !== null));

function fitted<Clue extends string>(
  nights: readonly Clued<Clue>[],
  chosen: readonly Clue[],
  fewest: number,
): ChosenModel<Clue> | null {
  const rows = withAll(nights, chosen).map(
    ({ clues, y }): Row => ({ x: chosen.map((clue) => clues[clue] ?? 0), y }),
  );
  if (rows.length < Math.max(fewest, chosen.length + 1 + FEWEST_TO_SPARE)) return null;
  const line = fitLine(rows, chosen.length);
  if (line === null) return null;
  return {
    n: rows.length,
    df: line.df,
    leaveOneOutRmse: leaveOneOutRmse(line, rows),
    chosen,
    line,
  };
}
