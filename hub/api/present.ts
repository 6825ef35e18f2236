import type { NightForecast as Night } from '../../rules/decide/index.ts';
import { rank } from '../../rules/decide/index.ts';
import { standingAt } from '../batches/index.ts';
import type {
  FarmPlace,
  NightForecast,
  PlaceNow,
  SpotNow,
  Task as TaskShown,
} from '../contract/index.ts';
import { cropName } from '../lots/index.ts';
import {
  type PlaceFacts,
  placeFacts,
  type SpotFacts,
  VENTS_TRUSTED,
  ventSayings,
  ventStates,
} from '../snapshot/index.ts';
import type { Task } from '../tasks/index.ts';
import { placeNowWords, taskWords } from '../words/index.ts';
import type { ApiParts, Looked } from './parts.ts';

// From what the hub keeps (ms, facts) to what the contract says (ISO 8601, words).

export const iso = (t: number) => new Date(t).toISOString();
export const isoOrNull = (t: number | null) => (t === null ? null : iso(t));

export function shownTask(task: Task, placeName: string): TaskShown {
  const { title, why, caution } = taskWords(task, placeName);
  return {
    id: task.id,
    kind: task.kind,
    place: task.place,
    subject: task.subject,
    state: task.state,
    verdict: task.verdict,
    title,
    because: [...task.because],
    why,
    doBy: isoOrNull(task.doBy),
    from: isoOrNull(task.from),
    minutes: task.minutes,
    saves: {
      amount: roundedOrNull(task.saves.amount),
      money: roundedOrNull(task.saves.money),
    },
    alarm: task.alarm !== null && task.state === 'open' && task.until === null,
    caution,
    openedAt: iso(task.openedAt),
    endedAt: isoOrNull(task.endedAt),
    answer: task.answer,
    until: isoOrNull(task.until),
  };
}

/** Open tasks in the order to do them; those put off come last. */
export function openTasks(parts: ApiParts): TaskShown[] {
  const open = parts.lastLook()?.open ?? parts.tasks.open();
  const now = open.filter(({ until }) => until === null);
  const later = open.filter(({ until }) => until !== null);
  return [...rank(now), ...rank(later)].map((task) => shownTask(task, nameOf(parts, task.place)));
}

export const nameOf = (parts: ApiParts, place: string) => parts.farm().place(place)?.name ?? place;

/** More digits than anybody measured say nothing. */
export const rounded = (value: number, digits = 2) => Number(value.toFixed(digits));
export const roundedOrNull = (value: number | null, digits = 2) =>
  value === null ? null : rounded(value, digits);

export const shownNight = ({ fan: _, ...night }: Night): NightForecast => ({
  ...night,
  low: { mean: rounded(night.low.mean), sd: rounded(night.low.sd), df: night.low.df },
  pBelow: { at: night.pBelow.at, p: rounded(night.pBelow.p, 4) },
  issuedAt: iso(night.issuedAt),
  crossesAt: isoOrNull(night.crossesAt),
  limits: night.limits.map(({ what, at, p, crossesAt }) => ({
    ...{ what, at, p: rounded(p, 4), crossesAt: isoOrNull(crossesAt) },
  })),
  sources: night.sources.map((one) => ({
    ...one,
    issuedAt: iso(one.issuedAt),
    said: roundedOrNull(one.said),
    corrected: roundedOrNull(one.corrected),
    error: roundedOrNull(one.error),
    ownError: rounded(one.ownError),
    weight: rounded(one.weight, 3),
  })),
});

const shownSpot = (spot: SpotFacts): SpotNow => ({ ...spot, readAt: isoOrNull(spot.readAt) });

/** What stands in a place by its batches; nothing where nobody keeps any. */
function standsHere(parts: ApiParts, id: string, now: number): Pick<PlaceNow, 'stands'> {
  const standing = standingAt(parts.batches.all(), id, now);
  if (standing === null) return {};
  const farm = parts.farm();
  return { stands: standing.map((one) => ({ ...one, name: cropName(farm, one.crop) })) };
}

/** How the vents of a place stand, and who says so. */
function ventsHere(parts: ApiParts, { id, vents }: FarmPlace, at: number): Pick<PlaceNow, 'vents'> {
  if (!vents) return {};
  const state = ventStates(parts.store, parts.farm(), parts.calendar(), id, at, at)(at);
  return {
    vents: {
      state: state.open === null ? null : state.open ? 'open' : 'shut',
      by: state.by,
      since: isoOrNull(state.since),
      staysOpen: state.overnight,
      mayUndo: ventSayings(parts.store, id, at - VENTS_TRUSTED, at).length > 0,
    },
  };
}

export function shownPlace(parts: ApiParts, looked: Looked, id: string): PlaceNow | null {
  const place = parts.farm().place(id);
  const now = looked.snapshot.places.find((one) => one.id === id);
  if (!place || !now) return null;
  const facts: PlaceFacts = placeFacts(looked.snapshot, now);
  return {
    ...facts,
    id,
    name: place.name,
    kind: place.kind,
    crop: place.crop ?? null,
    asOf: iso(looked.at),
    readAt: isoOrNull(facts.readAt),
    wetSince: isoOrNull(facts.wetSince),
    opened: now.opened,
    ...ventsHere(parts, place, looked.at),
    covered: now.covered,
    spots: facts.spots.map(shownSpot),
    ...standsHere(parts, id, looked.at),
    words: placeNowWords(place.name, facts, looked.at),
  };
}

export const shownPlaces = (parts: ApiParts, looked: Looked): PlaceNow[] =>
  parts.farm().places.flatMap(({ id }) => shownPlace(parts, looked, id) ?? []);
