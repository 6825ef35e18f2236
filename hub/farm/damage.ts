import { alarmAt, damageLimit, damageLimits } from '../../rules/frost/index.ts';
import type { FarmFile, FarmPlace } from '../contract/index.ts';
import type { Farm } from './farm.ts';

export type Damage = {
  /** What the probe reads when damage begins, °C. */
  readonly at: number;
  /** Who says so; null for the grower. */
  readonly from: string | null;
};

/** Stages with a limit of their own, for a crop; empty for a crop that has none. */
export const stagesOf = (crop: string | undefined): string[] =>
  damageLimits.filter((each) => each.crop === crop).map(({ stage }) => stage);

/** The same for every crop that has one. */
export const allStages = (): Record<string, string[]> =>
  Object.fromEntries(damageLimits.map(({ crop }) => [crop, stagesOf(crop)]));

/** Ripe fruit is not in the sources: it is taken for the green one. Ours. */
const RIPE = 'green-fruit';

/**
 * Below what the probe reads damage begins at a place: the grower's own figure, or that of the
 * crop's stage with a margin, because leaves cool below the air beside them: 2 K for a probe with a
 * roof, 1 K for a bare bead.
 */
export function damageAt(farm: Farm, place: FarmPlace): Damage | null {
  const told = place.cover?.damage;
  if (told !== undefined) return { at: told, from: null };
  return ofStage(farm.file, place, place.stage);
}

/** The same for what is ripe. */
export function ripeDamageAt(farm: Farm, place: FarmPlace): Damage | null {
  const told = place.cover?.damage;
  return told === undefined ? ofStage(farm.file, place, RIPE) : { at: told, from: null };
}

function ofStage({ probes }: FarmFile, { id, crop }: FarmPlace, stage: string | undefined) {
  const limit = crop === undefined || stage === undefined ? null : damageLimit(crop, stage);
  if (limit === null) return null;
  const here = probes.filter(({ place, spot }) => place === id && spot !== 'under-cover');
  // One roofed probe among bare ones: its limit is the warmer, and so the safer for all.
  const kind = here.length > 0 && here.every(({ bare }) => bare) ? 'bare' : 'shielded';
  return { at: alarmAt(limit.critical, kind), from: limit.source };
}
