import type { Store } from '../store/index.ts';

/** Somebody said that nothing was lost at a place in a week. */
export type QuietWeek = {
  readonly place: string;
  /** Its Monday. */
  readonly week: string;
  readonly who: string;
  readonly t: number;
};
type Said = { readonly week: string; readonly holds: boolean };

const KIND = 'no-loss';

/** Weeks without a loss, by the newest entry of each place and week. */
export function makeQuietWeeks(store: Store) {
  const weeks = new Map<string, QuietWeek & { readonly holds: boolean }>();
  let read = 0;
  const refresh = () => {
    for (const { id, t, who, place, body } of store.journal.after(KIND, read)) {
      read = id;
      if (place === null) continue;
      const { week, holds } = body as Said;
      weeks.set(`${place}\n${week}`, { place, week, holds, who, t });
    }
    return weeks;
  };
  return {
    all: (): QuietWeek[] => [...refresh().values()].filter(({ holds }) => holds),
    holds: (place: string, week: string): boolean =>
      refresh().get(`${place}\n${week}`)?.holds ?? false,
    say(place: string, said: Said, who: string, t: number) {
      store.journal.add({ t, who, what: KIND, place, subject: said.week, body: said });
    },
  };
}
export type QuietWeeks = ReturnType<typeof makeQuietWeeks>;
