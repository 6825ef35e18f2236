import { type Calendar, calendarOf } from '../clock.ts';
import { everyMs, type Farm, farmOf, readFarmFile } from '../farm/index.ts';
import { makeCorrections } from '../record/index.ts';
import type { Store } from '../store/index.ts';

/** A fault in what somebody gave: its sentences are for them to read. */
export class Faults extends Error {
  readonly sentences: readonly string[];
  constructor(sentences: readonly string[]) {
    super(sentences.join('\n'));
    this.sentences = sentences;
  }
}

/**
 * Puts a farm file into the store: the description as it stands, and its probes where they are not
 * yet where it says. A probe that moved is moved from now on; one never placed was always there.
 *
 * @throws Faults with a line for each fault; nothing is changed then.
 */
export function importFarm(store: Store, text: string, now: number, who = 'hub') {
  const { farm, faults } = readFarmFile(text);
  if (faults) throw new Faults(faults);
  const before = store.farm();
  const zoneBefore = before === undefined ? undefined : readFarmFile(before).farm?.farm.zone;
  store.transaction(() => {
    store.putFarm(text);
    // What was worked out with the old description is made again when it is asked for.
    store.placeFacts.dropAll();
    if (zoneBefore !== farm.farm.zone) store.rollups.restaleAll();
    const corrections = makeCorrections(store);
    for (const { id, place, spot, every, offset } of farm.probes) {
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
      body: { farm: text },
    });
  });
}

/** The farm as the store has it; read again when its text has changed. */
export function keepFarm(store: Store) {
  let text: string | undefined;
  let farm: Farm | undefined;
  let calendar: Calendar | undefined;

  const read = (): boolean => {
    const kept = store.farm();
    if (kept === undefined)
      throw new Faults(['Expected --farm FILE, because the store has no farm yet, got none']);
    if (kept === text) return false;
    const { farm: file, faults } = readFarmFile(kept);
    if (faults) throw new Faults(faults);
    farm = farmOf(file);
    calendar = calendarOf(file.farm.zone);
    text = kept;
    return true;
  };
  read();
  return {
    farm: (): Farm => farm as Farm,
    calendar: (): Calendar => calendar as Calendar,
    /** @returns whether it had changed. */
    refresh: read,
  };
}
