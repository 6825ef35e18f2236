import { type Batch, type BatchFacts, earliestEntry, leastTrays } from '../batches/index.ts';
import type { ChangeBatch } from '../contract/index.ts';
import type { ToAdd } from './batchChange.ts';
import { checkBatch, saidOfBatch } from './batchFacts.ts';
import { type ApiParts, Refused } from './parts.ts';
import { iso } from './present.ts';

/** True of all trays that were sown together, wherever they stand by now. */
const SHARED = ['crop', 'variety', 'sownAt', 'place'] as const;

/** Every batch that was one with this when it was sown, itself among them. */
function family(batch: Batch, all: readonly Batch[]): Batch[] {
  const found = new Map([[batch.id, batch]]);
  for (let before = 0; before < found.size; ) {
    before = found.size;
    for (const one of all) {
      if (one.state === 'withdrawn') continue;
      const parent = one.partOf !== null && found.has(one.partOf);
      if (parent || [...found.values()].some(({ partOf }) => partOf === one.id))
        found.set(one.id, one);
    }
  }
  return [...found.values()];
}

/**
 * What a correction is written down as: what all trays that were sown together share goes into each
 * of their batches.
 * @throws Refused 400 with the field
 */
export function correctedEvents(
  parts: ApiParts,
  batch: Batch,
  { note, ...fields }: NonNullable<ChangeBatch['correct']>,
  together: string,
  now: number,
): ToAdd[] {
  if (batch.state === 'withdrawn')
    throw new Refused(
      409,
      `Expected a batch that was sown, got one that was taken back (${batch.id})`,
    );
  const set = saidOfBatch(fields);
  if (Object.keys(set).length === 0)
    throw new Refused(400, 'Expected a field to correct in correct, got none');
  const shared: Partial<BatchFacts> = Object.fromEntries(
    Object.entries(set).filter(([key]) => (SHARED as readonly string[]).includes(key)),
  );
  const isShared = Object.keys(shared).length > 0;
  const members = isShared ? family(batch, parts.batches.all()) : [batch];
  for (const one of members) checkCorrected(parts, one, one === batch ? set : shared, now);
  return members.map((one) => ({
    id: one.id,
    place: one.place,
    event: {
      event: 'corrected',
      set: one === batch ? { ...set, ...costs(batch, set) } : shared,
      note: note || null,
      ...(members.length > 1 ? { together } : {}),
    },
  }));
}

function checkCorrected(parts: ApiParts, batch: Batch, set: Partial<BatchFacts>, now: number) {
  const next = { ...batch, place: batch.firstPlace, ...set };
  checkBatch(parts, next, 'correct', now);
  const gone = leastTrays(batch);
  if (next.trays < gone)
    throw new Refused(
      400,
      `Expected at least the ${gone} trays that were cut, thrown out or carried off in correct.trays, got ${next.trays}`,
    );
  const first = earliestEntry(batch);
  if (next.sownAt > first)
    throw new Refused(
      400,
      `Expected correct.sownAt at or before ${iso(first)}, when something was done with it, got ${iso(next.sownAt)}`,
    );
}

/** Costs are said of the trays that stayed; those that were carried off took their share along. */
function costs(batch: Batch, set: Partial<BatchFacts>): Partial<BatchFacts> {
  const whole = (cost: 'seedCost' | 'otherCost') => {
    const said = set[cost];
    if (said === undefined || said === null) return {};
    return { [cost]: batch.parted.reduce((sum, gone) => sum + (gone[cost] ?? 0), said) };
  };
  return { ...whole('seedCost'), ...whole('otherCost') };
}
