import { startingBases } from '../../rules/heat/index.ts';

type Figure<Value> = { readonly value: Value; readonly source: string };

/** What is known of a crop before its grower has told anything; each figure with who says it. */
export type StarterCrop = {
  readonly id: string;
  readonly base: Figure<number>;
  /** °C, from and to. */
  readonly band: Figure<readonly [number, number]>;
  readonly heatLimit: Figure<number>;
  readonly chill?: Figure<number>;
  /** From sowing to the cut, fewest and most; none for what is not sown in trays. */
  readonly days?: Figure<readonly [number, number]>;
  /** Work on a tray and a kilogram, min: as `minutes` of a crop in the farm file. */
  readonly minutes?: Figure<Minutes>;
  readonly disease: readonly string[];
};
type Minutes = Readonly<Record<'sow' | 'tend' | 'cut' | 'pack' | 'move', number>>;

const PRACTICE = 'common practice, no source';
// Best range and "do not exceed", converted from °F.
const JETT = 'Jett 2010, High Tunnel Temperature Management, West Virginia University';
// Read as a rule of storage; the same in the tunnel is common practice.
const LANGE = 'leaves are hurt in store below 12 °C, Lange & Cameron 1994, HortScience 29:102';

// Round figures of one pair of hands at a bench, with scissors.
const HANDS = 'ours, from no source: put your own as soon as you have timed them';
const TRAY: Minutes = { sow: 4, tend: 3, cut: 4, pack: 6, move: 1 };

const from = <Value>(value: Value, source: string): Figure<Value> => ({ value, source });

const climates: Readonly<Record<string, Omit<StarterCrop, 'id' | 'base'>>> = {
  basil: {
    band: from([21, 29], PRACTICE),
    heatLimit: from(33, PRACTICE),
    chill: from(12, LANGE),
    days: from([28, 49], PRACTICE),
    minutes: from(TRAY, HANDS),
    disease: ['grey-mould', 'basil-downy-mildew'],
  },
  'pea-shoots': {
    band: from([15, 20], PRACTICE),
    heatLimit: from(26, PRACTICE),
    days: from([10, 21], PRACTICE),
    minutes: from(TRAY, HANDS),
    disease: [],
  },
  radish: {
    band: from([15, 20], PRACTICE),
    heatLimit: from(26, PRACTICE),
    days: from([7, 16], PRACTICE),
    minutes: from(TRAY, HANDS),
    disease: [],
  },
  'brassica-microgreens': {
    band: from([15, 20], PRACTICE),
    heatLimit: from(26, PRACTICE),
    days: from([8, 18], PRACTICE),
    minutes: from(TRAY, HANDS),
    disease: ['brassica-downy-mildew'],
  },
  lettuce: {
    band: from([16, 18], JETT),
    heatLimit: from(24, JETT),
    days: from([25, 50], PRACTICE),
    minutes: from(TRAY, HANDS),
    disease: ['lettuce-downy-mildew'],
  },
  strawberry: { band: from([18, 24], JETT), heatLimit: from(24, JETT), disease: ['grey-mould'] },
  eggplant: {
    band: from([21, 29], JETT),
    heatLimit: from(35, JETT),
    chill: from(10, PRACTICE),
    disease: [],
  },
};

/** Crops to begin with; price and yield are the grower's own. */
export const starterCrops: readonly StarterCrop[] = Object.entries(climates).flatMap(
  ([id, climate]) => {
    const known = startingBases.find(({ crop }) => crop === id);
    return known ? [{ id, base: from(known.lower, known.source), ...climate }] : [];
  },
);
