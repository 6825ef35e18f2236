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
  readonly disease: readonly string[];
};

const PRACTICE = 'common practice, no source';
// Best range and "do not exceed", converted from °F.
const JETT = 'Jett 2010, High Tunnel Temperature Management, West Virginia University';
// Read as a rule of storage; the same in the tunnel is common practice.
const LANGE = 'leaves are hurt in store below 12 °C, Lange & Cameron 1994, HortScience 29:102';

const from = <Value>(value: Value, source: string): Figure<Value> => ({ value, source });

const climates: Readonly<Record<string, Omit<StarterCrop, 'id' | 'base'>>> = {
  basil: {
    band: from([21, 29], PRACTICE),
    heatLimit: from(33, PRACTICE),
    chill: from(12, LANGE),
    disease: ['grey-mould', 'basil-downy-mildew'],
  },
  'pea-shoots': { band: from([15, 20], PRACTICE), heatLimit: from(26, PRACTICE), disease: [] },
  radish: { band: from([15, 20], PRACTICE), heatLimit: from(26, PRACTICE), disease: [] },
  'brassica-microgreens': {
    band: from([15, 20], PRACTICE),
    heatLimit: from(26, PRACTICE),
    disease: ['brassica-downy-mildew'],
  },
  lettuce: {
    band: from([16, 18], JETT),
    heatLimit: from(24, JETT),
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
