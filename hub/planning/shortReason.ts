import type { Shortfall } from '../../rules/batches/index.ts';
import type { CropFacts } from './cropFacts.ts';
import type { PlaceFacts, ShortReason } from './planTypes.ts';

/** A reason of the rules, told more nearly. */
export function reasonFor(crop: CropFacts, reason: Shortfall['reason']): ShortReason {
  if (reason !== 'no-past-batches') return reason;
  return crop.perTray.length === 0 ? 'no-weight' : reason;
}

/** Why no place took it: none is told, none is full of warmth or cold enough, or all are full. */
export function reasonInRoom(crop: CropFacts, places: readonly PlaceFacts[]): ShortReason {
  if (places.length === 0) return 'no-place';
  const said = places.map((place) => place.suits(crop));
  if (said.some((one) => typeof one !== 'string')) return 'no-room';
  for (const reason of ['no-climate', 'too-cold', 'too-warm'] as const)
    if (said.includes(reason)) return reason;
  return 'no-room';
}
