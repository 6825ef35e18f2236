/** Where to count a crop's heat units from until its own sowings tell, °C. */
export type StartingBase = {
  readonly crop: string;
  /** Base to start with. */
  readonly lower: number;
  /** Lowest and highest base in the sources; their spread is real. */
  readonly lowerRange: readonly [number, number];
  /** Upper threshold, horizontal cut-off. */
  readonly upper: number;
  readonly source: string;
};

/**
 * Starting values only: own sowings replace them (acceptedBase). Up to emergence count on the
 * temperature of the growing medium, afterwards on that of the air at crop height. "No source"
 * is common practice.
 */
export const startingBases: readonly StartingBase[] = [
  {
    crop: 'lettuce',
    lower: 3,
    lowerRange: [0, 4],
    upper: 24,
    source:
      'sowing to maturity of crisp lettuce on a scale above 0 °C, crops of 1980-82, J. Agric. Sci. Camb.; 4 and the upper limit: no source',
  },
  {
    crop: 'strawberry',
    lower: 3,
    lowerRange: [2.4, 2.9],
    upper: 25,
    source:
      'planting to first ripe: 891 °C d above 2.9 (waiting bed), 831 above 2.4 (cold-stored), Le Mière et al. 1998, J. Hort. Sci. Biotech. 73:786; upper: no source',
  },
  {
    crop: 'eggplant',
    lower: 11,
    lowerRange: [11, 12],
    upper: 32,
    source: 'growth halts near 11-12 °C, León Pacheco et al. 2019 (review); upper: no source',
  },
  {
    crop: 'basil',
    lower: 11,
    lowerRange: [10.9, 10.9],
    upper: 30,
    source:
      'controlled temperatures, about 10.9 °C (from memory); best at 25 °C, Chang et al. 2005; upper: no source',
  },
  {
    crop: 'pea-shoots',
    lower: 3,
    lowerRange: [0, 4.5],
    upper: 28,
    source:
      '3/28/40 °C, Olivier & Annandale 1998, Field Crops Res. 56:301; 4.5 for nodes, Wilson & Robson 1996; 0-0.8 to maturity, Bourgeois et al. 2000, HortScience 35',
  },
  {
    crop: 'radish',
    lower: 4,
    lowerRange: [4, 4],
    upper: 25,
    source: 'lower: no source; leaves grow best at 23 °C, Nieuwhof 1976, Sci. Hort. 5:111',
  },
  {
    crop: 'brassica-microgreens',
    lower: 2,
    lowerRange: [0, 4.1],
    upper: 28,
    source:
      'broccoli 0 °C, best at 20, Tan et al. 2000, Sci. Hort. 84; rapeseed germination 1.4 to 4.1, Luo et al.; upper: no source',
  },
];

/** null for a crop that is not in the table. */
export const startingBase = (crop: string): StartingBase | null =>
  startingBases.find((each) => each.crop === crop) ?? null;
