// Paths for SVG's `d`. A missing value breaks a line: a gap is a hole, never joined.

const fixed = (value: number) => Number(value.toFixed(1));

/** A line through the known points. A lone point becomes a dot (with a round line cap). */
export function linePath(
  t: readonly number[],
  values: readonly (number | null)[],
  x: (t: number) => number,
  y: (value: number) => number,
): string {
  let path = '';
  let length = 0; // points drawn since the last gap
  for (const [i, at] of t.entries()) {
    const value = values[i] ?? null;
    if (value === null) {
      if (length === 1) path += 'h0';
      length = 0;
      continue;
    }
    path += `${length === 0 ? 'M' : 'L'}${fixed(x(at))} ${fixed(y(value))}`;
    length += 1;
  }
  return length === 1 ? `${path}h0` : path;
}

/** The area between the low and the high of each point, closed. */
export function fanPath(
  fan: readonly { readonly t: number; readonly low: number; readonly high: number }[],
  x: (t: number) => number,
  y: (value: number) => number,
): string {
  if (fan.length < 2) return '';
  const along = fan.map(({ t, high }) => `${fixed(x(t))} ${fixed(y(high))}`);
  const back = fan.map(({ t, low }) => `${fixed(x(t))} ${fixed(y(low))}`).reverse();
  return `M${[...along, ...back].join('L')}Z`;
}

/** The part of `from`..`to` that lies in the window; null when none does. */
export function clip(
  span: { readonly from: number; readonly to: number },
  window: { readonly from: number; readonly to: number },
): { from: number; to: number } | null {
  const from = Math.max(span.from, window.from);
  const to = Math.min(span.to, window.to);
  return to > from ? { from, to } : null;
}
