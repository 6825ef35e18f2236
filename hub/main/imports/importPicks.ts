import { join } from 'node:path';
import { storageOf } from '../../../rules/cooler/index.ts';
import { makePicks, type PickFacts } from '../../picks/index.ts';
import type { Settings } from '../../settings.ts';
import { openStore } from '../../store/index.ts';
import { shown } from '../../words/index.ts';
import { keepFarm } from '../farm/farmKept.ts';
import { clockFrom } from '../time/clockFrom.ts';
import { readText } from '../verbs/readText.ts';
import { readPicks } from './readPicks.ts';

const NOON = 12 * 3_600_000; // ms: a picking of which only the day is known
const SHOWN = 10; // faults shown in full; the rest are counted

export type PicksImported = {
  readonly picks: number;
  /** Pickings that were in the store already. */
  readonly known: number;
  readonly refused: number;
  readonly sentences: readonly string[];
};

/** `dewpost import FILE` of pickings. Each goes into the journal as one entered by hand does, once. */
export function importPicks(file: string, settings: Settings<'import'>): PicksImported {
  const clock = clockFrom(settings.clock);
  const store = openStore(join(settings.data, 'dewpost.db'));
  try {
    const kept = keepFarm(store);
    const { farm, calendar } = { farm: kept.farm(), calendar: kept.calendar() };
    const places = farm.places.filter(({ kind }) => kind !== 'cool-room').map(({ id }) => id);
    const picks = makePicks(store);
    const faultOf = ({ place, crop, at, kg, lostKg }: PickFacts) =>
      !places.includes(place)
        ? `Expected one of ${places.join(', ')} in place, got ${shown(place)}`
        : !farm.crop(crop) && !storageOf(crop)
          ? `Expected a crop of the farm file in crop, got ${shown(crop)}`
          : at > clock.now()
            ? `Expected a time that is past in picked, got ${new Date(at).toISOString()}`
            : lostKg !== null && lostKg > kg
              ? `Expected at most the ${kg} kg picked in sorted_out_kg, got ${lostKg}`
              : null;
    const noonOf = (day: string) =>
      Number.isNaN(Date.parse(day))
        ? day
        : new Date(calendar.bounds(day).begins + NOON).toISOString();
    const sentences: string[] = [];
    let [taken, known, refused] = [0, 0, 0];
    store.transaction(() => {
      const there = new Set(picks.all().map(sameness));
      for (const read of readPicks(readText(file), (place) => farm.place(place)?.crop, noonOf)) {
        const fault = read.fault ?? faultOf(read.facts);
        if (fault !== null || read.fault !== undefined) {
          refused++;
          if (sentences.length < SHOWN) sentences.push(`line ${read.line}: ${fault}`);
        } else if (there.has(sameness(read.facts))) known++;
        else {
          const { facts } = read;
          there.add(sameness(facts));
          const id = picks.nextId(facts.crop, calendar.dayOf(facts.at));
          picks.add(id, facts.place, { event: 'picked', facts }, 'file', clock.now());
          taken++;
        }
      }
    });
    return { picks: taken, known, refused, sentences };
  } finally {
    store.close();
  }
}

/** Two pickings of a crop at one place in one minute are one, typed twice: whatever was corrected since. */
const sameness = ({ place, crop, at }: PickFacts) =>
  [place, crop, Math.floor(at / 60_000)].join(' ');
