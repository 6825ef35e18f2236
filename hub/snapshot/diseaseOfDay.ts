import {
  type DiseaseHours,
  dayOfWeek,
  diseaseDay,
  diseaseHours,
  noonToNoon,
} from '../../rules/days/index.ts';
import { type Circumstances, diseasesOf } from '../../rules/disease/index.ts';
import { type Instant, instant } from '../../rules/units.ts';
import {
  type AirRead,
  signsByHumidity,
  type WetRule,
  type Window,
  wetPieces,
} from '../../rules/wetness/index.ts';
import type { Calendar } from '../clock.ts';
import type { FarmPlace } from '../contract/index.ts';
import type { Farm } from '../farm/index.ts';
import { firstAt } from './firstAt.ts';
import { nightBounds } from './nights.ts';

const HOUR = 3_600_000; // ms
const DAY = 24 * HOUR;
/** A spell that reaches into a day may have begun this long before it. Ours, as for other days. */
const SPELL = 3 * DAY;
const WEEK = 7;

type Of = {
  readonly wet: WetRule & { readonly maxGapMinutes: number };
  readonly diseases: readonly string[];
  readonly place: FarmPlace;
  readonly farm: Farm;
  readonly calendar: Calendar;
};

/** Minutes by which standard time is ahead of UTC: summer time would move the noon twice a year. */
const standardOffset = (calendar: Calendar, day: string) => {
  const year = day.slice(0, 4);
  const at = (date: string) => calendar.offsetMinutes(calendar.bounds(`${year}-${date}`).begins);
  return Math.min(at('01-01'), at('07-01'));
};

/**
 * Hours that suited a disease of a crop, in the disease day (noon to noon) that ends on a calendar
 * day. Trays hold leaves, so flowers are taken for closed.
 * @param air of one spot, from eleven days before
 */
export function diseaseOfDay(air: readonly AirRead[], of: Of, day: string): DiseaseHours | null {
  const diseases = diseasesOf(of.diseases, []);
  if (diseases.length === 0) return null;
  const { begins, ends } = of.calendar.bounds(day);
  const noon = instant((begins + ends) / 2);
  const window = noonToNoon(instant(noon - DAY / 2), standardOffset(of.calendar, day));
  const circumstances = (of7: Window, week: Circumstances['week']): Circumstances => {
    const from = instant(of7.from - SPELL);
    const near = air.slice(firstAt(air, from), firstAt(air, of7.to + HOUR));
    const reads = near.filter(
      ({ temperature, humidity }) => temperature !== null && humidity !== null,
    );
    const sun = nightBounds(of.farm, of.calendar, of.calendar.dayOf(of7.to));
    const midnight = of7.to - DAY / 2;
    const calendarDay = (back: number): Window => ({
      from: instant(midnight - back * DAY),
      to: instant(midnight - (back - 1) * DAY),
    });
    return {
      day: of7,
      wetness: wetPieces(
        signsByHumidity(reads, of.wet),
        { from, to: of7.to },
        {
          maxGapMinutes: of.wet.maxGapMinutes,
        },
      ),
      air: near,
      maxGapMinutes: of.wet.maxGapMinutes,
      outdoors: of.place.kind === 'outdoor' || of.place.kind === 'patch',
      dark: sun === null ? null : { from: sun.sunset as Instant, to: sun.sunrise as Instant },
      sunrise: (sun?.sunrise as Instant | undefined) ?? null,
      calendarDays: [calendarDay(2), calendarDay(1)],
      week,
      flowering: false,
      confirmed: [],
    };
  };
  const week = Array.from({ length: WEEK }, (_, i) => {
    const back = (WEEK - 1 - i) * DAY;
    const one = { from: instant(window.from - back), to: instant(window.to - back) };
    return dayOfWeek(diseaseDay(circumstances(one, []), [], { event: null, looked: null }));
  });
  return diseaseHours(circumstances(window, week), diseases);
}
