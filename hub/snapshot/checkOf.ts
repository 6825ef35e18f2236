import type { ProbeNow } from '../../rules/decide/index.ts';
import { instant } from '../../rules/units.ts';
import type { Farm } from '../farm/index.ts';
import { CHECK_DAYS } from '../record/index.ts';
import type { Placement, Store } from '../store/index.ts';

/** Where a temperature decides over food: a coil is no such spot. */
const CHECKED = ['air', 'canopy', 'product'];

/** How a probe stands with its checks against melting ice; null where none is asked for. */
export function checkOf(
  store: Store,
  farm: Farm,
  here: Placement | undefined,
  checked: (probe: string) => { readonly at: number } | undefined,
): NonNullable<ProbeNow['check']> | null {
  if (here === undefined || !CHECKED.includes(here.spot)) return null;
  const place = farm.place(here.place);
  if (place?.kind !== 'cool-room') return null;
  const checkedAt = checked(here.probe)?.at;
  const first = checkedAt ?? store.readings.oldestAt(here.probe, 'temperature');
  if (first === undefined) return null;
  const series = store.readings.idOf(here.probe, 'temperature');
  const since = checkedAt ?? Math.max(first, here.from);
  return {
    at: checkedAt === undefined ? null : instant(checkedAt),
    since: instant(since),
    days:
      series === undefined ? 0 : store.rollups.days(series, since, Number.MAX_SAFE_INTEGER).length,
    every: place.checkDays ?? CHECK_DAYS,
    told: place.checkDays !== undefined,
  };
}
