import type { PlaceNow, SpotNow } from '../../rules/decide/index.ts';
import type { Store } from '../store/index.ts';
import type { NightBounds } from './nights.ts';

const HOUR = 3_600_000; // ms
/** What somebody said of the covers is trusted this long, as in the look of the day. Ours. */
const TRUSTED = 30 * HOUR;
const IN_THE_OPEN = ['canopy', 'grass', 'air'];

/**
 * Past nights under the covers of a place: the low beneath, less that of the open spot beside it.
 * Only nights that were clear and calm, and of which somebody said that the covers were on from
 * dusk to dawn. Undefined where no pair of probes hangs.
 */
export function coverNights(
  store: Store,
  place: string,
  spots: readonly SpotNow[],
  boundsOf: (night: string) => NightBounds | null,
): PlaceNow['coverNights'] {
  const under = spots.find(({ spot }) => spot === 'under-cover');
  const open = IN_THE_OPEN.map((name) => spots.find(({ spot }) => spot === name)).find(Boolean);
  if (!under || !open) return undefined;
  const lows = new Map(open.nights.map(({ night, low }) => [night, low]));
  const nights = under.nights.filter(({ clearCalm }) => clearCalm === true);
  const first = nights[0];
  const last = nights.at(-1);
  const [begin, end] = [first && boundsOf(first.night), last && boundsOf(last.night)];
  if (!begin || !end) return [];
  const said = store.journal
    .between('covers', begin.sunset - TRUSTED, end.to + 1)
    .filter((entry) => entry.place === place)
    .map(({ t, body }) => ({ t, on: (body as { is: boolean }).is }));
  return nights.flatMap(({ night, low }) => {
    const bounds = boundsOf(night);
    const beside = lows.get(night) ?? null;
    if (bounds === null || low === null || beside === null) return [];
    const before = said.findLast(({ t }) => t <= bounds.sunset);
    const lifted = said.some(({ t, on }) => !on && t > bounds.sunset && t < bounds.sunrise);
    const on = before?.on === true && bounds.sunset - before.t <= TRUSTED;
    return on && !lifted ? [{ gain: low - beside }] : [];
  });
}
