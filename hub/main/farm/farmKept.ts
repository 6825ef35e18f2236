import { type Calendar, calendarOf } from '../../clock.ts';
import {
  begunFarm,
  everyMs,
  type Farm,
  noFarm,
  readBegun,
  readFarmFile,
} from '../../farm/index.ts';
import { makeCorrections } from '../../record/index.ts';
import type { Store } from '../../store/index.ts';

/** A fault in what somebody gave: its sentences are for them to read. */
export class Faults extends Error {
  readonly sentences: readonly string[];
  constructor(sentences: readonly string[]) {
    super(sentences.join('\n'));
    this.sentences = sentences;
  }
}

export type Taking = {
  /** It may still be without a position or a zone. */
  readonly begun?: boolean;
  /** Probes are left where people put them since, unless the description of them is another now. */
  readonly onlyChanged?: boolean;
  /** Goes into the record beside the file. */
  readonly note?: Readonly<Record<string, unknown>>;
};

/**
 * Puts a farm file into the store: the description as it stands, and its probes where they are not
 * yet where it says. A probe that moved is moved from now on; one never placed was always there.
 *
 * @throws Faults with a line for each fault; nothing is changed then.
 */
export function importFarm(
  store: Store,
  text: string,
  now: number,
  who = 'hub',
  { begun = false, onlyChanged = false, note = {} }: Taking = {},
) {
  const { farm, faults } = begun ? readBegun(text) : readFarmFile(text);
  if (faults) throw new Faults(faults);
  const kept = store.farm();
  const before = kept === undefined ? undefined : readBegun(kept).farm;
  const described = (id: string) => JSON.stringify(before?.probes.find((one) => one.id === id));
  store.transaction(() => {
    store.putFarm(text);
    // What was worked out with the old description is made again when it is asked for.
    store.placeFacts.dropAll();
    if (before?.farm.zone !== farm.farm.zone) store.rollups.restaleAll();
    const corrections = makeCorrections(store);
    for (const probe of farm.probes) {
      const { id, place, spot, every, offset } = probe;
      if (onlyChanged && described(id) === JSON.stringify(probe)) continue;
      corrections.fileChanged(id, store.probes.offsets(id), offset, who, now);
      store.probes.setEvery(id, everyMs(every));
      store.probes.setOffsets(id, offset);
      const placements = store.probes.placementsOf(id);
      const here = placements.find(({ to }) => to === null);
      if (here?.place === place && here.spot === spot) continue;
      store.probes.place(id, place, spot, placements.length === 0 ? 0 : now);
    }
    store.journal.add({
      t: now,
      who,
      what: 'farm',
      place: null,
      subject: null,
      body: { farm: text, ...note },
    });
  });
}

/** The farm as the store has it; read again when its text has changed. */
export function keepFarm(store: Store) {
  let text: string | undefined;
  let farm = noFarm();
  let calendar: Calendar = calendarOf(farm.zone);

  const read = (): boolean => {
    const kept = store.farm();
    if (kept === undefined || kept === text) return false;
    const { farm: begun, faults } = readBegun(kept); // people may be half-way through it
    if (faults) throw new Faults(faults);
    farm = begunFarm(begun);
    calendar = calendarOf(farm.zone);
    text = kept;
    return true;
  };
  read();
  return {
    farm: (): Farm => farm,
    calendar: (): Calendar => calendar,
    /** @returns whether it had changed. */
    refresh: read,
  };
}
