// Straight-line least squares on a few predictors, in deviations from their means, where the sums
// stay small.

export type Row = { readonly x: readonly number[]; readonly y: number };

export type Line = {
  readonly n: number;
  /** Degrees of freedom left for the residuals. */
  readonly df: number;
  readonly intercept: number;
  readonly slopes: readonly number[];
  readonly means: readonly number[];
  /** Inverse of the sums of squares and products of deviations, by rows. */
  readonly inverse: readonly (readonly number[])[];
};

const AS_GOOD_AS_FLAT = 1e-9; // relative; predictors that differ by less carry no information

/** null when the predictors do not vary, or vary together, so that no line is determined. */
export function fitLine(rows: readonly Row[], predictors: number): Line | null {
  const n = rows.length;
  const means = Array.from({ length: predictors }, (_, j) =>
    meanOf(rows.map(({ x }) => x[j] ?? 0)),
  );
  const meanY = meanOf(rows.map(({ y }) => y));
  const inverse = invert(means.map((_, j) => means.map((_, k) => products(rows, means, j, k))));
  if (inverse === null) return null;
  const withY = means.map((mean, j) =>
    rows.reduce((sum, { x, y }) => sum + ((x[j] ?? 0) - mean) * (y - meanY), 0),
  );
  const slopes = inverse.map((row) => row.reduce((sum, v, k) => sum + v * (withY[k] ?? 0), 0));
  const intercept = slopes.reduce((sum, slope, j) => sum - slope * (means[j] ?? 0), meanY);
  return { n, df: n - predictors - 1, intercept, slopes, means, inverse };
}

/** The line's value at `x`. */
export const valueAt = (line: Pick<Line, 'intercept' | 'slopes'>, x: readonly number[]): number =>
  line.slopes.reduce((sum, slope, j) => sum + slope * (x[j] ?? 0), line.intercept);

/** Leverage x'(X'X)^-1 x, the intercept included. */
export function leverageAt(line: Line, x: readonly number[]): number {
  const away = line.means.map((mean, j) => (x[j] ?? 0) - mean);
  return line.inverse.reduce(
    (sum, row, j) => sum + (away[j] ?? 0) * row.reduce((s, v, k) => s + v * (away[k] ?? 0), 0),
    1 / line.n,
  );
}

/** Residual standard deviation, divisor n - k. */
export function residualSd(line: Line, rows: readonly Row[]): number {
  const squares = rows.reduce((sum, { x, y }) => sum + (y - valueAt(line, x)) ** 2, 0);
  return Math.sqrt(squares / line.df);
}

/**
 * Root mean square error of predicting each row from the others. Least squares needs no refit for
 * it: the residual over one less its leverage.
 */
export function leaveOneOutRmse(line: Line, rows: readonly Row[]): number {
  const squares = rows.reduce((sum, { x, y }) => {
    const alone = 1 - leverageAt(line, x);
    return sum + ((y - valueAt(line, x)) / alone) ** 2;
  }, 0);
  return Math.sqrt(squares / rows.length);
}

const meanOf = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

const products = (rows: readonly Row[], means: readonly number[], j: number, k: number) =>
  rows.reduce(
    (sum, { x }) => sum + ((x[j] ?? 0) - (means[j] ?? 0)) * ((x[k] ?? 0) - (means[k] ?? 0)),
    0,
  );

function invert(matrix: readonly (readonly number[])[]): number[][] | null {
  if (matrix.length === 0) return [];
  const [[a = 0, b = 0] = [], [, d = 0] = []] = matrix;
  if (matrix.length === 1) return a < AS_GOOD_AS_FLAT ? null : [[1 / a]];
  if (matrix.length > 2) return eliminated(matrix);
  const determinant = a * d - b * b;
  if (!(determinant > AS_GOOD_AS_FLAT * a * d)) return null;
  return [
    [d / determinant, -b / determinant],
    [-b / determinant, a / determinant],
  ];
}

/** Gauss-Jordan without exchanging rows: sums of squares and products are positive definite. */
function eliminated(matrix: readonly (readonly number[])[]): number[][] | null {
  const size = matrix.length;
  const rows = matrix.map((row, j) => [...row, ...row.map((_, k) => (j === k ? 1 : 0))]);
  for (let j = 0; j < size; j++) {
    const row = rows[j] ?? [];
    const pivot = row[j] ?? 0;
    // What is left of this predictor's own spread once those before it have been taken out.
    if (!(pivot > AS_GOOD_AS_FLAT * (matrix[j]?.[j] ?? 0))) return null;
    for (let k = 0; k < 2 * size; k++) row[k] = (row[k] ?? 0) / pivot;
    for (const other of rows) {
      const share = other[j] ?? 0;
      if (other === row || share === 0) continue;
      for (let k = 0; k < 2 * size; k++) other[k] = (other[k] ?? 0) - share * (row[k] ?? 0);
    }
  }
  return rows.map((row) => row.slice(size));
}
