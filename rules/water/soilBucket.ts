import { expectRange } from '../expectRange.ts';

/** A day's water, mm. null where it was not known. */
export type WaterDay = {
  readonly rain: number | null;
  readonly irrigation?: number | null | undefined;
  /** What the crop used: Kc x reference evapotranspiration. */
  readonly use: number | null;
};

export type BucketDay = {
  /** mm short of field capacity at the end of the day. */
  readonly depletion: number | null;
  /** mm that ran through. */
  readonly drained: number | null;
  /** Whether it is time to water: as much is gone as the crop can do without. */
  readonly water: boolean | null;
};

/**
 * The soil as a bucket, day by day: depletion grows with what the crop uses and falls with rain and
 * irrigation; below nothing the rest drains, and beyond all the available water nothing more can be
 * drawn. From the first day that is not known on nothing is known, until the bucket is started anew
 * from a probe or a soaking.
 *
 * Source: FAO-56 eq. 85 to 87 (Allen, Pereira, Raes & Smith 1998), without run-off and rise from
 * below.
 * @param start mm short of field capacity before the first day; 0 after a soaking
 * @param soil from availableWater
 * @throws RangeError for water outside 0..500 mm, or a start beyond the available water
 */
export function soilBucket(
  start: number | null,
  days: readonly WaterDay[],
  soil: { readonly total: number; readonly ready: number },
): readonly BucketDay[] {
  const { total, ready } = soil;
  expectRange('available water', total, 0, 2400, 'mm');
  expectRange('readily available water', ready, 0, total, 'mm');
  if (start !== null) expectRange('depletion', start, 0, total, 'mm');
  let depletion = start;
  return days.map(({ rain, irrigation = 0, use }) => {
    if (rain !== null) expectRange('rain', rain, 0, 500, 'mm');
    if (irrigation !== null) expectRange('irrigation', irrigation, 0, 500, 'mm');
    if (use !== null) expectRange('water used', use, 0, 50, 'mm');
    if (depletion === null || rain === null || irrigation === null || use === null) {
      depletion = null;
      return { depletion, drained: null, water: null };
    }
    const left = depletion - rain - irrigation + use;
    depletion = Math.min(total, Math.max(0, left));
    return { depletion, drained: Math.max(0, -left), water: depletion >= ready };
  });
}
