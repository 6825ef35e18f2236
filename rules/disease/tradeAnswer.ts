/** What the weather or a look has brought up. */
export type Situation =
  | 'wet-and-outside-drier'
  | 'wet-and-outside-not-drier'
  | 'sporulation-night-infected-basil'
  | 'basil-infection'
  | 'strawberry-flower-infection'
  | 'ripe-fruit-and-wet-ahead'
  | 'salad-downy-mildew'
  | 'grey-mould-week'
  | 'tray-damp'
  | 'canopy-wet-mornings'
  | 'chill-ahead'
  | 'class-unknown';

/** One thing the trade does, as a term for hub/words, and between which hours from now. */
export type TradeStep = {
  readonly does: string;
  readonly kind: 'air' | 'move' | 'pick' | 'clear-out' | 'clean' | 'look';
  /** Hours from now; null for no end. */
  readonly from: number;
  readonly until: number | null;
};

export type TradeAnswer = {
  readonly steps: readonly TradeStep[];
  /** Terms of the cautions that go with it. */
  readonly cautions: readonly string[];
};

const D = 24; // h in a day
const step = (
  kind: TradeStep['kind'],
  does: string,
  from = 0,
  until: number | null = D,
): TradeStep => ({ kind, does, from, until });

// Said with every answer: the index knows the weather and nothing else.
const ALWAYS = ['weather-suited-infection-only', 'no-event-is-no-clean-bill'];
// Said with each removal of plants, and of food.
const REMOVING = [
  'last-job-of-the-day',
  'bag-at-the-plant',
  'wash-hands-and-knife',
  'not-on-the-open-heap',
];
const FOOD = ['mould-is-never-trimmed-for-sale', 'in-doubt-throw-out'];
/** Wherever somebody might think of a treatment: we name none, and the label is the law. */
export const SPRAY_CAUTIONS: readonly string[] = Object.freeze([
  'registered-for-this-crop-and-site',
  'label-harvest-interval-and-re-entry',
  'licence-or-certificate-held',
  'certifier-content',
  'label-is-the-law',
]);

// Common practice, no source, all of it.
const answers: Readonly<Record<Situation, TradeAnswer>> = {
  'wet-and-outside-drier': {
    steps: [step('air', 'vent-now', 0, 0.5), step('look', 'check-again', 0.5, 1)],
    cautions: ALWAYS,
  },
  'wet-and-outside-not-drier': {
    steps: [
      step('air', 'move-air'),
      step('clear-out', 'thin'),
      step('air', 'stop-watering-from-above'),
      step('air', 'do-not-open'),
    ],
    cautions: [...ALWAYS, ...REMOVING],
  },
  'sporulation-night-infected-basil': {
    steps: [
      step('clear-out', 'bag-infected-where-they-stand', 0, 12),
      step('air', 'fan-at-night', 0, D),
    ],
    cautions: [
      ...ALWAYS,
      ...REMOVING,
      ...FOOD,
      'do-not-brush-through-wet-leaves',
      ...SPRAY_CAUTIONS,
    ],
  },
  'basil-infection': {
    steps: [
      step('look', 'look-under-leaves', 5 * D, 10 * D),
      step('pick', 'cut-and-sell-sound-leaf-first', 0, 5 * D),
      step('move', 'clean-trays-to-airiest-place'),
    ],
    cautions: [...ALWAYS, ...FOOD, ...SPRAY_CAUTIONS],
  },
  'strawberry-flower-infection': {
    steps: [
      step('clean', 'strip-old-flowers-and-rotten-fruit', 0, 2 * D),
      step('air', 'open-the-canopy', 0, 2 * D),
      step('look', 'watch-berries-set-this-week', 28 * D, 35 * D),
    ],
    cautions: [...ALWAYS, ...REMOVING, ...FOOD, ...SPRAY_CAUTIONS],
  },
  'ripe-fruit-and-wet-ahead': {
    steps: [
      step('pick', 'pick-now', 0, 12),
      step('pick', 'cool-at-once', 0, 12),
      step('pick', 'sell-first-grade-hard', 0, 2 * D),
    ],
    cautions: [...ALWAYS, ...FOOD, 'harvest-interval-passed'],
  },
  'salad-downy-mildew': {
    steps: [
      step('pick', 'cut-oldest-bed-first', 0, 3 * D),
      step('air', 'no-watering-at-night', 0, 7 * D),
      step('clean', 'no-replanting-next-to-it', 0, null),
      step('look', 'look-under-leaves', 5 * D, 14 * D),
    ],
    cautions: [...ALWAYS, ...REMOVING, ...FOOD, ...SPRAY_CAUTIONS],
  },
  'grey-mould-week': {
    steps: [
      step('clean', 'clear-dead-petals-and-leaves', 0, 2 * D),
      step('move', 'widen-spacing', 0, 3 * D),
      step('air', 'leave-vents-cracked-if-night-allows', 0, 7 * D),
    ],
    cautions: [...ALWAYS, ...REMOVING, ...SPRAY_CAUTIONS],
  },
  'tray-damp': {
    steps: [
      step('air', 'uncover-trays', 0, 2),
      step('move', 'thin-the-stack', 0, 12),
      step('air', 'water-from-below'),
      step('air', 'fan-across-trays'),
      step('clear-out', 'mouldy-tray-out-whole', 0, 2),
    ],
    cautions: [...ALWAYS, ...REMOVING, ...FOOD],
  },
  'canopy-wet-mornings': {
    steps: [step('clear-out', 'cut-back-on-a-drying-morning', 0, 3 * D)],
    cautions: [...ALWAYS, ...REMOVING],
  },
  'chill-ahead': {
    steps: [
      step('move', 'cover-or-move-before-dusk', 0, 12),
      step('air', 'uncover-when-above-the-floor', 12, D),
    ],
    cautions: [],
  },
  'class-unknown': { steps: [step('look', 'look-by-eye')], cautions: ALWAYS },
};

/** What the trade does about a situation: steps in their windows, and the cautions to print. */
export function tradeAnswer(situation: Situation): TradeAnswer {
  const answer = answers[situation];
  if (answer === undefined) {
    throw new RangeError(`Expected one of ${Object.keys(answers).join(', ')}, got ${situation}`);
  }
  return answer;
}
