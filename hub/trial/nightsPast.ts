import { harmPerHour, type PlaceDay, placeHours } from '../../rules/days/index.ts';
import type { Look, PlaceNow, Snapshot, TraysStanding } from '../../rules/decide/index.ts';
import { calendarOf } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import { diseaseOfDay, longestGap, placeRule, usualVents } from '../snapshot/index.ts';
import { HOUR, type PastSpot } from './pastSpots.ts';

/** Nights that speak, as in nightAir: nobody is taken to have left the vents open, so more say the same. */
const NEWEST = 7;
const ABOUT = 12 * HOUR; // readings before and after a day that say whether leaves were wet; ours
const GUESS = harmPerHour([]); // batches are left out of a trial

/** What of a place's nights the rules weigh, day by day of the past. */
export type NightsPast = {
  /** How its vents stand where nobody says: as is usual, where the farm file tells that; else null. */
  readonly vents: (look: Look) => Pick<PlaceNow, 'opened' | 'asUsual' | 'airing'> | null;
  /** Its trays, and what the nights before were like; nothing where no such trays are told. */
  readonly trays: (snapshot: Snapshot) => Pick<Snapshot, 'trays'>;
};

type DaysOf = (day: string) => PlaceDay[];
/** The open air as a crop sees it is the same for every place of one walk, which has a farm of its own. */
const openAir = new WeakMap<Farm, Map<string, DaysOf>>();

/** The nights of one place, made from the hours kept as the hub makes its own from readings. */
export function nightsPast(
  farm: Farm,
  place: Farm['places'][number],
  spotsOf: (place: string) => readonly PastSpot[],
): NightsPast {
  const calendar = calendarOf(farm.zone);
  const { crop: cropId, trays: count } = place;
  const crop = cropId === undefined ? undefined : farm.crop(cropId);
  const outside = farm.outside?.id;

  /** One day of a place, worked out once. */
  const daysOf = (placeId: string) => {
    const made = new Map<string, PlaceDay>();
    const own = farm.place(placeId);
    const rule = cropId === undefined ? null : placeRule(farm, placeId, cropId);
    const spots = spotsOf(placeId);
    return (day: string): PlaceDay[] => {
      const known = made.get(day);
      if (known) return [known];
      if (own === undefined || rule === null) return [];
      const { begins, ends } = calendar.bounds(day);
      const spot = spots.find(({ air }) => (air[firstFrom(air, begins)]?.t ?? ends) < ends);
      const air = spot?.air ?? [];
      const wet = { ...rule.wet, maxGapMinutes: longestGap(HOUR) };
      const near = air.slice(firstFrom(air, begins - ABOUT), firstFrom(air, ends + ABOUT));
      const of = { wet, diseases: crop?.disease ?? [], place: own, farm, calendar };
      const one: PlaceDay = {
        day,
        ...placeHours(near, { ...rule, wet }, { from: begins, to: ends }),
        disease: spot === undefined || of.diseases.length === 0 ? null : diseaseOfDay(air, of, day),
      };
      made.set(day, one);
      return [one];
    };
  };
  const here = daysOf(place.id);
  const shared = openAir.get(farm) ?? new Map<string, DaysOf>();
  openAir.set(farm, shared);
  const open = shared.get(cropId ?? '') ?? (outside === undefined ? () => [] : daysOf(outside));
  shared.set(cropId ?? '', open);

  const usual = lastOf((day: string) => usualVents(farm, calendar, place.id, day));
  const traysOn = lastOf((day: string): Pick<Snapshot, 'trays'> => {
    if (cropId === undefined || crop?.band === undefined || !count) return {};
    const days = Array.from({ length: NEWEST }, (_, i) => calendar.add(day, i - NEWEST));
    const standing: TraysStanding = {
      ...{
        batch: null,
        crop: cropId,
        cropName: crop.name ?? cropId,
        place: place.id,
        trays: count,
      },
      ...{ daysLeft: null, daysFrom: 'guess', mouldy: false, movedAt: null, left: [] },
      ...{ minutes: null, askedTo: null },
    };
    const nights = {
      past: [{ place: place.id, days: days.flatMap(here) }],
      pastOutside: days.flatMap(open),
    };
    const crops = [{ crop: cropId, places: [], outside: [], ...nights, share: GUESS }];
    return { trays: { standing: [standing], places: [], crops } };
  });
  return {
    vents({ now, snapshot }) {
      const airing = place.vents && place.airing !== undefined ? usual(snapshot.day.name) : null;
      if (airing === null) return null;
      return { airing, asUsual: true, opened: now >= airing.opens && now < airing.shuts };
    },
    trays: ({ day }) => traysOn(day.name),
  };
}

/** The looks go on day by day: the last one's is kept. */
function lastOf<T>(make: (day: string) => T) {
  let last = '';
  let made: T | undefined;
  return (day: string): T => {
    if (made === undefined || day !== last) made = make(day);
    last = day;
    return made;
  };
}

function firstFrom(air: PastSpot['air'], from: number): number {
  let [low, high] = [0, air.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((air[middle]?.t ?? 0) < from) low = middle + 1;
    else high = middle;
  }
  return low;
}
