import { join } from 'node:path';
import { type FruitCount, fruitCount } from '../../contract/index.ts';
import type { Settings } from '../../settings.ts';
import { openStore } from '../../store/index.ts';
import { refusal, shown } from '../../words/index.ts';
import { keepFarm } from '../farm/farmKept.ts';
import { clockFrom } from '../time/clockFrom.ts';
import { eachLine } from './importStation.ts';
import type { Progress } from './progressLine.ts';

const COLUMNS = ['counted', 'place', 'stage', 'kg'] as const;
const SHOWN = 10; // faults shown in full; the rest are counted
const NOON = 12 * 3_600_000; // ms: a count of which only the day is known

export type FruitImported = {
  readonly counts: number;
  /** Counts that were in the store already. */
  readonly known: number;
  readonly refused: number;
  readonly sentences: readonly string[];
};

/**
 * `dewpost import FILE` of counts of fruit, one stage a line; the lines of one day and place are one
 * count. It goes into the journal as a count entered by hand does.
 */
export async function importFruit(
  file: string,
  settings: Settings<'import'>,
  progress: (so: Progress) => void,
): Promise<FruitImported> {
  const clock = clockFrom(settings.clock);
  const store = openStore(join(settings.data, 'dewpost.db'));
  try {
    const kept = keepFarm(store);
    const { farm, calendar } = { farm: kept.farm(), calendar: kept.calendar() };
    const patches = farm.places.filter(({ kind }) => kind === 'patch').map(({ id }) => id);
    const today = calendar.dayOf(clock.now());
    const counts = new Map<
      string,
      { place: string; counted: string; cohorts: FruitCount['cohorts'] }
    >();
    const sentences: string[] = [];
    let names: string[] | undefined;
    let refused = 0;
    const so = (share: number, rows: number) => progress({ share, rows, refused });
    await eachLine(file, so, (text, line) => {
      const cells = text.split(',').map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'));
      if (names === undefined) {
        names = cells.map((cell) => cell.replace(/^\uFEFF/, ''));
        for (const column of COLUMNS)
          if (!names.includes(column))
            throw new Error(
              `Expected a column ${column} in header of line ${line}, got ${shown(text)}`,
            );
        return;
      }
      const cell = (name: string) => cells[names?.indexOf(name) ?? -1] ?? '';
      const fault = (sentence: string) => {
        refused++;
        if (sentences.length < SHOWN) sentences.push(`line ${line}: ${sentence}`);
      };
      const [counted, place, flowered] = [cell('counted'), cell('place'), cell('flowered')];
      if (!patches.includes(place))
        return fault(`Expected one of ${patches.join(', ')} in place, got ${shown(place)}`);
      const given = {
        counted,
        cohorts: [
          {
            stage: cell('stage'),
            kg: cell('kg') === '' ? undefined : Number(cell('kg')),
            ...(flowered === '' ? {} : { flowered }),
          },
        ],
      };
      const read = fruitCount.safeParse(given);
      if (!read.success) return fault(refusal({ ...read.error.issues[0] } as never, given));
      if (counted > today)
        return fault(`Expected a day up to ${today} in counted, got ${shown(counted)}`);
      if (flowered > counted)
        return fault(`Expected a day up to ${counted} in flowered, got ${shown(flowered)}`);
      const key = `${place}\n${counted}`;
      const count = counts.get(key) ?? { place, counted, cohorts: [] };
      count.cohorts.push(...read.data.cohorts);
      counts.set(key, count);
    });
    let known = 0;
    store.transaction(() => {
      for (const { place, counted, cohorts } of [...counts.values()].sort((a, b) =>
        a.counted < b.counted ? -1 : 1,
      )) {
        const t = Math.min(clock.now(), calendar.bounds(counted).begins + NOON);
        const body = { counted, cohorts };
        const same = store.journal
          .between('fruit', 0, Number.MAX_SAFE_INTEGER)
          .some(
            (entry) => entry.place === place && JSON.stringify(entry.body) === JSON.stringify(body),
          );
        if (same) known++;
        else store.journal.add({ t, who: 'file', what: 'fruit', place, subject: null, body });
      }
    });
    return { counts: counts.size - known, known, refused, sentences };
  } finally {
    store.close();
  }
}
