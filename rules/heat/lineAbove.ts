// Two facts about a straight line from `start` to `end` over one unit of time. Clipping only the
// two ends would misstate every line that crosses the threshold on its way.

/** Share of the time, 0..1, that the line is above `threshold`; at it does not count. */
export function timeAboveLine(start: number, end: number, threshold: number): number {
  if (start > threshold && end > threshold) return 1;
  if (start <= threshold && end <= threshold) return 0;
  const top = Math.max(start, end);
  return (top - threshold) / Math.abs(end - start);
}

/** Mean height of the line above `threshold`, counting nothing where it is below. */
export function meanAboveLine(start: number, end: number, threshold: number): number {
  if (start >= threshold && end >= threshold) return (start + end) / 2 - threshold;
  if (start <= threshold && end <= threshold) return 0;
  const top = Math.max(start, end) - threshold;
  return (top * top) / (2 * Math.abs(end - start));
}
