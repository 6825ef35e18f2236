import { comparePlaces, harmPerHour, placeTally, saysOf } from '../../rules/days/index.ts';
import type { CropPlaces, Decision, Snapshot, TraysStanding } from '../../rules/decide/index.ts';
import type { Batches } from '../batches/index.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import type { Growing } from '../growing/index.ts';
import { placeRule, type Snapshots } from '../snapshot/index.ts';
import type { Store } from '../store/index.ts';
import type { Task } from '../tasks/index.ts';
import { makeBatchHarms } from './batchHarms.ts';
import { gaveThere } from './gaveThere.ts';
import { sameWeeks } from './sameWeeks.ts';
import { holdsTrays, type ShadeSaid, standingTrays, trayPlaces } from './standing.ts';

const DAY = 86_400_000; // ms
/** Days compared, unless asked for others. Ours. */
export const USUAL_DAYS = 10;
/** Days in which nights with the vents open and shut are looked for. Ours. */
const PAST_DAYS = 45;
/** By then the day before is over for every probe. Ours: longer than a day waits to be joined. */
const LATEST_JOINED = 3 * 3_600_000; // ms

export type PlacesComparedParts = {
  readonly store: Store;
  readonly farm: () => Farm;
  readonly calendar: () => Calendar;
  readonly snapshots: Snapshots;
  readonly batches: Batches;
  readonly growing: Growing;
  /** Open tasks. */
  readonly open: () => readonly Pick<Decision, 'kind' | 'place' | 'subject' | 'because'>[];
  /** Tasks of a kind that ended since then. */
  readonly ended: (kind: Task['kind'], since: number) => readonly Pick<Task, 'place' | 'answer'>[];
  readonly onFault: (error: unknown) => void;
};
export type PlacesCompared = ReturnType<typeof makePlacesCompared>;

