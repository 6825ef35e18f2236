import { needOf } from '../../rules/batches/index.ts';
import type { Batch, Batches, CutStage } from '../batches/index.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import type { Snapshots } from '../snapshot/index.ts';
import type { Store } from '../store/index.ts';
import { cutChoice, type StageFigures } from './cutChoice.ts';
import { keptReady } from './keptReady.ts';
import { makeClimates } from './makeClimates.ts';
import { makeCrops } from './makeCrops.ts';
import { makeHeat } from './makeHeat.ts';
import { makeReady, spanOf } from './makeReady.ts';
import { placeHistory } from './placeHistory.ts';
import type { Ready } from './ready.ts';
import { usualLight } from './skyLight.ts';
import { lessonOf } from './teaching.ts';

export type { Ahead } from './aheadOf.ts';
export type { CropBase } from './cropBase.ts';
export type { HeatRule } from './heatRule.ts';
export type { CropGrowing } from './makeCrops.ts';
export type { Lived } from './makeHeat.ts';
export type { LearnedBase } from './ownBase.ts';
export type { PastBatch } from './pastBatches.ts';
export type { PlaceClimate } from './placeClimate.ts';
export type { Ready, ReadyMissing } from './ready.ts';

export type GrowingParts = {
  readonly store: Store;
  readonly farm: () => Farm;
  readonly calendar: () => Calendar;
  readonly snapshots: Snapshots;
  readonly batches: Batches;
  readonly now: () => number;
};
export type Growing = ReturnType<typeof makeGrowing>;

/** Heat that batches went through and will; what crops need of it; when a batch is ready. */
export function makeGrowing(parts: GrowingParts) {
  const { store, farm, calendar, snapshots, batches, now } = parts;
  const pieces = { store, spots: snapshots.spots, farm };
  const history = placeHistory(pieces, calendar);
  const { climate, ahead } = makeClimates({ store, farm, calendar, now, history });
  const heat = makeHeat({ ...pieces, calendar, now }, (place, rule, day) =>
    climate(place, rule).guess(day),
  );
  const crop = makeCrops({ farm, calendar, now, batches, heat, history });
  let lastFarm: Farm | null = null;
  let farms = 0;
  const known = () => {
    if (farm() !== lastFarm) farms += 1;
    lastFarm = farm();
    const told = store.stations.all().map((station) => `${station.id}@${station.importedAt}`);
    const entered = `${batches.newest()} ${history.changes()}`;
    return `${farms} ${entered} ${store.foretold.version()} ${told.join(' ')}`;
  };
  const reckoned = makeReady({ farm, calendar, cropOf: crop, ahead, climate, lived: heat.lived });
  const ready = keptReady(reckoned, known);

  /** For a batch sown now, with days as warm as those of past batches were in the end. */
  const needNow = (id: string, stage: CutStage) => {
    const { lat } = farm().file.farm;
    const light = { measured: null, usual: usualLight(lat, calendar().dayOf(now())) };
    const lesson = lessonOf(crop(id).past, stage, null, light);
    if (lesson === null) return null;
    const need = needOf(lesson.found, lesson.found.at(-1)?.lastDay ?? 0);
    return { ...spanOf(need), batches: lesson.found.length };
  };

  snapshots.listen((place, from, to) => {
    const today = calendar().bounds(calendar().dayOf(now())).begins;
    if (place === null || from < today) history.changed();
    heat.drop(place, from, to);
  });

  return {
    heat: {
      /** Heat and light that plants went through at the places they stood at. */
      lived: heat.lived,
      /** Heat that days to come bring to a place, °C d a day: expected, and as years before did. */
      ahead,
    },
    /** What dates usually bring to a place. */
    climate,
    /** What past batches of a crop took, and from which temperature it is counted. */
    crop,
    /** What the next batch of a crop takes, by past ones; null before any was ready. */
    need: (id: string) => ({ later: needNow(id, 'later'), young: needNow(id, 'young') }),
    /** Young or later, side by side. */
    stages: (id: string): StageFigures[] =>
      cutChoice(
        batches.all().filter((batch) => batch.crop === id),
        farm().crop(id),
      ),
    /** When a batch is ready for the later cut. */
    later: (batch: Batch, at: number): Ready => ready(batch, 'later', at),
    /** When a batch is ready: for the later cut, and where the crop is also cut young, for that. */
    ready: (batch: Batch, at: number): { readonly later: Ready; readonly young: Ready | null } => ({
      later: ready(batch, 'later', at),
      young: farm().crop(batch.crop)?.young === undefined ? null : ready(batch, 'young', at),
    }),
  };
}
