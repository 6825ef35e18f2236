/**
 * Heights for labels that want to stand at `wanted` but need `apart` between them, within
 * `from`..`to`: in their own order, moved as little as going down and back up once does.
 */
export function spread(
  wanted: readonly number[],
  apart: number,
  [from, to]: readonly [number, number],
): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0));
  const placed = [...wanted];
  let above = from - apart;
  for (const i of order) {
    above = Math.max(placed[i] ?? 0, above + apart);
    placed[i] = above;
  }
  let below = to + apart;
  for (const i of order.reverse()) {
    below = Math.min(placed[i] ?? 0, below - apart);
    placed[i] = below;
  }
  return placed;
}
