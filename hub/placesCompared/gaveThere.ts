import { type MeanInterval, meanInterval } from '../../rules/statistics/index.ts';
import type { Batch } from '../batches/index.ts';
import type { Growing } from '../growing/index.ts';
import { lostShare, mainPlace } from './lostShare.ts';

const CONFIDENCE = 0.95;

/** What finished batches of a crop gave at one place. */
export type GaveThere = {
  readonly batches: number;
  /** kg a tray that was cut. */
  readonly perTray: MeanInterval | null;
  /** Days from sowing until they were ready. */
  readonly days: MeanInterval | null;
  /** Share lost, 0..1. */
  readonly lost: MeanInterval | null;
};

/** By the place where each stood for most of its time. A batch counts once, however many cuts. */
export function gaveThere(
  batches: readonly Batch[],
  past: ReturnType<Growing['crop']>['past'],
  place: string,
  now: number,
): GaveThere | null {
  const here = batches.filter(
    (batch) => batch.state === 'ended' && mainPlace(batch, now) === place,
  );
  if (here.length === 0) return null;
  const perTray = here.flatMap(({ cuts }) => {
    const trays = cuts.reduce((sum, cut) => sum + cut.trays, 0);
    return trays === 0 ? [] : [cuts.reduce((sum, cut) => sum + cut.kg, 0) / trays];
  });
  const days = here.flatMap(({ id }) => {
    const ready = past.find(({ batch, stage }) => batch === id && stage === 'later');
    return ready === undefined ? [] : [ready.days];
  });
  const lost = here.flatMap((batch) => lostShare(batch) ?? []);
  const inside = (found: MeanInterval | null, most: number) =>
    found && {
      ...found,
      low: found.low === null ? null : Math.max(0, found.low),
      high: found.high === null ? null : Math.min(most, found.high),
    };
  return {
    batches: here.length,
    perTray: inside(meanInterval(perTray, CONFIDENCE), Number.POSITIVE_INFINITY),
    days: inside(meanInterval(days, CONFIDENCE), Number.POSITIVE_INFINITY),
    lost: inside(meanInterval(lost, CONFIDENCE), 1),
  };
}
