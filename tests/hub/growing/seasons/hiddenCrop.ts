// A crop as nature grows it in the trial: by no degree-days and no base. The hub is told none of this.

/** Invented figures, near what is said of basil, lettuce and pea shoots. */
export type HiddenCrop = {
  readonly id: string;
  /** °C at which growth begins, is fastest, and ends. */
  readonly least: number;
  readonly best: number;
  readonly most: number;
  /** Daily light at which growth is half of what it could be, mol m⁻² d⁻¹. */
  readonly halfLight: number;
  /** Days from sowing to ready at the best temperature in plenty of light. */
  readonly days: number;
  /** Standard deviation of the days between batches, as a share: seed, water, hands. */
  readonly unlike: number;
  /** Days of the year from and until which it is sown. */
  readonly season: readonly [number, number];
  /** As the grower would tell it at the first sowing. */
  readonly told: readonly [number, number];
};

export const hiddenCrops: readonly HiddenCrop[] = [
  {
    ...{ id: 'basil', least: 10, best: 29, most: 42, halfLight: 5, days: 17 },
    ...{ unlike: 0.05, season: [115, 215], told: [28, 50] },
  },
  {
    ...{ id: 'lettuce', least: 2, best: 25, most: 35, halfLight: 4, days: 17 },
    ...{ unlike: 0.05, season: [60, 235], told: [25, 45] },
  },
  {
    ...{ id: 'pea-shoots', least: 3, best: 26, most: 36, halfLight: 2, days: 9 },
    ...{ unlike: 0.06, season: [55, 260], told: [12, 24] },
  },
];

/**
 * Share of the fastest growth at a temperature: beta function of Yin, Kropff, McLaren & Visperas
 * 1995, Agric. For. Meteorol. 77:1 (from memory), its shape parameter 1.
 */
export function growthAt({ least, best, most }: HiddenCrop, temperature: number): number {
  if (temperature <= least || temperature >= most) return 0;
  const rises = (temperature - least) / (best - least);
  const falls = (most - temperature) / (most - best);
  return rises * falls ** ((most - best) / (best - least));
}

/** The light term: a saturating curve of the day's light (Michaelis and Menten's form). */
export const lightShare = ({ halfLight }: HiddenCrop, light: number): number =>
  light / (light + halfLight);
