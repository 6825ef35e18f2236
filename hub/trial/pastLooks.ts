import {
  AFTER_RISE,
  type Look,
  lookAt,
  type PlaceNow,
  type Snapshot,
  type Sun,
  sunAround,
} from '../../rules/decide/index.ts';
import { instant, minutes } from '../../rules/units.ts';
import { calendarOf } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import { cropsOf } from '../snapshot/index.ts';
import type { Past } from '../store/index.ts';
import { barePlace } from './barePlace.ts';
import { issuedThen } from './issuedThen.ts';
import { HOUR, MIDDLE, type PastSpot } from './pastSpots.ts';

type Stretch = { readonly from: number; readonly to: number };

/** A look in the middle of each hour: outside air, the sun, and what was forecast of the night then. */
export function pastLooks(
  past: Past,
  farm: Farm,
  spotsOf: (place: string) => PastSpot[],
  { from, to }: Stretch,
): Look[] {
  const calendar = calendarOf(farm.zone);
  const { lat, lon, wage } = farm.file.farm;
  const open = ({ kind }: Farm['places'][number]) => kind === 'outdoor' || kind === 'patch';
  const outdoors: PlaceNow[] = farm.places.filter(open).map((place) => ({
    ...barePlace(farm, place),
    spots: spotsOf(place.id).map(({ spot, probe, temperature, air }) => ({
      ...{ spot, probe, every: minutes(60), nights: [], columns: { temperature }, air },
    })),
  }));
  // Of places in the open: the rules walked here ask for no other night.
  const nights = [calendar.dayOf(from), calendar.add(calendar.dayOf(to), 1)] as const;
  const issued = issuedThen(outdoors.flatMap(({ id }) => past.forecasts(id, ...nights)));
  const crops = cropsOf(farm);
  const looks: Look[] = [];
  const sun = sunThroughTheDay();
  for (let hour = Math.ceil(from / HOUR) * HOUR; hour < to; hour += HOUR) {
    const now = instant(hour + MIDDLE);
    const name = calendar.dayOf(now);
    const snapshot: Snapshot = {
      ...{ now, day: { name, ...calendar.bounds(name) }, farm: { lat, lon, wage } },
      ...{ crops, places: outdoors, probes: [], standing: [] },
    };
    const look = lookAt(snapshot, [], sun(snapshot));
    looks.push({
      ...look,
      forecasts: look.sun === null ? [] : issued(look.sun.night.name, now),
    });
  }
  return looks;
}

/** The sun of a day stays the same but for the morning, when its night becomes the one to come. */
function sunThroughTheDay() {
  let day = '';
  let sun: Sun | null = null;
  let changes = Number.NEGATIVE_INFINITY;
  return (snapshot: Snapshot): Sun | null => {
    const { now } = snapshot;
    if (snapshot.day.name === day && (sun === null || now < changes)) return sun;
    sun = sunAround(snapshot);
    day = snapshot.day.name;
    const turns = sun === null ? 0 : sun.rise + AFTER_RISE;
    changes = now < turns ? turns : snapshot.day.ends;
    return sun;
  };
}