/** Where trays stand, what each place was to their crop, and what batches gave there. */
export function makePlacesCompared(parts: PlacesComparedParts) {
  const { store, farm, calendar, snapshots, batches, growing, onFault } = parts;
  const { climate } = snapshots;
  const harms = makeBatchHarms(climate, calendar);

  const standing = (now: number): TraysStanding[] => {
    const tasks = parts.open().filter(({ kind }) => kind === 'move-trays');
    return standingTrays(
      {
        store,
        farm: farm(),
        batches: batches.all(),
        ready: (batch) => growing.later(batch, now),
        askedTo: (place, batch) =>
          destination(tasks.find((task) => task.place === place && task.subject === batch)),
      },
      now,
    );
  };
  const lastDays = (days: number, now: number) => {
    const to = calendar().add(calendar().dayOf(now), -1);
    return { from: calendar().add(to, 1 - days), to };
  };
  const daysSince = (first: string | null, now: number) => {
    if (first === null) return 0;
    const begun = calendar().bounds(first).begins;
    return Math.round((calendar().bounds(calendar().dayOf(now)).begins - begun) / DAY);
  };
  const pastOf = (crop: string, now: number) => {
    const { from, to } = lastDays(PAST_DAYS, now);
    const outside = farm().outside?.id;
    return {
      past: farm()
        .places.filter((place) => holdsTrays(place) && place.vents)
        .map(({ id }) => ({ place: id, days: climate.of(id, crop, from, to, now) })),
      pastOutside: outside === undefined ? [] : climate.of(outside, crop, from, to, now),
    };
  };
  const shadeSaid = (now: number): ShadeSaid => {
    const since = calendar().bounds(lastDays(USUAL_DAYS, now).from).begins;
    const said = store.journal
      .between('shade', since, now + 1)
      .filter(({ body }) => (body as { is: boolean }).is);
    const refused = parts.ended('shade', since).filter(({ answer }) => answer === 'no');
    return (place) => {
      const days = said
        .filter((entry) => entry.place === place)
        .map(({ t }) => calendar().dayOf(t));
      return {
        shadedDays: new Set(days).size,
        notShaded: refused.some((task) => task.place === place),
      };
    };
  };
  const share = (crop: string, now: number, atOnce: number) =>
    harmPerHour(harms(batches.all(), crop, now, atOnce));

  type Days = Omit<CropPlaces, 'share'>;
  const kept = new Map<string, { readonly of: string; readonly farm: Farm; readonly days: Days }>();
  /** Whole days of every place for a crop: the same objects until one of them is another. */
  const cropDays = (crop: string, now: number): Days => {
    const { from, to } = lastDays(USUAL_DAYS, now);
    const over = now >= calendar().bounds(calendar().dayOf(now)).begins + LATEST_JOINED;
    const of = `${to} ${over} ${climate.version()}`;
    const known = kept.get(crop);
    if (over && known?.of === of && known.farm === farm()) return known.days;
    const outside = farm().outside?.id;
    const days: Days = {
      crop,
      places: farm()
        .places.filter(holdsTrays)
        .map(({ id }) => ({ place: id, days: climate.of(id, crop, from, to, now) })),
      outside: outside === undefined ? [] : climate.of(outside, crop, from, to, now),
      ...pastOf(crop, now),
    };
    // Reading them may have worked out days anew: what is kept goes by what is there now.
    kept.set(crop, { of: `${to} ${over} ${climate.version()}`, farm: farm(), days });
    return days;
  };
  const cropPlaces = (crop: string, now: number): CropPlaces => ({
    ...cropDays(crop, now),
    share: share(crop, now, 1),
  });

  return {
    /** A snapshot with the trays that stand, and the last days of every place as their crops see them. */
    with(snapshot: Snapshot): Snapshot {
      try {
        const { now } = snapshot;
        const shaded = (place: string) => {
          const said = store.journal.newestOf(place, 'shade');
          return said && said.t >= snapshot.day.begins ? (said.body as { is: boolean }).is : null;
        };
        const places = snapshot.places.map((place) =>
          place.kind === 'tunnel' ? { ...place, shaded: shaded(place.id) } : place,
        );
        const all = standing(now);
        const trays = all.filter(({ crop }) => farm().crop(crop)?.band !== undefined);
        if (trays.length === 0) return { ...snapshot, places };
        const crops = [...new Set(trays.map(({ crop }) => crop))];
        return {
          ...snapshot,
          places,
          trays: {
            standing: trays,
            places: trayPlaces(farm(), all, shadeSaid(now)),
            crops: crops.map((crop) => cropPlaces(crop, now)),
          },
        };
      } catch (error) {
        onFault(error); // what cannot be told of trays does not stop the look
        return snapshot;
      }
    },

    /** Crops that places can be compared for, those that stand somewhere first. */
    crops(now: number): string[] {
      const stand = new Set(standing(now).map(({ crop }) => crop));
      const known = farm().file.crops.filter(({ band }) => band !== undefined);
      return known.map(({ id }) => id).sort((a, b) => Number(stand.has(b)) - Number(stand.has(a)));
    },

    /** All that is known of the places for one crop: see the contract's PlacesCompared. */
    compare(crop: string, days: number, now: number) {
      const { from, to } = lastDays(days, now);
      const trays = standing(now);
      const room = trayPlaces(farm(), trays, shadeSaid(now));
      const own = batches.all().filter((batch) => batch.crop === crop);
      const past = growing.crop(crop).past;
      const places = farm()
        .places.filter(holdsTrays)
        .map((place) => {
          const lately = climate.of(place.id, crop, from, to, now);
          const before = sameWeeks(snapshots, calendar(), place.id, crop, { from, to }, now);
          const holds = room.find(({ id }) => id === place.id);
          return {
            place,
            rule: placeRule(farm(), place.id, crop),
            lately,
            before,
            daysKept: daysSince(snapshots.days.firstDay(place.id), now),
            tally: placeTally(lately),
            tallyBefore: placeTally(before.flatMap((year) => year.days)),
            standing: trays.filter((stand) => stand.place === place.id),
            room: holds?.standing ?? 0,
            free:
              holds === undefined || holds.capacity === null
                ? null
                : Math.max(0, holds.capacity - holds.standing),
            gave: gaveThere(own, past, place.id, now),
          };
        });
      const pairs = places.flatMap((a, i) =>
        places.slice(i + 1).map((b) => {
          const difference = comparePlaces(a.lately, b.lately);
          const before = comparePlaces(
            a.before.flatMap((year) => year.days),
            b.before.flatMap((year) => year.days),
          );
          return { from: a.place, to: b.place, difference, before, says: saysOf(difference) };
        }),
      );
      return { from, to, places, pairs, share: share(crop, now, 5) };
    },
  };
}

/** Where a task asks to carry trays: the id stands beside the name. */
export const destination = (task: Pick<Decision, 'because'> | undefined): string | null => {
  const to = task?.because.find(({ what }) => what === 'move-to');
  const id = to?.inputs?.find(({ what }) => what === 'place')?.value;
  return typeof id === 'string' ? id : null;
};
