import type { CropFacts } from './cropFacts.ts';
import type { PlanSowing } from './planTypes.ts';

/** Minutes to sow, and money for seed; null where nobody told. */
export const sowingCost = (
  crop: Pick<CropFacts, 'sowMinutes' | 'seed'>,
  { trays }: Pick<PlanSowing, 'trays'>,
): { readonly minutes: number | null; readonly seed: number | null } => ({
  minutes: crop.sowMinutes === null ? null : crop.sowMinutes * trays,
  seed: crop.seed === null ? null : crop.seed * trays,
});
