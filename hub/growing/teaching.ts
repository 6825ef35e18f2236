import { type FoundReady, lightTerm } from '../../rules/batches/index.ts';
import { meanOf } from '../../rules/statistics/index.ts';
import type { CutStage } from '../batches/index.ts';
import type { PastBatch } from './pastBatches.ts';

/** From so many noted ready on, those that were only cut, perhaps long after, teach no more. Ours: it
 *  is where a spread of their own begins. */
const ENOUGH_NOTED = 3;
/** From so many of one variety on, the other varieties teach no more. Ours, for the same. */
const ENOUGH_ALIKE = 3;
/** The newest tell most of how the farm works now. Ours. */
const NEWEST = 40;

/** Light of a batch over all its days, those to come as its dates usually bring it: by its probe, and
 *  by the sun's path alone, mol m⁻² d⁻¹. */
export type BatchLight = { readonly measured: number | null; readonly usual: number };

/** What past batches teach of the next one's need. */
export type Lesson = {
  readonly found: readonly FoundReady[];
  /** By when somebody noted them ready, or some of them only by when they were cut. */
  readonly counted: 'noted' | 'cut';
  /** Of this variety alone. */
  readonly alike: boolean;
  /** Whether the need is told apart by light, and by whose; null where it shows no difference. */
  readonly byLight: 'probe' | 'date' | null;
};

/**
 * Past batches that teach of a stage, trays of one sowing taken together; freed of light where it
 * shows, and brought to the light of this batch.
 * The light is the probes' where they lit all these batches, else that which the dates usually bring.
 */
export function lessonOf(
  past: readonly PastBatch[],
  stage: CutStage,
  variety: string | null,
  light: BatchLight,
): Lesson | null {
  const known = past.filter((one) => one.stage === stage && one.degreeDays !== null);
  const own = known.filter((one) => one.variety === variety);
  const alike = own.length >= ENOUGH_ALIKE && own.length < known.length;
  const kind = alike ? own : known;
  const noted = kind.filter(({ seen }) => seen === 'noted');
  const taken = noted.length >= ENOUGH_NOTED ? noted : kind;
  const sowings = bySowing(taken).slice(-NEWEST);
  if (sowings.length === 0) return null;
  const counted = taken.every(({ seen }) => seen === 'noted') ? 'noted' : 'cut';
  const probes = light.measured !== null && sowings.every((one) => one.light !== null);
  const lightOf = (one: (typeof sowings)[number]) => (probes ? (one.light ?? 0) : one.usualLight);
  const here = probes ? (light.measured ?? 0) : light.usual;
  const term = lightTerm(
    sowings.map((one) => ({ degreeDays: one.degreeDays, light: lightOf(one) })),
  );
  const toLight = (one: (typeof sowings)[number]): FoundReady => {
    const units = one.degreeDays + (term?.slope ?? 0) * (here - lightOf(one));
    return { degreeDays: Math.max(1, units), lastDay: one.lastDay };
  };
  const byLight = term === null ? null : probes ? ('probe' as const) : ('date' as const);
  return { found: sowings.map(toLight), counted, alike, byLight };
}

/** Parts of one sowing teach as one, by their mean: they are no batches apart. */
function bySowing(past: readonly PastBatch[]) {
  const roots = new Map<string, PastBatch[]>();
  for (const one of past) roots.set(one.root, [...(roots.get(one.root) ?? []), one]);
  return [...roots.values()].map((parts) => {
    const lights = parts.flatMap(({ light }) => light ?? []);
    return {
      degreeDays: meanOf(parts.map(({ degreeDays }) => degreeDays ?? 0)),
      lastDay: meanOf(parts.map(({ lastDay }) => lastDay)),
      light: lights.length < parts.length ? null : meanOf(lights),
      usualLight: meanOf(parts.map(({ usualLight }) => usualLight)),
    };
  });
}
