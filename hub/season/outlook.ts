import {
  countedWithin,
  damageLimit,
  type FrostHistory,
  frostCameBy,
  frostComesAfter,
  frostWithin,
  type NightLowOf,
  riskOverYears,
  type SiteFrost,
  seasonDay,
  weibullQuantile,
} from '../../rules/frost/index.ts';
import { studentQuantile } from '../../rules/statistics/index.ts';
import type { Calendar } from '../clock.ts';
import type { FarmPlace, FrostOutlook, FrostSide } from '../contract/index.ts';
import { damageAt, type Farm } from '../farm/index.ts';
import type { SiteRecord } from './siteRecord.ts';

const FROST = 0; // °C
const AHEAD = [7, 14, 30]; // days
const MARGIN = 14; // days of the curve beyond the first and last date
const OUTER = 0.1; // chance of a date before the early one, and after the late one
/** Season days in which frost may be missed when nobody measures: from 1 September, 1 March. */
const OPENS = { north: 62, south: 59 } as const;

/** °C below which what stands there is hurt: as told, else by the crop; null for a place without one. */
export function damageOf(farm: Farm, place: FarmPlace): number | null {
  const told = damageAt(farm, place);
  if (told !== null) return told.at;
  if (place.crop === 'strawberry')
    return damageLimit('strawberry', 'green-fruit')?.critical ?? null;
  return place.kind === 'patch' ? (farm.crop(place.crop)?.chill ?? null) : null;
}

/** The season's odds of frost at one place, by date. */
export function frostOutlook(
  site: SiteRecord,
  place: FarmPlace,
  farm: Farm,
  calendar: Calendar,
  now: number,
): FrostOutlook {
  const day = calendar.dayOf(now);
  const { season, day: q, half } = seasonDay(day, site.hemisphere);
  const begins = `${String(season).padStart(4, '0')}-${site.hemisphere === 'north' ? '07' : '01'}-01`;
  const dated = (at: number) => calendar.add(begins, Math.round(at));
  const damage = damageOf(farm, place);
  const limits = [
    { what: 'frost' as const, at: FROST },
    ...(damage === null || damage === FROST ? [] : [{ what: 'damage' as const, at: damage }]),
  ];
  const main = site.frost(FROST, half === 'autumn' ? 'first' : 'last').fitted;
  return {
    place: place.id,
    name: place.name,
    spot: site.spot,
    day,
    hemisphere: site.hemisphere,
    station:
      site.station === null || main.way === 'own'
        ? null
        : {
            id: site.station.id,
            name: site.station.name,
            distance: Math.round(site.station.distance * 10) / 10,
          },
    nights: site.own.filter(({ low }) => low !== null).length,
    fitted: main,
    limits: limits.map(({ what, at }) => {
      const soFar = firstSoFar(site, at, { season, q, calendar, begins });
      const sides = { q, dated, noStation: site.station === null };
      return {
        ...{ what, at, soFar },
        current: half === 'spring' || soFar.came !== null ? ('last' as const) : ('first' as const),
        first: sideOf(site.frost(at, 'first'), 'first', { ...sides, came: soFar.came !== null }),
        last: sideOf(site.frost(at, 'last'), 'last', { ...sides, came: false }),
      };
    }),
  };
}

/** Whether this season's first frost has come: by the own nights; where none, by the station's. */
function firstSoFar(
  site: SiteRecord,
  limit: number,
  {
    season,
    q,
    calendar,
    begins,
  }: { season: number; q: number; calendar: Calendar; begins: string },
) {
  const at = site.frost(limit, 'first').atStation ?? limit;
  const lows = new Map<string, { low: number; limit: number }>();
  const put = (nights: readonly NightLowOf[], against: number) => {
    for (const { night, low } of nights)
      if (low !== null && night >= begins && seasonDay(night, site.hemisphere).season === season)
        lows.set(night, { low, limit: against });
  };
  put(
    site.days.map(({ day, min }) => ({ night: day, low: min })),
    at,
  );
  put(site.own, limit); // own nights say it better
  const frosts = [...lows].filter(([, { low, limit: against }]) => low <= against);
  const came = frosts.map(([night]) => night).sort()[0] ?? null;
  let unknownNights = 0;
  for (let each = OPENS[site.hemisphere]; each < q; each += 1)
    if (!lows.has(calendar.add(begins, each))) unknownNights += 1;
  return { came, unknownNights };
}

type Sides = { q: number; dated: (at: number) => string; noStation: boolean; came: boolean };

function sideOf({ history, seasons }: SiteFrost, side: 'first' | 'last', at: Sides): FrostSide {
  const { q, dated, noStation, came } = at;
  const first = side === 'first';
  const by = first ? frostCameBy : frostComesAfter;
  const today = by(history, q);
  const counted = (days: number) =>
    first ? countedWithin(history, q, days) : countedAfter(history, q + days);
  return {
    seasons: history.known,
    withFrost: history.dates.length,
    way: history.way,
    missing: history.way !== 'unknown' ? [] : noStation ? ['station-record'] : ['more-years'],
    dates: outerDates(history, dated),
    past: seasons.map(({ season, day }) => ({ season, day: day === null ? null : dated(day) })),
    curve: curveOf(history, q).map((each) => ({ day: dated(each), p: by(history, each) ?? 0 })),
    ahead: AHEAD.map((days) => ({
      ...{ days, day: dated(q + days) },
      p: came ? null : first ? frostWithin(history, q, days) : by(history, q + days),
      counted: came ? null : counted(days),
    })),
    today: { p: today, in5: riskOverYears(today, 5), in10: riskOverYears(today, 10) },
  };
}

const countedAfter = ({ way, dates, known }: FrostHistory, day: number) =>
  way === 'unknown' ? null : (dates.filter((date) => date > day).length + 0.5) / (known + 1);

/** Every season day worth drawing: round the dates, and today where it is near them. */
function curveOf({ way, dates }: FrostHistory, q: number): number[] {
  const [first] = dates;
  const last = dates.at(-1);
  if (way === 'unknown' || first === undefined || last === undefined) return [];
  let from = Math.round(first) - MARGIN;
  let to = Math.round(last) + MARGIN;
  if (q < from && from - q <= 60) from = q;
  if (q > to && q - to <= 60) to = q;
  const days = Array.from({ length: to - from + 1 }, (_, index) => from + index);
  return days.filter((day) => day >= 0 && day <= 365);
}

function outerDates({ way, dates, curve }: FrostHistory, dated: (at: number) => string) {
  if (way === 'unknown' || dates.length === 0) return null;
  const at = (p: number) =>
    curve === null
      ? weibullQuantile(dates, p)
      : curve.mean + studentQuantile(p, curve.df) * curve.sd;
  const [early, middle, late] = [at(OUTER), at(0.5), at(1 - OUTER)];
  if (early === null || middle === null || late === null) return null;
  return { early: dated(early), middle: dated(middle), late: dated(late) };
}
