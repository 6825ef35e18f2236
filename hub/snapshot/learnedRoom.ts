import type { PlaceNow, SpotNow } from '../../rules/decide/index.ts';
import type { Instant } from '../../rules/units.ts';
import type { Calendar } from '../clock.ts';
import type { RoomLearned } from './rooms.ts';
import { supplyPlan } from './supplyPlan.ts';
import { withPowerNow } from './usualHours.ts';

const HEARD = 30 * 60_000; // ms, as for every reading that is decided on

type CoolRoom = NonNullable<PlaceNow['coolRoom']>;

/** What was learned of a cool room as the rules take it; hours that were learned stand as a plan. */
export function learnedRoom(
  { habits, energyDays, usual, filled }: RoomLearned,
  spots: readonly SpotNow[],
  calendar: Calendar,
  now: Instant,
): Pick<CoolRoom, 'habits' | 'energyDays' | 'filled' | 'usual' | 'supply'> {
  const known = { habits, energyDays, filled };
  if (usual === null) return known;
  const power = spots.find(({ columns }) => columns.power !== undefined)?.columns.power;
  const plan = supplyPlan(usual.hours, calendar, now);
  // Without a meter that is heard now nothing learned from it holds: the supply counts as always on.
  const newest = power?.t.findLast((t) => t <= now);
  if (power === undefined || newest === undefined || now - newest > HEARD) return known;
  return { ...known, usual, supply: withPowerNow(plan, power, now) };
}
