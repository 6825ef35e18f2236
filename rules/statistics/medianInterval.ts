/**
 * The usual step of a series: the median time between neighbouring readings, in ms.
 * null when there are fewer than two readings, as one alone has no step.
 */
export function medianInterval(readings: readonly { readonly t: number }[]): number | null {
  if (readings.length < 2) return null;
  const steps = new Float64Array(readings.length - 1);
  let index = 0;
  let before: number | null = null;
  for (const { t } of readings) {
    if (before !== null) {
      steps[index] = t - before;
      index += 1;
    }
    before = t;
  }
  steps.sort();
  const middle = (steps.length - 1) / 2;
  return ((steps[Math.floor(middle)] ?? 0) + (steps[Math.ceil(middle)] ?? 0)) / 2;
}
