import type { TaskKind } from '../../rules/decide/index.ts';
import type { WouldAsk } from './keeper.ts';
import type { PlaceTrial } from './walkPast.ts';

const DAY = 86_400_000; // ms
/** A task in so many days before a loss may have spared it. Ours. */
const DAYS_BEFORE = 7;

/** What one set of limits would have asked for, of one kind at one place. */
export type Side = {
  readonly days: readonly string[];
  readonly tasks: number;
  readonly minutes: number;
};
export type Row = {
  readonly place: string;
  readonly kind: TaskKind;
  readonly before: Side;
  readonly after: Side;
  /** Losses there by what they looked like, and those with such a task in the week before them. */
  readonly losses: readonly LossSide[];
};
export type LossSide = {
  readonly look: string;
  readonly entries: number;
  readonly before: number;
  readonly after: number;
};
export type LossDay = { readonly place: string; readonly day: string; readonly look: string };

type DaysOf = { readonly dayOf: (t: number) => string; readonly to: number };

/** Days on which a task stood; one that stands still stands to the end. */
function daysOf(asked: readonly WouldAsk[], { dayOf, to }: DaysOf): string[] {
  const days = new Set<string>();
  for (const { from, to: ended } of asked) {
    const last = dayOf(Math.max(from, (ended ?? to) - 1));
    // Half days, so that none is missed where a day has 23 hours.
    for (let t = from; dayOf(t) < last; t += DAY / 2) days.add(dayOf(t));
    days.add(last);
  }
  return [...days].sort();
}

function side(asked: readonly WouldAsk[], by: DaysOf): Side {
  return {
    days: daysOf(asked, by),
    tasks: asked.length,
    minutes: asked.reduce((sum, { minutes }) => sum + minutes, 0),
  };
}

const addDays = (day: string, days: number) =>
  new Date(Date.parse(day) + days * DAY).toISOString().slice(0, 10);

/** One row a place and kind that either set of limits would have asked for, beside the losses there. */
export function compareDays(
  trials: readonly PlaceTrial[],
  losses: readonly LossDay[],
  by: DaysOf,
): Row[] {
  return trials.flatMap(({ place, before, after }) => {
    const here = losses.filter((loss) => loss.place === place);
    const kinds = new Set([...before, ...after].map(({ kind }) => kind));
    return [...kinds].map((kind): Row => {
      const [old, next] = [before, after].map((asked) =>
        side(
          asked.filter((one) => one.kind === kind),
          by,
        ),
      ) as [Side, Side];
      const looks = [...new Set(here.map(({ look }) => look))].sort();
      const counted = looks.map((look): LossSide => {
        const alike = here.filter((loss) => loss.look === look);
        const warned = ({ days }: Side) =>
          alike.filter(({ day }) => days.some((d) => d >= addDays(day, -DAYS_BEFORE) && d < day))
            .length;
        return { look, entries: alike.length, before: warned(old), after: warned(next) };
      });
      return { place, kind, before: old, after: next, losses: counted };
    });
  });
}
