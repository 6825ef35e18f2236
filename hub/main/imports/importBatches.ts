import { join } from 'node:path';
import { makeBatches } from '../../batches/index.ts';
import { enterPlan, planFile } from '../../batchFile/index.ts';
import type { Settings } from '../../settings.ts';
import { openStore } from '../../store/index.ts';
import { importFarm, keepFarm } from '../farm/farmKept.ts';
import { clockFrom } from '../time/clockFrom.ts';
import { readText } from '../verbs/readText.ts';

const SHOWN = 10; // faults shown in full; the rest are counted

export type BatchesImported = {
  readonly batches: number;
  readonly entries: number;
  /** Rows that were in the store already. */
  readonly known: number;
  readonly refused: number;
  readonly sentences: readonly string[];
};

/** `dewpost import FILE` of batches: what is new in it goes into the journal, as the page enters it. */
export function importBatches(file: string, settings: Settings<'import'>): BatchesImported {
  const clock = clockFrom(settings.clock);
  const csv = readText(file);
  const store = openStore(join(settings.data, 'dewpost.db'));
  try {
    if (settings.farm !== undefined && store.farm() === undefined)
      importFarm(store, readText(settings.farm), clock.now());
    if (store.farm() === undefined)
      throw new Error('Expected --farm FILE, because the store has no farm yet, got none');
    const kept = keepFarm(store);
    const batches = makeBatches(store);
    const now = clock.now();
    const about = { farm: kept.farm(), calendar: kept.calendar(), now, batches };
    const plan = planFile(csv, about);
    const entries = enterPlan(plan, batches, 'file', now);
    const { known, refused } = plan;
    const sentences = refused.slice(0, SHOWN).map(({ line, reason }) => `line ${line}: ${reason}`);
    return { batches: plan.batches.length, entries, known, refused: refused.length, sentences };
  } finally {
    store.close();
  }
}
