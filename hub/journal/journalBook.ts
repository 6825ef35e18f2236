import type { Store } from '../store/index.ts';

/** One entry of the journal about one thing. Nothing of it is ever changed: a later one says otherwise. */
export type Entry<Event> = {
  readonly id: number;
  /** When it was entered, ms since 1970. */
  readonly t: number;
  readonly who: string;
  readonly body: Event;
};

/** An entry was a mistake. */
export type Undone = { readonly event: 'undone'; readonly entry: number };

/**
 * Every thing of one kind that the journal tells of, kept at hand; only what was entered since is
 * read again.
 * @param kind the journal's `what`; its `subject` is the thing's id
 * @param fold what all entries of one thing come to, oldest first; null for one that never was
 */
export function journalBook<Event extends object, Thing>(
  store: Store,
  kind: string,
  fold: (id: string, entries: readonly Entry<Event>[]) => Thing | null,
) {
  const entries = new Map<string, Entry<Event>[]>();
  const things = new Map<string, Thing>();
  let read = 0;

  const refresh = () => {
    const touched = new Set<string>();
    for (const { id, t, who, subject, body } of store.journal.after(kind, read)) {
      read = id;
      if (subject === null) continue;
      const own = entries.get(subject) ?? [];
      own.push({ id, t, who, body: body as Event });
      entries.set(subject, own);
      touched.add(subject);
    }
    for (const id of touched) {
      const thing = fold(id, entries.get(id) ?? []);
      if (thing !== null) things.set(id, thing);
    }
    return things;
  };

  return {
    all: (): Thing[] => [...refresh().values()],
    get: (id: string): Thing | undefined => refresh().get(id),
    /** Changes when anything was entered. */
    newest: (): number => {
      refresh();
      return read;
    },
    /** What all entries of a thing, and these after them, would come to. */
    foretold(id: string, more: readonly Event[], who: string, t: number): Thing | null {
      refresh();
      const own = entries.get(id) ?? [];
      return fold(id, [...own, ...more.map((body, i) => ({ id: read + 1 + i, t, who, body }))]);
    },
    /** Adds to the journal, all of them or none. */
    addAll(
      list: readonly {
        readonly id: string;
        readonly place: string | null;
        readonly event: Event;
      }[],
      who: string,
      t: number,
    ) {
      // Read again only when they are kept: what was rolled back must not stay at hand.
      store.transaction(() => {
        for (const { id, place, event } of list)
          store.journal.add({ t, who, what: kind, place, subject: id, body: event });
      });
    },
    /** Adds to the journal. @returns the thing as it stands after it */
    add(id: string, place: string | null, event: Event, who: string, t: number): Thing {
      store.journal.add({ t, who, what: kind, place, subject: id, body: event });
      const thing = refresh().get(id);
      if (thing === undefined) throw new Error(`Expected a ${kind} that was entered, got ${id}`);
      return thing;
    },
    /** The first free name for one of this crop on this day: `basil-0423-2`; `taken` are free no more. */
    nextId(crop: string, day: string, taken: ReadonlySet<string> = new Set()): string {
      const known = refresh();
      const stem = `${crop}-${day.slice(5).replace('-', '')}-`;
      for (let n = 1; ; n++)
        if (!known.has(`${stem}${n}`) && !taken.has(`${stem}${n}`)) return `${stem}${n}`;
    },
  };
}
export type JournalBook<Event extends object, Thing> = ReturnType<typeof journalBook<Event, Thing>>;

/** Entries that were taken back; taking back the taking back makes one count again. */
export function undoneIn<Event extends object>(
  entries: readonly Entry<Event | Undone>[],
): ReadonlySet<number> {
  const undone = new Set<number>();
  for (const { id, body } of entries.toReversed())
    if ('event' in body && body.event === 'undone' && !undone.has(id))
      undone.add((body as Undone).entry);
  return undone;
}
