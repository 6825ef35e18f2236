import type { Batch, CutStage } from '../batches/index.ts';
import { cutStages } from '../batches/index.ts';
import type { HeatRule } from './heatRule.ts';
import type { Heat } from './makeHeat.ts';

const DAY = 86_400_000; // ms
const HOUR = 3_600_000;
/** A batch of which more was not measured teaches nothing. Common practice, no source. */
const MOST_UNKNOWN = 0.15; // share of its time

/** What one batch took to a stage. */
export type PastBatch = {
  readonly batch: string;
  readonly stage: CutStage;
  /** Where it stood when it was ready. */
  readonly place: string;
  readonly sownAt: number;
  readonly readyAt: number;
  /** Somebody noted it ready, or it was only seen to be cut, perhaps long after. */
  readonly seen: 'noted' | 'cut';
  /** °C d from sowing to ready; null where too much of it was not measured. */
  readonly degreeDays: number | null;
  readonly days: number;
  readonly unknownHours: number;
  /** Mean daily light, mol m⁻² d⁻¹; null without a light probe. */
  readonly light: number | null;
  /** kg a tray of its cuts at that stage; null before any. */
  readonly perTray: number | null;
  /** Trays carried off from another batch share its beginning: the batch they come from, else itself. */
  readonly root: string;
};

export function pastBatches(batches: readonly Batch[], heat: Heat, rule: HeatRule): PastBatch[] {
  const byId = new Map(batches.map((batch) => [batch.id, batch]));
  const rootOf = (batch: Batch): string => {
    const seen = new Set([batch.id]);
    let at = batch;
    for (let next = at.partOf; next !== null && !seen.has(next); next = at.partOf) {
      seen.add(next);
      const from = byId.get(next);
      if (from === undefined) return next;
      at = from;
    }
    return at.id;
  };
  return batches
    .filter(({ state }) => state !== 'withdrawn')
    .flatMap((batch) =>
      cutStages.flatMap((stage): PastBatch[] => {
        const readyAt = batch.readyAt[stage];
        if (readyAt === null || readyAt <= batch.sownAt) return [];
        const noted =
          stage === 'later' && batch.notes.some((n) => n.look === 'ready' && n.at === readyAt);
        const lived = heat.lived(batch.stays, batch.sownAt, readyAt, rule);
        const hours = (readyAt - batch.sownAt) / HOUR;
        const teaches =
          lived.degreeDays !== null &&
          lived.degreeDays >= 1 &&
          lived.unknownHours <= MOST_UNKNOWN * hours;
        const stood = batch.stays.filter(({ from }) => from <= readyAt).at(-1)?.place;
        const cuts = batch.cuts.filter((cut) => cut.stage === stage);
        const trays = cuts.reduce((sum, cut) => sum + cut.trays, 0);
        return [
          {
            ...{ batch: batch.id, stage, place: stood ?? batch.place },
            ...{ sownAt: batch.sownAt, readyAt, seen: noted ? 'noted' : 'cut' },
            degreeDays: teaches ? lived.degreeDays : null,
            days: (readyAt - batch.sownAt) / DAY,
            unknownHours: lived.unknownHours,
            light: lived.lightPerDay,
            perTray: trays === 0 ? null : cuts.reduce((sum, cut) => sum + cut.kg, 0) / trays,
            root: rootOf(batch),
          },
        ];
      }),
    )
    .sort((a, b) => a.readyAt - b.readyAt);
}
