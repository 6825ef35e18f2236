/** A temperature below which a crop is hurt, °C, of its tissue. */
export type DamageLimit = {
  readonly crop: string;
  readonly stage: string;
  readonly kind: 'frost' | 'chilling';
  /** The one to go by. */
  readonly critical: number;
  /** Coldest and warmest in the sources, which differ. */
  readonly range: readonly [number, number];
  readonly source: string;
};

const BLOSSOM =
  'extension tables (Delaware, North Carolina, Indiana), which differ; first credit Perry & Poling 1985, Funt et al. (from memory)';
const SPRING = 'frost-resistance table, PMC10202904';

/**
 * Critical temperatures of the crops. They are of the tissue, which on a clear night runs colder
 * than the air: alarmAt adds the margin. Own records of damage replace them.
 */
export const damageLimits: readonly DamageLimit[] = [
  limit('strawberry', 'tight-bud', -5.5, [-5.6, -2.8], BLOSSOM),
  limit('strawberry', 'balloon', -2.2, [-3.3, -2.2], BLOSSOM),
  limit('strawberry', 'open-flower', -1.1, [-1.1, -0.6], `${BLOSSOM}; heavy loss by -2.2`),
  limit('strawberry', 'green-fruit', -2.2, [-3.3, -2.2], BLOSSOM),
  limit(
    'strawberry',
    'late-autumn-flower',
    -3.1,
    [-3.1, -2.6],
    'everbearers, about 2 K hardier by late autumn: Boyce (abstract), from the open flower',
  ),
  limit('strawberry', 'dormant-crown', -12.5, [-12.5, -12.5], 'half killed: Boyce, cv. Catskill'),
  limit(
    'strawberry',
    'flower-bud-in-crown',
    -6.7,
    [-6.7, -6.7],
    'by how far it has hardened: Penn State 2015',
  ),
  limit('strawberry', 'plant', -8.9, [-8.9, -8.9], 'by how far it has hardened: Penn State 2015'),
  {
    ...limit(
      'basil',
      'plant',
      12,
      [12, 12],
      'in store, Lange & Cameron 1994, Michigan State note; the same in a tunnel: no source',
    ),
    kind: 'chilling',
  },
  {
    ...limit('eggplant', 'fruit', 10, [10, 10], 'Fallik et al. 1995; the plant stops near 11-12'),
    kind: 'chilling',
  },
  limit('lettuce', 'spring', -2, [-4, -2], SPRING),
  limit('lettuce', 'winter', -4, [-7, -4], SPRING),
  limit('pea', 'spring', -2, [-4, -2], SPRING),
  limit('radish', 'seedling', -2, [-4, -2], 'common practice, no source'),
  limit('brassica', 'seedling', -2, [-4, -2], 'common practice, no source'),
];

function limit(
  crop: string,
  stage: string,
  critical: number,
  range: readonly [number, number],
  source: string,
): DamageLimit {
  return { crop, stage, kind: 'frost', critical, range, source };
}

/** null for what is not in the table. */
export const damageLimit = (crop: string, stage: string): DamageLimit | null =>
  damageLimits.find((each) => each.crop === crop && each.stage === stage) ?? null;
