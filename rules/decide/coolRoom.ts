import { energyTrend, solarSheet, timeAbove } from '../cooler/index.ts';
import { meanOf } from '../statistics/index.ts';
import { celsius, HOUR, type Hours, hours, MINUTE, minutes } from '../units.ts';
import { within } from './column.ts';
import { produceAtLimit } from './produce.ts';
import { holeOf, type Room } from './room.ts';
import { energyFeed, energyOf } from './roomEnergy.ts';
import { airFacts, causeFacts, coilFacts } from './roomFacts.ts';
import { roomFuel } from './roomFuel.ts';
import { planOf } from './roomPlan.ts';
import type { Signs } from './roomSigns.ts';
import type { CoolRoomNow } from './snapshot.ts';

const DAY = 24 * HOUR;
const FEWEST_DAYS = 3; // of energy before a mean of them is told. Ours

/** How a cool room is doing, for the screens. */
export function coolRoom(signs: Signs): CoolRoomNow {
  const { room, drift, cause, state, produce, hoursToLimit, tauHours, hold, why, air } = signs;
  const { produceAt } = signs;
  const energy = energyOf(room, energyFeed(room.place));
  const filled = room.place.coolRoom?.filled;
  const latest = room.air?.latest ?? null;
  const lastKnown = room.air?.column.t[lastBefore(room)] ?? null;
  return {
    id: room.place.id,
    asOf: latest?.t ?? lastKnown,
    state,
    temperature: latest === null ? null : celsius(latest.value),
    setPoint: room.setPoint,
    limit: room.limit,
    drift,
    cause,
    produceEstimate: produce,
    holdOver: {
      minutesToLimit: hoursToLimit === null ? null : minutes(hoursToLimit * 60),
      tauHours,
      shortest: asMinutes(hold.shortest),
      longest: asMinutes(hold.longest),
      produceMinutes: produceAt === null ? null : minutes((produceAt - room.now) / MINUTE),
      produceShortest: produceWithin(signs, hold.shortest),
      produceLongest: produceWithin(signs, hold.longest),
      learnedFrom: hold.learnedFrom,
      contents: filled?.now ?? null,
      kilograms: filled?.kilograms ?? null,
      sameContents: filled?.stops ?? 0,
    },
    aboveLimit: { ...overLimit(room), since: signs.aboveSince },
    energy,
    fuel: roomFuel(room, energy.kWhPerDay),
    since: signs.since,
    sure: why?.sure ?? null,
    among: why?.among ?? [],
    evidence: [...airFacts(signs), ...coilFacts(signs), ...causeFacts(signs)],
    pullDown: air.pullDown,
    habits: habitsOf(signs),
    defrosting: air.defrost,
    ...energyFacts(signs),
    plan: {
      ...planOf(signs),
      on: room.supply.on,
      changesAt: room.supply.until,
      planned: room.supply.planned,
      usual: room.place.coolRoom?.usual ?? null,
    },
  };
}

/** Minutes until a crate is at the limit, with the time constant by which the air takes so long. */
function produceWithin({ room, produce, hold, tauHours }: Signs, air: Hours | null) {
  if (air === null || hold.toLimit === null || hold.toLimit <= 0) return null;
  const at = produceAtLimit(room, produce, hours((tauHours * air) / hold.toLimit));
  return at === null ? null : minutes((at - room.now) / MINUTE);
}

const asMinutes = (value: Hours | null) => (value === null ? null : minutes(value * 60));

function habitsOf({ room: { habits } }: Signs): CoolRoomNow['habits'] {
  const { learned, days, top, bottom, line, cycle, defrosts, duty } = habits;
  return {
    ...{ learned, days, top, bottom, line },
    minutes: cycle === null ? null : minutes(cycle.riseMinutes + cycle.fallMinutes),
    runningShare: duty?.share ?? null,
    defrosts: defrosts && { at: defrosts.at, minutes: defrosts.minutes },
  };
}

/** Its days of energy, whether they creep up, and what panels and battery would have to be. */
function energyFacts({ room }: Signs): Pick<CoolRoomNow, 'energyDays' | 'trend' | 'solar'> {
  const energyDays = room.place.coolRoom?.energyDays ?? [];
  const trend = energyTrend(energyDays);
  const known = energyDays.flatMap(({ kilowattHours }) => kilowattHours ?? []);
  const gaps = energyDays.flatMap(({ gap }) => gap ?? []);
  const mean = known.length < FEWEST_DAYS ? null : meanOf(known);
  // The warmest of the days on record stands for the worst month until somebody tells it.
  const gap = gaps.length === 0 ? null : Math.max(...gaps);
  return { energyDays, trend, solar: solarSheet({ line: trend.line, mean, gap }) };
}

const lastBefore = ({ air, now }: Room) =>
  air === null ? -1 : within(air.column, Number.NEGATIVE_INFINITY, now).to - 1;

/** Of the last 24 hours; time that no reading speaks for stays unknown. */
function overLimit(room: Room) {
  const { air, now, limit } = room;
  if (air === null) return { hours: hours(0), unknownHours: hours(24) };
  const { from, to } = within(air.column, now - DAY, now);
  const readings = [];
  for (let i = from; i < to; i++) {
    const t = air.column.t[i];
    const value = air.column.value[i];
    if (t !== undefined && value !== undefined) readings.push({ t, value: celsius(value) });
  }
  const inside = timeAbove(readings, limit, { gapMaxMinutes: holeOf(air) });
  const first = readings[0]?.t ?? now;
  const last = readings.at(-1)?.t ?? now - DAY;
  const hole = holeOf(air) * MINUTE;
  const edges = [first - (now - DAY), now - last].filter((gap) => gap > hole);
  const outside = edges.reduce((sum, gap) => sum + gap / HOUR, 0);
  return {
    hours: inside.aboveHours,
    unknownHours: hours(Math.min(24, inside.unknownHours + outside)),
  };
}
