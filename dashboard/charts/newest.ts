import type { Strip } from '../../hub/contract/index.ts';

/** The newest known temperature of a strip; `current` is false when a gap has followed it. */
export function newest({
  t,
  temperature,
}: Pick<Strip, 't' | 'temperature'>): { t: number; value: number; current: boolean } | null {
  const at = temperature.findLastIndex((value) => value !== null);
  const value = temperature[at] ?? null;
  const when = t[at];
  if (value === null || when === undefined) return null;
  return { t: when, value, current: at === temperature.length - 1 };
}
