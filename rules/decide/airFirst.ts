import type { Evidence } from '../answer.ts';
import { airingWouldDo } from '../days/index.ts';
import { by, put } from './how.ts';
import type { Look } from './look.ts';
import { fact } from './say.ts';
import type { CropPlaces, TraysStanding } from './snapshot.ts';
import { OURS } from './sources.ts';
import type { troubleOf } from './trayTrouble.ts';

const SHADE_TRIED = 3; // days of shade that did not keep it cool enough; ours

/** What to do first, where it would do; null where carrying is what is left. */
export function airFirst(
  { snapshot }: Look,
  stand: TraysStanding,
  { places, outside }: CropPlaces,
  trouble: ReturnType<typeof troubleOf>,
  asks: { readonly openUp: boolean; readonly shade: boolean },
): Evidence | null {
  if (trouble === 'cold') return null;
  const place = snapshot.places.find(({ id }) => id === stand.place);
  const crop = snapshot.crops.find(({ id }) => id === stand.crop);
  const here = places.find((one) => one.place === stand.place)?.days ?? [];
  if (place?.vents) {
    const trial = airingWouldDo(
      here,
      outside,
      trouble,
      crop?.band?.[1] ?? Number.POSITIVE_INFINITY,
    );
    const how = by(
      'airingWouldDo',
      put('bad-hours', trial.badHours, 'h'),
      put('open-already', trial.openAlready, 'h'),
      put('would-help', trial.wouldHelp, 'h'),
    );
    if (asks.openUp || trial.wouldDo)
      return fact('open-up-first', trial.wouldHelp, 'h', null, OURS, how);
  }
  const shading = snapshot.trays?.places.find(({ id }) => id === stand.place);
  const tried = shading?.shadedDays ?? 0;
  // Shade that was put up for a day or two has not shown yet what it does; after three it has.
  const waits = (asks.shade && tried < SHADE_TRIED) || (tried > 0 && tried < SHADE_TRIED);
  if (trouble === 'heat' && waits && shading?.notShaded !== true)
    return fact('shade-first', tried, 'd', SHADE_TRIED, OURS, by('shade', put('days', tried, 'd')));
  return null;
}
