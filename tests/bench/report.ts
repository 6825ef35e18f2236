// How a figure is told: one line `name value unit` on stdout and nothing else there, so that two
// runs can be compared line by line. What is for people to read while they wait goes to stderr.

/** Three significant digits: a benchmark on a shared machine knows no more. */
const shown = (value: number) =>
  Math.abs(value) >= 1000 ? String(Math.round(value)) : String(Number(value.toPrecision(3)));

export const figure = (name: string, value: number, unit: string) =>
  process.stdout.write(`${name} ${shown(value)} ${unit}\n`);

export const remark = (sentence: string) => process.stderr.write(`  ${sentence}\n`);

/** The value that a share `at` of all values do not exceed. @throws Error for no values. */
export function quantile(values: readonly number[], at: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const value = sorted[Math.min(sorted.length - 1, Math.floor(at * sorted.length))];
  if (value === undefined) throw new Error('Expected at least one value, got none');
  return value;
}
export const middle = (values: readonly number[]) => quantile(values, 0.5);

/** How long `work` takes, ms. */
export function timed(work: () => unknown): number {
  const begin = performance.now();
  work();
  return performance.now() - begin;
}
