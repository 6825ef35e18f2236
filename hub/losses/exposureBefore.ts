import {
  EXPOSURE_DAYS,
  type Exposure,
  type ExposureDay,
  type HoursPast,
  weekExposure,
} from '../../rules/losses/index.ts';
import type { Bounds } from '../../rules/wetness/index.ts';
import { type DayHours, hoursPast, limitsAt } from './hoursPast.ts';
import type { LossParts } from './lossParts.ts';
import { addDays } from './weeks.ts';

export type Exposures = Readonly<Partial<Record<Exposure, Bounds>>>;

const NO_DAY: ExposureDay = {
  min: null,
  max: null,
  wetHours: null,
  unknownHours: 24,
  longestSpellHours: null,
  botrytisIndex: null,
};
const NO_HOURS: DayHours = { hot: 0, cold: 0, unknown: 24 };

/** What places went through before given days; each place's past is read once for the whole range. */
export function exposureBefore(
  parts: LossParts,
  range: { readonly from: string; readonly to: string },
  now: number,
) {
  const pasts = new Map<string, ReturnType<typeof pastOf>>();
  const pastOf = (place: string) => {
    const from = addDays(range.from, -EXPOSURE_DAYS);
    const days = new Map(parts.days(place, from, range.to, now).map((day) => [day.day, day]));
    const hours = hoursPast(parts, place, { from, to: range.to }, now);
    return { days, hours, limits: limitsAt(parts.farm(), place) };
  };
  /** The seven days before `day`, that one not among them. */
  return (place: string, day: string): Exposures => {
    let past = pasts.get(place);
    if (!past) {
      past = pastOf(place);
      pasts.set(place, past);
    }
    const { days, hours, limits } = past;
    const names = Array.from({ length: EXPOSURE_DAYS }, (_, i) => addDays(day, i - EXPOSURE_DAYS));
    const found = names.map((name) => hours.get(name) ?? NO_HOURS);
    const sum = (of: (hours: DayHours) => number) => found.reduce((all, one) => all + of(one), 0);
    const past7 = (limit: number | null, of: (hours: DayHours) => number): HoursPast | null =>
      limit === null ? null : { known: sum(of), unknown: sum(({ unknown }) => unknown) };
    return weekExposure(
      names.map((name) => days.get(name) ?? NO_DAY),
      {
        hot: past7(limits.hotAbove, ({ hot }) => hot),
        cold: past7(limits.coldBelow, ({ cold }) => cold),
      },
    );
  };
}
