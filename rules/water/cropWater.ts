/** What a crop's water balance needs. */
export type CropWater = {
  readonly crop: string;
  /** Crop coefficients Kc: while it is small, in full leaf, at its end. */
  readonly kc: { readonly initial: number; readonly mid: number; readonly end: number };
  /** Share p of the available water that it takes without suffering. */
  readonly depletable: number;
  /** Depth of the roots, m. */
  readonly rootDepth: number;
};

/**
 * Kc of lettuce, radish and eggplant: FAO-56 table 12, through a secondary copy. Strawberry, and
 * all depletable shares and root depths (FAO-56 table 22): from memory. The farm's own soil and
 * beds decide; a moisture probe is better.
 */
export const cropWaters: readonly CropWater[] = [
  { crop: 'lettuce', kc: { initial: 0.7, mid: 1, end: 0.95 }, depletable: 0.3, rootDepth: 0.3 },
  { crop: 'radish', kc: { initial: 0.7, mid: 0.9, end: 0.85 }, depletable: 0.3, rootDepth: 0.3 },
  { crop: 'eggplant', kc: { initial: 0.6, mid: 1.05, end: 0.9 }, depletable: 0.45, rootDepth: 0.7 },
  {
    crop: 'strawberry',
    kc: { initial: 0.4, mid: 0.85, end: 0.75 },
    depletable: 0.2,
    rootDepth: 0.25,
  },
];

/** null for a crop that is not in the table. */
export const cropWater = (crop: string): CropWater | null =>
  cropWaters.find((each) => each.crop === crop) ?? null;
