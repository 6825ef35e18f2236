import type { KeptEntry, Store } from '../store/index.ts';

/** What was seen and what was done about it. */
export type Action = {
  readonly entry: number;
  readonly enteredAt: number;
  readonly at: number;
  readonly saw: string;
  readonly did: string;
  readonly by: string;
  readonly core: number | null;
  readonly corrects: number | null;
};
const KIND = 'corrective-action';

/** Corrective actions of one room; a correction is one more, and the first stays. */
export function makeActions(store: Store) {
  const asAction = ({ id, t, body }: KeptEntry): Action => ({
    ...(body as Omit<Action, 'entry' | 'enteredAt'>),
    entry: id,
    enteredAt: t,
  });
  return {
    of: (room: string): Action[] =>
      store.journal
        .after(KIND, 0)
        .filter(({ place }) => place === room)
        .map(asAction)
        .sort((a, b) => a.at - b.at),
    add(body: Omit<Action, 'entry' | 'enteredAt'>, room: string, who: string, t: number) {
      store.journal.add({ t, who, what: KIND, place: room, subject: null, body });
    },
  };
}
