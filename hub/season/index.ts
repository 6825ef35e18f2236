import type { NightForecast, PatchNow, Snapshot, SpotPrior } from '../../rules/decide/index.ts';
import type { Backtest, CutBack, Day, FarmPlace, FrostOutlook } from '../contract/index.ts';
import type { Picked } from '../picks/index.ts';
import { nightBounds, type Snapshots } from '../snapshot/index.ts';
import type { DayRow, StationRow } from '../store/index.ts';
import { patchEntries } from './fruit.ts';
import { makeJobs } from './jobs.ts';
import { frostOutlook } from './outlook.ts';
import { CROP, type PatchFacts, patchFacts } from './patchFacts.ts';
import { planOf } from './plan.ts';
import {
  distanceFrom,
  makeSiteRecord,
  type SeasonParts,
  type SiteRecord,
  stationFor,
} from './siteRecord.ts';
import { spotPrior } from './spotPrior.ts';
import { tryOut } from './tryOut.ts';

export { distanceFrom, stationFor };
export type Season = ReturnType<typeof makeSeason>;

/** What the season brings: odds of frost by date, and when to clear a patch. Worked out when asked, and kept. */
export function makeSeason(
  parts: Omit<SeasonParts, 'spots' | 'calm' | 'daysOf'> & {
    readonly snapshots: Snapshots;
    readonly now: () => number;
    /** Pickings of a patch this season, as somebody wrote them down. */
    readonly picked: (place: FarmPlace, t: number) => readonly Picked[];
    readonly onFault: (error: unknown) => void;
  },
) {
  const { store, farm, calendar, snapshots, now, picked, onFault } = parts;
  // Read, or worked out, once: eleven thousand days, and two hundred evenings.
  const calm = new Map<string, boolean>();
  const read = new Map<string, { importedAt: number; days: readonly DayRow[] }>();
  const daysOf = ({ id, importedAt }: StationRow): readonly DayRow[] => {
    const kept = read.get(id);
    if (kept?.importedAt === importedAt) return kept.days;
    const days = store.stations.days(id);
    read.set(id, { importedAt, days });
    return days;
  };
  const sites = new Map<string, { key: string; site: SiteRecord }>();
  const patches = new Map<string, { key: string; facts: PatchFacts }>();
  const jobs = makeJobs(now);
  let lastFarm: unknown;
  let farmCount = 0;

  /** Changes when anything changes that a place's record is made of; another process may import. */
  const keyAt = (t: number) => {
    const day = calendar().dayOf(t);
    const ended = (nightBounds(farm(), calendar(), day)?.to ?? 0) <= t; // a night more is known then
    if (farm() !== lastFarm) {
      lastFarm = farm();
      calm.clear();
      farmCount += 1;
    }
    const stations = store.stations.all().map(({ id, importedAt }) => `${id}@${importedAt}`);
    return [farmCount, day, ended, ...stations].join(' ');
  };

  const siteOf = (place: string, t: number): { key: string; site: SiteRecord } => {
    const key = keyAt(t);
    const kept = sites.get(place);
    if (kept?.key === key) return kept;
    const made = {
      key,
      site: makeSiteRecord({ ...parts, spots: snapshots.spots, calm, daysOf }, place, t),
    };
    sites.set(place, made);
    return made;
  };

  const factsOf = (place: FarmPlace, t: number): PatchFacts => {
    const { key: siteKey, site } = siteOf(place.id, t);
    const entries = patchEntries(store, place.id);
    const own = picked(place, t);
    const key = `${siteKey} ${JSON.stringify(entries)} ${JSON.stringify(own)}`;
    const kept = patches.get(place.id);
    if (kept?.key === key) return kept.facts;
    const today = calendar().dayOf(t);
    // What the hub has made of past days by now; it goes on making them meanwhile.
    const days = store.placeFacts
      .days(place.id, '', today)
      .map((row): Day => JSON.parse(row.facts));
    const facts = patchFacts(
      site,
      days,
      { ...entries, picked: own },
      place,
      farm(),
      calendar(),
      today,
    );
    patches.set(place.id, { key, facts });
    return facts;
  };

  const prior = new Map<
    string,
    { key: string; known: { spot: string; prior: SpotPrior } | null }
  >();
  const priorOf = (place: string, t: number) => {
    const { key, site } = siteOf(place, t);
    const kept = prior.get(place);
    if (kept?.key === key) return kept.known;
    const found = site.spot === null ? null : spotPrior(site, calendar(), t);
    const known = found && site.spot ? { spot: site.spot, prior: found } : null;
    prior.set(place, { key, known });
    return known;
  };

  const inTheOpen = () =>
    farm().places.filter(({ kind }) => kind === 'patch' || kind === 'outdoor');
  const planned = () => farm().places.filter(({ kind, crop }) => kind === 'patch' && crop === CROP);

  return {
    /** Places with odds of frost, and patches with a plan. */
    inTheOpen,
    planned,
    outlook: (place: FarmPlace, t: number): FrostOutlook =>
      frostOutlook(siteOf(place.id, t).site, place, farm(), calendar(), t),
    plan: (place: FarmPlace, t: number, forecasts: readonly NightForecast[]): CutBack =>
      planOf(factsOf(place, t), place, farm(), calendar(), forecasts),
    backtest: {
      of: jobs.of,
      cancel: (place: string): Backtest => jobs.cancel(place),
      start: (place: FarmPlace, t: number): Backtest =>
        jobs.start(place.id, () => tryOut(siteOf(place.id, t).site, factsOf(place, t), calendar())),
    },
    /**
     * A snapshot with what is known of each patch, for the rule that decides on clearing it, and
     * with a station's nights where a spot in the open has too few of its own.
     */
    with(snapshot: Snapshot): Snapshot {
      const patches = new Map<string, PatchNow>();
      const priors = new Map<string, { spot: string; prior: SpotPrior }>();
      const attempt = (work: () => void) => {
        try {
          work();
        } catch (error) {
          onFault(error); // one place that cannot be told of does not stop the look
        }
      };
      for (const place of planned())
        attempt(() => patches.set(place.id, factsOf(place, snapshot.now).now));
      for (const { id } of inTheOpen())
        attempt(() => {
          const known = priorOf(id, snapshot.now);
          if (known) priors.set(id, known);
        });
      if (patches.size + priors.size === 0) return snapshot;
      return {
        ...snapshot,
        places: snapshot.places.map((place) => {
          const patch = patches.get(place.id);
          const known = priors.get(place.id);
          return {
            ...place,
            ...(patch === undefined ? {} : { patch }),
            spots: place.spots.map((spot) =>
              known?.spot === spot.spot ? { ...spot, prior: known.prior } : spot,
            ),
          };
        }),
      };
    },
    close: jobs.cancelAll,
  };
}
