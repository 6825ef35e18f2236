import { createHash } from 'node:crypto';
import type { FarmDesk } from '../../api/index.ts';
import type { Batches } from '../../batches/index.ts';
import { type FarmBegun, type FarmFile, farmBegun } from '../../contract/index.ts';
import { checkFarm, editText, type FarmFault, farmChanges, readBegun } from '../../farm/index.ts';
import type { Store } from '../../store/index.ts';
import { importFarm } from './farmKept.ts';

/** Changes shown; ours: a farm is set up in some twenty. */
const SHOWN = 50;

/** A fault that stands beside no field. */
const unplaced = (sentence: string, field = ''): FarmFault => ({ field, sentence, said: sentence });

const wouldGo = (wanted: string, name: string, got: string, field: string) =>
  unplaced(`Expected ${wanted} ${name}, which would be gone, got ${got}`, field);

type Kept = { readonly farm: string; readonly undoes?: number; readonly why?: string };

const versionOf = (text: string | undefined) =>
  text === undefined ? 'none' : createHash('sha256').update(text).digest('hex').slice(0, 16);
const read = (text: string | undefined): FarmBegun | undefined =>
  text === undefined ? undefined : readBegun(text).farm;

/** The farm's description as people look at it and change it, each change checked and written down. */
export function makeFarmDesk(store: Store, batches: Batches): FarmDesk {
  const places = (places: FarmFile['places']) => new Set(places.map(({ id }) => id));

  /** What hangs or grows in a place that would be gone, and what grows of a crop that would. */
  function leftBehind(before: FarmBegun | undefined, after: FarmBegun): FarmFault[] {
    const growing = batches.all().filter(({ state }) => state === 'growing');
    const stay = places(after.places);
    const goes = (before?.places ?? []).filter(({ id }) => !stay.has(id));
    const kept = new Set(after.crops.map(({ id }) => id));
    const given = (before?.crops ?? []).filter(({ id }) => !kept.has(id));
    const inPlaces = goes.flatMap(({ id, name }) => {
      const hangs = store.probes.placements().filter((one) => one.place === id && one.to === null);
      const moved = new Set(after.probes.map((probe) => probe.id));
      const stays = hangs.filter(({ probe }) => !moved.has(probe)).map(({ probe }) => probe);
      const grows = growing.filter(({ place }) => place === id).length;
      return [
        ...(stays.length > 0 ? [wouldGo('no probe in', name, stays.join(', '), 'places')] : []),
        ...(grows > 0 ? [wouldGo('no batch that grows in', name, `${grows}`, 'places')] : []),
      ];
    });
    const ofCrops = given.flatMap(({ id, name }) => {
      const grows = growing.filter(({ crop }) => crop === id).length;
      return grows > 0 ? [wouldGo('no batch that grows of', name ?? id, `${grows}`, 'crops')] : [];
    });
    return [...inPlaces, ...ofCrops];
  }

  /** @returns the text it would be, and what of it is at fault. */
  function plan(description: Readonly<Record<string, unknown>>) {
    const text = store.farm();
    const before = read(text);
    const { farm: after, faults } = checkFarm(farmBegun, description);
    if (faults) return { faults, changes: [], lost: [], text: '' };
    const edited = editText(text, { before, after, write: description });
    const again = readBegun(edited.text);
    // The file is what counts: what it says is read back before anybody is told it is in order.
    const unread = (again.faults ?? []).map((sentence) => unplaced(sentence));
    return {
      faults: [...leftBehind(before, after), ...unread],
      changes: farmChanges(before, after),
      lost: edited.lost,
      text: edited.text,
    };
  }

  const entries = () => store.journal.after('farm', 0);
  const take = (text: string, who: string, now: number, note?: Partial<Omit<Kept, 'farm'>>) =>
    importFarm(store, text, now, who, { begun: true, onlyChanged: true, ...(note && { note }) });
  const based = (version: string) => versionOf(store.farm()) === version;

  return {
    text: () => store.farm(),
    read() {
      const text = store.farm();
      return { version: versionOf(text), description: read(text) ?? null };
    },
    preview(description) {
      const { text: _, ...seen } = plan(description);
      return seen;
    },
    change(version, description, who, now, why) {
      return store.transaction(() => {
        if (!based(version)) return 'changed meanwhile';
        const { text, changes, faults } = plan(description);
        if (faults.length > 0) return { faults };
        if (changes.length > 0) take(text, who, now, why === undefined ? {} : { why });
        return { version: versionOf(store.farm()), changes };
      });
    },
    changes() {
      const all = entries();
      return all
        .slice(-SHOWN)
        .reverse()
        .map(({ id, t, who, body }) => {
          const before = all.findLast((one) => one.id < id);
          const { farm, undoes = null, why = null } = body as Kept;
          const [was, is] = [read((before?.body as Kept | undefined)?.farm), read(farm)];
          return {
            id,
            t,
            who,
            undoes,
            why,
            undoable: before !== undefined,
            words: is ? farmChanges(was, is) : [],
          };
        });
    },
    undo(id, version, who, now) {
      return store.transaction(() => {
        if (!based(version)) return 'changed meanwhile';
        const all = entries();
        const at = all.findIndex((one) => one.id === id);
        if (at < 0) return 'no such change';
        const back = (all[at - 1]?.body as Kept | undefined)?.farm;
        if (back === undefined) return 'nothing before it';
        const { farm: after, faults = [] } = readBegun(back);
        if (!after) return { faults: faults.map((sentence) => unplaced(sentence)) };
        const before = read(store.farm());
        const left = leftBehind(before, after);
        if (left.length > 0) return { faults: left };
        take(back, who, now, { undoes: id });
        return { version: versionOf(store.farm()), changes: farmChanges(before, after) };
      });
    },
  };
}
