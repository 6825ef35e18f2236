import type { Evidence } from '../answer.ts';
import { airingWouldDo } from '../days/index.ts';
import { by, put } from './how.ts';
import type { Look } from './look.ts';
import { fact } from './say.ts';
import type { CropPlaces, TraysStanding } from './snapshot.ts';
import { OURS } from './sources.ts';
import type { troubleOf } from './trayTrouble.ts';

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
  if (trouble === 'heat' && asks.shade)
    return fact('shade-first', 'yes', '', null, OURS, by('shade', put('shade', 'act')));
  return null;
}
