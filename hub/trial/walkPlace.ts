import {
  cover,
  type Decision,
  type Look,
  type NightForecast,
  type PlaceNow,
  shade,
  type TaskKind,
  vents,
} from '../../rules/decide/index.ts';
import { minutes } from '../../rules/units.ts';
import { type Memory, planTasks, type Task } from '../tasks/index.ts';
import { againstLimit } from './issuedThen.ts';
import type { PastSpot } from './pastSpots.ts';

/** Readings a rule may look back on, h; those of 48 hours, as in the hub's own looks. */
const BACK = 49;
const EVERY = minutes(60);

/** One task that would have come. Times in ms since 1970; `to` is null while it still stood. */
export type WouldAsk = {
  readonly kind: TaskKind;
  readonly from: number;
  readonly to: number | null;
  readonly minutes: number;
};

/** Looks of the past and what was forecast then, the same for every place. */
export type PastLook = Look & { readonly issued: readonly NightForecast[] };

/**
 * Walks one place through its past with the hub's own rules and the hub's own patience, as if
 * nobody had answered: which tasks would have come, and how long each would have stood.
 * @param place as the farm file describes it; its spots are filled in hour by hour
 */
export function walkPlace(
  place: PlaceNow,
  spots: readonly PastSpot[],
  looks: readonly PastLook[],
  crops: Look['snapshot']['crops'],
  wage: number,
): WouldAsk[] {
  const asked: { kind: TaskKind; from: number; to: number | null; minutes: number }[] = [];
  const running = new Map<string, (typeof asked)[number]>();
  const memory = new Map<string, Memory>();
  let open: Task[] = [];
  const at = spots.map(() => 0);

  for (const past of looks) {
    const here: PlaceNow = {
      ...place,
      spots: spots.map((spot, i) => {
        let next = at[i] ?? 0;
        while (next < spot.air.length && (spot.air[next]?.t ?? 0) <= past.now) next++;
        at[i] = next;
        return {
          ...{ spot: spot.spot, probe: spot.probe, every: EVERY, nights: [] },
          columns: { temperature: spot.temperature },
          air: spot.air.slice(Math.max(0, next - BACK), next),
        };
      }),
    };
    const damage = place.cover?.damage;
    const look: Look = {
      ...past,
      snapshot: {
        ...past.snapshot,
        crops,
        farm: { ...past.snapshot.farm, wage },
        standing: open.map(({ key }) => key),
      },
      forecasts:
        damage === undefined
          ? past.issued
          : past.issued.map((one) => (one.place === place.id ? againstLimit(one, damage) : one)),
    };
    const {
      steps,
      fresh,
      memory: remembered,
    } = planTasks(open, decided(look, here), memory, past.now);
    for (const [key, kept] of remembered) {
      if (kept === null) memory.delete(key);
      else memory.set(key, kept);
    }
    open = [...fresh, ...steps.map(({ task }) => task).filter(({ state }) => state === 'open')];
    for (const { event, task } of steps) {
      if (event === 'opened') {
        const one = { kind: task.kind, from: past.now, to: null, minutes: task.minutes };
        running.set(task.key, one);
        asked.push(one);
      }
      if (event === 'lapsed') {
        const one = running.get(task.key);
        if (one) one.to = past.now;
        running.delete(task.key);
      }
    }
  }
  return asked;
}

/** What the rules decide of one place, in the hub's own order. */
function decided(look: Look, place: PlaceNow): Decision[] {
  const decisions: Decision[] = [];
  const subject = { place: place.id, subject: null };
  if (place.kind === 'tunnel' && place.vents) {
    const both = vents(look, place);
    decisions.push({ kind: 'open-up', ...subject, ...both['open-up'] });
    decisions.push({ kind: 'close-up', ...subject, ...both['close-up'] });
  }
  if (place.kind === 'tunnel' && place.crop !== null)
    decisions.push({ kind: 'shade', ...subject, ...shade(look, place, decisions[0] ?? null) });
  if (place.cover !== null) decisions.push({ kind: 'cover', ...subject, ...cover(look, place) });
  return decisions;
}
