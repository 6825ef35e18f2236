import { makeLossBook } from './book.ts';
import { learnLosses } from './learn.ts';
import type { Loss } from './loss.ts';
import type { LossParts } from './lossParts.ts';
import { makeQuietWeeks } from './quietWeeks.ts';
import { sameAs, type ThrownOut, thrownOut } from './thrownOut.ts';
import { weekOf } from './weeks.ts';

export type { Basis, FamilyCase } from './families.ts';
export { foldLoss, mayUndo } from './foldLoss.ts';
export { hoursPast, limitsAt } from './hoursPast.ts';
export type { Learned } from './learn.ts';
export type { Loss, LossEntry, LossEvent, LossFacts } from './loss.ts';
export type { BatchSpan, LossParts } from './lossParts.ts';
export type { QuietWeek } from './quietWeeks.ts';
export { moneyLost, shareLost, weightLost } from './shareLost.ts';
export type { ThrownOut } from './thrownOut.ts';
export { addDays, weekOf, weeksBetween, weekToSay } from './weeks.ts';

export type Losses = ReturnType<typeof makeLosses>;

/** Losses people logged, those the cool room's lots tell of, and what may be learned of both. */
export function makeLosses(parts: LossParts) {
  const book = makeLossBook(parts.store);
  const quiet = makeQuietWeeks(parts.store);
  const inRoom = (place: string) => parts.farm().place(place)?.kind === 'cool-room';

  /** Parts of lots that were thrown out, each a loss of its cool room. */
  const ofLots = (): ThrownOut[] => thrownOut(parts.lots.all(), (t) => parts.calendar().dayOf(t));
  /** The lot that tells the same as a loss that was entered; undefined for none. */
  const twin = (loss: Pick<Loss, 'place' | 'crop' | 'day'>, of = ofLots()) =>
    inRoom(loss.place) ? sameAs(loss, of) : undefined;
  const counted = (): Loss[] => {
    const of = ofLots();
    return book
      .all()
      .filter((loss) => !loss.withdrawn && (loss.another || twin(loss, of) === undefined));
  };

  return {
    ...book,
    quiet,
    ofLots,
    twin,
    /** Losses that hold, without those a lot tells of. */
    counted,
    /** The first week of the range that the log, or a lot that is gone, tells of; null: none does. */
    begun({ from, to }: { readonly from: string; readonly to: string }): string | null {
      const days = [
        ...counted().map(({ day }) => day),
        ...quiet.all().map(({ week }) => week),
        ...parts.lots.all().map(({ storedAt }) => parts.calendar().dayOf(storedAt)),
      ].filter((day) => day >= from && day <= to);
      const [first] = days.sort();
      return first === undefined ? null : weekOf(first);
    },
    batchKnown: (id: string) => parts.batchKnown?.(id) ?? true,
    hours: parts,
    learn: (range: { readonly from: string; readonly to: string }, now: number) =>
      learnLosses(parts, { losses: counted(), quiet: quiet.all() }, range, now),
  };
}
