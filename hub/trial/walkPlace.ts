import {
  closeUp,
  cover,
  type Decision,
  type Look,
  leaveOpen,
  mayClose,
  mayCover,
  mayLeaveOpen,
  mayOpen,
  mayShade,
  type PlaceNow,
  shade,
  TONIGHT,
  taskKey,
  vents,
} from '../../rules/decide/index.ts';
import { minutes } from '../../rules/units.ts';
import { againstLimit } from './issuedThen.ts';
import { keeper, type WouldAsk } from './keeper.ts';
import type { NightsPast } from './nightsPast.ts';
import { HOUR, type PastSpot } from './pastSpots.ts';

/** Readings a rule may look back on, h; those of 48 hours, as in the hub's own looks. */
const BACK = 49;
const EVERY = minutes(60);

const KINDS = ['open-up', 'close-up', 'leave-open', 'shade', 'cover'] as const;
type Kind = (typeof KINDS)[number];
/** Those that weigh the cold of a night against its damp. */
const BY_NIGHT: ReadonlySet<Kind> = new Set(['close-up', 'leave-open']);

/** Whether a rule can ask for anything at a look while nothing stands. */
export type MayAsk = Readonly<Record<Kind, (look: Look, place: PlaceNow) => boolean>>;
const mayAsk: MayAsk = {
  'open-up': mayOpen,
  'close-up': mayClose,
  'leave-open': mayLeaveOpen,
  shade: mayShade,
  cover: mayCover,
};

/** Which rules speak of a place, as in the hub's own looks. */
const spoken: Readonly<Record<Kind, (place: PlaceNow) => boolean>> = {
  'open-up': ({ kind, vents }) => kind === 'tunnel' && vents,
  'close-up': ({ kind, vents }) => kind === 'tunnel' && vents,
  'leave-open': ({ kind, vents }) => kind === 'tunnel' && vents,
  shade: ({ kind, crop }) => kind === 'tunnel' && crop !== null,
  cover: (place) => place.cover !== null,
};

/**
 * Walks one place through its past with the hub's own rules and the hub's own patience, as if
 * nobody had answered: which tasks would have come, and how long each would have stood. A rule is
 * asked in full only where its first conditions hold, or while its task stands.
 * @param place as the farm file describes it; its spots are filled in hour by hour
 * @param looks with what was forecast then, the same for every place
 * @param nights its usual vents of a day, and what the nights before were like to its trays
 */
export function walkPlace(
  place: PlaceNow,
  spots: readonly PastSpot[],
  looks: readonly Look[],
  nights: NightsPast,
  may: MayAsk = mayAsk,
): readonly WouldAsk[] {
  const keep = keeper(HOUR);
  const at = spots.map(() => 0);
  const kinds = KINDS.filter((kind) => spoken[kind](place)).map((kind) => ({
    kind,
    key:
      kind === 'leave-open'
        ? taskKey({ kind: 'open-up', place: place.id, subject: TONIGHT })
        : taskKey({ kind, place: place.id, subject: null }),
  }));
  // All its readings at once do for the first conditions: those ask for the newest alone.
  const whole: PlaceNow = { ...place, spots: spots.map((spot) => spotOf(spot, spot.air)) };

  for (const past of looks) {
    const vents = nights.vents(past);
    const all = vents === null ? whole : { ...whole, ...vents };
    const due = kinds.filter(({ kind, key }) => keep.holds(key) || may[kind](past, all));
    if (due.length === 0) continue;
    const trays = due.some(({ kind }) => BY_NIGHT.has(kind)) || may['close-up'](past, all);
    const here: PlaceNow = {
      ...place,
      ...vents,
      spots: spots.map((spot, i) => {
        let next = at[i] ?? 0;
        while (next < spot.air.length && (spot.air[next]?.t ?? 0) <= past.now) next++;
        at[i] = next;
        return spotOf(spot, spot.air.slice(Math.max(0, next - BACK), next));
      }),
    };
    const damage = place.cover?.damage;
    const look: Look = {
      ...past,
      snapshot: {
        ...past.snapshot,
        standing: keep.standing(),
        ...(trays ? nights.trays(past.snapshot) : {}),
      },
      forecasts:
        damage === undefined
          ? past.forecasts
          : past.forecasts.map((one) => (one.place === place.id ? againstLimit(one, damage) : one)),
    };
    keep.take(decided(look, here, new Set(due.map(({ kind }) => kind))), past.now);
  }
  return keep.asked();
}

const spotOf = (
  { spot, probe, temperature }: PastSpot,
  air: PastSpot['air'],
): PlaceNow['spots'][number] => ({
  spot,
  probe,
  every: EVERY,
  nights: [],
  columns: { temperature },
  air,
});

/**
 * What the rules decide of one place, in the hub's own order. Opening is worked out only where
 * something hangs on it: where it may not ask, closing stands by itself, and shade mostly too.
 */
function decided(look: Look, place: PlaceNow, due: ReadonlySet<Kind>): Decision[] {
  const decisions: Decision[] = [];
  const subject = { place: place.id, subject: null };
  const both = once(() => vents(look, place));
  if (due.has('open-up')) decisions.push({ kind: 'open-up', ...subject, ...both()['open-up'] });
  if (due.has('close-up')) {
    const closing = due.has('open-up') ? both()['close-up'] : closeUp(look, place);
    decisions.push({ kind: 'close-up', ...subject, ...closing });
  }
  if (due.has('leave-open'))
    decisions.push({
      ...{ kind: 'open-up', place: place.id, subject: TONIGHT },
      ...leaveOpen(look, place),
    });
  if (due.has('shade')) {
    const alone = shade(look, place, null);
    const hangs = alone.because.some(({ what }) => what === 'open-up-first');
    const opening = (): Decision => ({ kind: 'open-up', ...subject, ...both()['open-up'] });
    const shading = hangs ? shade(look, place, opening()) : alone;
    decisions.push({ kind: 'shade', ...subject, ...shading });
  }
  if (due.has('cover')) decisions.push({ kind: 'cover', ...subject, ...cover(look, place) });
  return decisions;
}

const once = <T>(make: () => T) => {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
};
