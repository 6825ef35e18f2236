import {
  fitNightLow,
  type NightLowModel,
  plausibleNights,
  predictNightLow,
} from '../frost/index.ts';
import type { Beforehand } from './lowBeforehand.ts';
import type { NightRecord, Predictor } from './snapshot.ts';

// FAO 2005 wants ten or more own nights before its regression is used.
export const NIGHTS_TO_FIT = 10;
const LEAST_SPREAD = 0.5; // K, ours: two quiet weeks do not make the next night certain

export type Kind = 'evening' | 'afternoon';

// Past nights change once a day, looks come every five minutes: the same list is fitted once.
const fitted = new WeakMap<readonly NightRecord[], Partial<Record<Kind, NightLowModel | null>>>();

/**
 * The line through past nights: their lows on what was read at that hour, the dew point only where
 * it helps. Nights without that reading, or whose low a gap hides, do not teach; nor do the few
 * that no weather explains (plausibleNights). null for fewer than ten.
 */
export function nightModel(nights: readonly NightRecord[], kind: Kind): NightLowModel | null {
  const models = fitted.get(nights) ?? {};
  fitted.set(nights, models);
  const made = models[kind];
  if (made !== undefined) return made;
  const known = nights.flatMap((night) => {
    const predictor = night[kind];
    return predictor === null || night.low === null ? [] : [{ ...predictor, low: night.low }];
  });
  const taught = plausibleNights(known, ({ temperature, low }) => ({ x: [temperature], y: low }));
  const model = known.length < NIGHTS_TO_FIT ? null : fitNightLow(taught);
  models[kind] = model;
  return model;
}

export function regression(
  nights: readonly NightRecord[],
  kind: Kind,
  today: Predictor,
): Beforehand | null {
  const model = nightModel(nights, kind);
  if (model === null) return null;
  const low = predictNightLow(model, today);
  return {
    low: { mean: low.mean, sd: Math.max(low.sd, LEAST_SPREAD), df: low.df },
    method: kind,
    nightsLearned: model.n,
    error: model.leaveOneOutRmse,
  };
}
