import { fallsEvenly, isClearCalm, type NightLowOf } from '../../rules/frost/index.ts';
import type { MaybeTemperature } from '../../rules/heat/index.ts';
import { celsius, instant } from '../../rules/units.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import { nightBounds, type Spots } from '../snapshot/index.ts';
import type { DayRow } from '../store/index.ts';

const EVENING = 2 * 3_600_000; // ms
/** The latest nights that both have: a tree that grew since is in them. Ours. */
const MOST = 200;

/**
 * Own low less station low on clear, calm nights that both have, K. Whether a night was clear and
 * calm the station's own hours tell; else the probes outside do; and where no ground probe or rain
 * gauge hangs, the way the evening cools.
 */
export function calmDifferences(
  parts: { spots: Spots; farm: Farm; calendar: Calendar; calm: Map<string, boolean> },
  place: string,
  spot: string,
  own: readonly NightLowOf[],
  station: ReadonlyMap<string, DayRow>,
): number[] {
  const shared = own
    .flatMap(({ night, low }) => {
      const there = station.get(night);
      return low === null || there === undefined || there.min === null
        ? []
        : [{ night, differs: low - there.min, calm: there.calm }];
    })
    .slice(-MOST);
  return shared
    .filter(({ night, calm }) => {
      if (calm !== null) return calm;
      const key = `${place} ${spot} ${night}`;
      const seen = parts.calm.get(key) ?? seenCalm(parts, place, spot, night);
      parts.calm.set(key, seen);
      return seen;
    })
    .map(({ differs }) => differs);
}

function seenCalm(
  { spots, farm, calendar }: { spots: Spots; farm: Farm; calendar: Calendar },
  place: string,
  spot: string,
  night: string,
): boolean {
  const sunset = nightBounds(farm, calendar, night)?.sunset;
  if (sunset === undefined) return false;
  const [from, to] = [sunset, sunset + EVENING];
  const points = (where: string, name: string, quantity: string) =>
    spots.points(where, name, quantity, from, to + 1);
  const air = (where: string, name: string): MaybeTemperature[] =>
    points(where, name, 'temperature').map(({ t, value }) => ({
      t: instant(t),
      value: celsius(value),
    }));
  const outside = farm.outside?.id;
  const screen = outside === undefined ? [] : air(outside, 'air');
  const evening = screen.length > 0 ? screen : air(place, spot);
  const ground = outside === undefined ? [] : air(outside, 'grass');
  const fallen = outside === undefined ? [] : points(outside, 'air', 'rain');
  const rain = fallen.length === 0 ? null : fallen.reduce((sum, { value }) => sum + value, 0);
  const calm = isClearCalm({ sunset: instant(sunset), air: evening, ground, rain });
  return calm ?? fallsEvenly(evening, instant(sunset)) ?? false;
}
