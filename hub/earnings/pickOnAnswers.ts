import { pickOn } from '../../rules/money/index.ts';
import { median } from '../../rules/statistics/index.ts';
import type { Calendar } from '../clock.ts';
import type { FarmCrop, PickOnAnswer } from '../contract/index.ts';
import { type Pick, seasonPicks } from '../picks/index.ts';
import type { Unit } from './unit.ts';

const DAY = 86_400_000; // ms
const dayNumber = (day: string) => Date.parse(`${day}T00:00:00Z`) / DAY;

export type Asked = Omit<PickOnAnswer, 'words' | 'name' | 'placeName' | 'planner'> & {
  /** kg sold of those counted leave so much each, money; null where no price is known. */
  readonly perKilogram: number | null;
  readonly missing: readonly ('price' | 'lost' | 'minutes')[];
};

/**
 * Whether the next picking is worth its hours, for each place and crop picked in the season that
 * runs. What a kilogram leaves is its newest price less washing and packing it, where the farm file
 * tells what that takes.
 */
export function pickOnAnswers(
  picks: readonly Pick[],
  units: ReadonlyMap<string, Unit>,
  about: {
    readonly now: number;
    readonly wage: number;
    readonly calendar: Calendar;
    readonly crop: (id: string) => FarmCrop | undefined;
  },
): Asked[] {
  const spots = new Map<string, Pick[]>();
  for (const pick of picks) {
    const key = `${pick.place}\n${pick.crop}`;
    spots.set(key, [...(spots.get(key) ?? []), pick]);
  }
  return [...spots.values()].flatMap((own) => {
    const season = seasonPicks(own, about.now);
    return season.length === 0 ? [] : [answer(season, units, about)];
  });
}

function answer(
  season: readonly Pick[],
  units: ReadonlyMap<string, Unit>,
  { now, wage, calendar, crop: cropOf }: Parameters<typeof pickOnAnswers>[2],
): Asked {
  const [first] = season as [Pick];
  const newest = season.at(-1) ?? first;
  const since = calendar.dayOf(first.at);
  const begun = dayNumber(since);
  const crop = cropOf(first.crop);
  const price = newest.price ?? crop?.price ?? null;
  const packing = ((crop?.minutes?.pack ?? 0) / 60) * wage;
  const perKilogram = price === null ? null : Math.max(0, price - packing);
  const pickings = season.flatMap((pick) => {
    const unit = units.get(pick.id);
    if (unit?.lost == null || !unit.minutes) return [];
    const day = dayNumber(calendar.dayOf(pick.at)) - begun;
    return [{ day, kilograms: pick.kg - unit.lost, minutes: unit.minutes }];
  });
  const days = [...new Set(season.map(({ at }) => dayNumber(calendar.dayOf(at))))];
  const gaps = days.slice(1).map((day, i) => day - (days[i] ?? day));
  const usual = gaps.length === 0 ? 0 : Math.round(median(gaps));
  const today = dayNumber(calendar.dayOf(now));
  const nextDay = Math.max(today, (days.at(-1) ?? today) + usual) - begun;
  const found =
    perKilogram === null ? null : pickOn(pickings, { nextDay, perKilogram, wage }, undefined);
  const perHour =
    found?.perHour == null || found.low === null || found.high === null
      ? null
      : { expected: found.perHour, low: found.low, high: found.high };
  const gapsOf = (field: 'lost' | 'minutes') =>
    season.some(({ id }) => units.get(id)?.missing.includes(field)) ? [field] : [];
  return {
    ...{ place: first.place, crop: first.crop, since },
    ...{ pickings: season.length, leftOut: season.length - pickings.length },
    next: calendar.add(since, nextDay),
    ...{ verdict: found?.verdict ?? 'cannot-tell', perHour },
    speed:
      perHour === null || !perKilogram
        ? null
        : {
            expected: perHour.expected / perKilogram,
            low: perHour.low / perKilogram,
            high: perHour.high / perKilogram,
          },
    breakEvenSpeed: found?.breakEvenSpeed ?? null,
    perKilogram,
    missing: [
      ...(price === null ? (['price'] as const) : []),
      ...gapsOf('lost'),
      ...gapsOf('minutes'),
    ],
  };
}
