import type { Batch, CutStage } from '../batches/index.ts';
import type { Ready } from './ready.ts';

/** What was said of a batch is said again for so long: an hour of warmth moves it by less than an hour.
 *  Ours. */
const FRESH = 3_600_000; // ms

type Kept = { readonly key: string; readonly ready: Ready };

/**
 * Remembers when batches are ready, because each look and each open page asks for all of them.
 *
 * @param version changes whenever something changed that is known of a crop, a place or the weather
 */
export function keptReady(
  reckon: (batch: Batch, stage: CutStage, at: number) => Ready,
  version: () => string,
) {
  const kept = new Map<string, Kept>();
  return (batch: Batch, stage: CutStage, at: number): Ready => {
    const name = `${stage} ${batch.id}`;
    const key = `${Math.floor(at / FRESH)} ${version()}`;
    const known = kept.get(name);
    if (known?.key === key) return known.ready;
    const ready = reckon(batch, stage, at);
    kept.set(name, { key, ready });
    return ready;
  };
}
