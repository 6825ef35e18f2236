import type { Answer, Evidence } from '../answer.ts';
import { type MovingSpares, movingSpares } from '../days/index.ts';
import { instant } from '../units.ts';
import { airFirst } from './airFirst.ts';
import { by, put } from './how.ts';
import type { Look } from './look.ts';
import {
  betterThere,
  daysToGo,
  roomThere,
  sparesAgainstCarrying,
  whatAndWhere,
} from './moveFacts.ts';
import { safeForTrays } from './safeForTrays.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { TrayPlace, TraysStanding } from './snapshot.ts';
import { ENTERED, OURS } from './sources.ts';
import { trayCandidates } from './trayCandidates.ts';
import type { TrayRoom } from './trayRoom.ts';
import { troubleOf } from './trayTrouble.ts';

// All ours, from no source.
const CLEARLY = 2; // h a day better on average, besides the interval, before anybody carries
const STILL = 1; // h a day: once asked, asked until it is less than this
const MIN_LEFT = 4; // days still to stand: fewer, and it is not worth the disturbance
const USUAL_LEFT = 7; // days, where nobody keeps batches and so nobody knows
const REST = 7; // days after a move in which nothing is asked again
const NOT_BACK = 21; // days in which trays are not carried back to where they came from
const MINUTES_A_TRAY = 1; // of carrying, where the farm file tells nothing
const WALK = 5; // min, likewise
const DAY = 86_400_000; // ms

/**
 * Trays of one batch are to be carried elsewhere: another place has kept to the crop's band for
 * clearly more hours of the last days (the interval of the difference is clear of zero, and it is
 * 2 h a day or more), it has room for all of them, is safe tonight and was this week, they still
 * have more than 4 days to stand, no mould was seen on them, and what it spares is more than the
 * carrying costs. Opening up and shading go first where they would do.
 *
 * Source: the paired interval, see comparePlaces; expected value, see movingSpares; the limits of
 * hours and days are ours, from no source.
 * @param asks what other tasks of the place say now: opening up, or shading
 */
export function moveTrays(
  look: Look,
  stand: TraysStanding,
  room: TrayRoom,
  asks: { readonly openUp: boolean; readonly shade: boolean },
): Answer {
  const { now, snapshot } = look;
  const known = snapshot.trays?.crops.find(({ crop }) => crop === stand.crop);
  const crop = snapshot.crops.find(({ id }) => id === stand.crop) ?? null;
  if (known === undefined || crop === null || crop.band === null) return unknown(['crop-band']);
  if (stand.mouldy) return leave(fact('mould-seen', 'yes', '', null, ENTERED, TOLD_HOW));
  const rested = stand.movedAt === null ? null : (now - stand.movedAt) / DAY;
  if (rested !== null && rested < REST)
    return leave(fact('moved-days-ago', rested, 'd', REST, OURS, moved(rested)));

  const found = trayCandidates(look, stand, known);
  if (found.length === 0) {
    const any = (snapshot.trays?.places ?? []).some(({ id }) => id !== stand.place);
    return any ? unknown(['days-in-both-places']) : leave();
  }
  const clear = found.filter(({ difference: { score }, to }) => {
    if (score === null) return false;
    if (to.id === stand.askedTo) return score.mean >= STILL;
    return score.mean >= CLEARLY && score.low > 0;
  });
  const [top] = found;
  const because =
    top === undefined ? [] : betterThere(top.difference, stand.place, top.to.id, CLEARLY);
  if (clear.length === 0) return leave(...because);

  // Where an open task asks to carry them goes first, so that it does not ask for another each day.
  const ordered = clear.toSorted(
    (a, b) => Number(b.to.id === stand.askedTo) - Number(a.to.id === stand.askedTo),
  );
  let short: readonly Evidence[] | null = null;
  let untold = false;
  for (const { to, difference } of ordered) {
    const lately = stand.left.some(({ place, at }) => place === to.id && now - at < NOT_BACK * DAY);
    if (lately) continue;
    if (safeForTrays(look, stand.place, to.id, known, crop) !== 'yes') {
      short ??= [...betterThere(difference, stand.place, to.id, CLEARLY), notSafe(to)];
      continue;
    }
    const free = room.free(to.id);
    if (free === null) {
      untold = true;
      continue;
    }
    if (free < stand.trays) {
      short ??= [
        ...betterThere(difference, stand.place, to.id, CLEARLY),
        roomThere(free, stand.trays),
      ];
      continue;
    }
    const trouble = troubleOf(difference);
    const first = airFirst(look, stand, known, trouble, asks);
    const facts = [
      ...whatAndWhere(stand, to),
      ...betterThere(difference, stand.place, to.id, CLEARLY),
      roomThere(free, stand.trays),
    ];
    if (first !== null) return leave(...facts, first);

    const days = stand.daysLeft ?? (stand.batch === null ? USUAL_LEFT : null);
    if (days === null) return unknown(['days-to-ready'], facts);
    facts.push(daysToGo(stand, days, MIN_LEFT));
    if (days <= MIN_LEFT) return leave(...facts);

    const minutes = stand.minutes ?? WALK + MINUTES_A_TRAY * stand.trays;
    const harmMore = (difference.hurt?.mean ?? 0) + (difference.disease?.mean ?? 0);
    const spares = movingSpares({
      ...{ trays: stand.trays, perTray: crop.perTray, price: crop.price, daysLeft: days },
      ...{ harmMore, share: known.share, minutes, wage: snapshot.farm.wage },
    });
    if (spares.money === null) return unknown(['price'], facts);
    facts.push(...sparesAgainstCarrying(spares, stand, known, minutes));
    if (spares.money <= spares.cost) return leave(...facts);
    room.take(to.id, stand.trays);
    const { kg, money } = spares;
    const doBy = stand.batch === null ? null : lastDay(look, days, spares);
    return act(facts, { minutes, doBy, saves: { amount: kg, money } });
  }
  if (untold) return unknown(['room-in-the-place'], because);
  return leave(...(short ?? because));
}

const notSafe = (to: TrayPlace) =>
  fact('not-safe-there', to.name, '', null, OURS, by('safeForTrays', put('place', to.id)));
const TOLD_HOW = { method: null, inputs: [] };
const moved = (days: number) => by('moveTrays', put('days', days, 'd'));

/** The last moment at which carrying still pays, so that the deadline stands still from day to day. */
function lastDay({ now }: Look, days: number, { paidIn }: MovingSpares) {
  const needed = Math.max(MIN_LEFT, paidIn ?? 0);
  const hour = 3_600_000; // ms
  return instant(Math.round((now + (days - needed) * DAY) / hour) * hour);
}
