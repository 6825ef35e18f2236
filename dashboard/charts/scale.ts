/** A straight scale from `domain` to `range`; a domain without width maps to the middle. */
export function scale(
  [from, to]: readonly [number, number],
  [start, end]: readonly [number, number],
): (value: number) => number {
  if (to === from) return () => (start + end) / 2;
  return (value) => start + ((value - from) / (to - from)) * (end - start);
}

/** Round values inside `from`..`to`, in steps of 1, 2 or 5 times a power of ten, about `wanted` of them. */
export function ticks(from: number, to: number, wanted: number): number[] {
  if (!(to > from) || wanted < 1) return [];
  const rough = (to - from) / wanted;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((times) => times * power).find((size) => size >= rough) ?? rough;
  const found: number[] = [];
  // Counted in whole steps, so that 0.1 + 0.2 never shows as 0.30000000000000004.
  for (let i = Math.ceil(from / step - 1e-9); i * step <= to + step * 1e-9; i += 1) {
    found.push(Number((i * step).toPrecision(12)) || 0);
  }
  return found;
}

/** The lowest and highest of the known values, widened by `margin`; null when nothing is known. */
export function extent(
  values: readonly (number | null)[],
  margin: number,
): readonly [number, number] | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value === null) continue;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return low <= high ? [low - margin, high + margin] : null;
}
