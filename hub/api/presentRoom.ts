import { energyIndex } from '../../rules/cooler/index.ts';
import type { CoolRoomNow } from '../../rules/decide/index.ts';
import type { CoolRoom } from '../contract/index.ts';
import { iso, isoOrNull, rounded, roundedOrNull } from './present.ts';

const MINUTE = 60_000;

export function shownCoolRoom(room: CoolRoomNow): CoolRoom {
  const { habits, pullDown, trend, solar } = room;
  return {
    ...{ id: room.id, state: room.state, cause: room.cause, sure: room.sure },
    ...{ setPoint: room.setPoint, limit: room.limit, temperature: room.temperature },
    among: [...room.among],
    evidence: room.evidence.map(({ inputs, ...fact }) => ({
      ...fact,
      ...(inputs ? { inputs: [...inputs] } : {}),
    })),
    asOf: isoOrNull(room.asOf),
    since: isoOrNull(room.since),
    drift: roundedOrNull(room.drift),
    produceEstimate: roundedOrNull(room.produceEstimate),
    holdOver: {
      minutesToLimit: roundedOrNull(room.holdOver.minutesToLimit, 0),
      tauHours: rounded(room.holdOver.tauHours),
      shortest: roundedOrNull(room.holdOver.shortest, 0),
      longest: roundedOrNull(room.holdOver.longest, 0),
      produceMinutes: roundedOrNull(room.holdOver.produceMinutes, 0),
      learnedFrom: room.holdOver.learnedFrom,
      produceShortest: roundedOrNull(room.holdOver.produceShortest, 0),
      produceLongest: roundedOrNull(room.holdOver.produceLongest, 0),
      contents: room.holdOver.contents,
      kilograms: room.holdOver.kilograms,
      sameContents: room.holdOver.sameContents,
    },
    aboveLimit: {
      hours: rounded(room.aboveLimit.hours),
      unknownHours: rounded(room.aboveLimit.unknownHours),
      since: isoOrNull(room.aboveLimit.since),
    },
    pullDown: pullDown && {
      since: iso(pullDown.since),
      peak: rounded(pullDown.peak),
      backAt: isoOrNull(pullDown.backAt),
    },
    defrosting: room.defrosting,
    habits: {
      ...{ learned: habits.learned, days: habits.days },
      ...{ top: rounded(habits.top), bottom: rounded(habits.bottom), line: rounded(habits.line) },
      minutes: roundedOrNull(habits.minutes, 0),
      runningShare: roundedOrNull(habits.runningShare),
      defrosts: habits.defrosts && {
        at: habits.defrosts.at.map((minute) => rounded(minute, 0)),
        minutes: rounded(habits.defrosts.minutes, 0),
      },
    },
    energy: {
      kWhPerDay: roundedOrNull(room.energy.kWhPerDay),
      dutyCycle: roundedOrNull(room.energy.dutyCycle),
    },
    energyDays: room.energyDays.map(({ from, kilowattHours, gap, duty }) => ({
      from: iso(from),
      kilowattHours: roundedOrNull(kilowattHours),
      gap: roundedOrNull(gap),
      duty: roundedOrNull(duty),
      usual:
        gap === null || trend.line === null
          ? null
          : roundedOrNull(Math.max(0, trend.line.intercept + trend.line.slope * gap)),
      index:
        kilowattHours === null || gap === null
          ? null
          : roundedOrNull(energyIndex({ kilowattHours, outside: gap, inside: 0 }), 4),
    })),
    trend: { ...trend, above: roundedOrNull(trend.above), since: isoOrNull(trend.since) },
    fuel: room.fuel && {
      ...room.fuel,
      ...{ hours: rounded(room.fuel.hours), litres: rounded(room.fuel.litres) },
      carbonDioxide: rounded(room.fuel.carbonDioxide),
      money: roundedOrNull(room.fuel.money),
      perKilowattHour: roundedOrNull(room.fuel.perKilowattHour),
    },
    solar: solar && { ...solar, lines: [...solar.lines] },
    plan: shownPlan(room),
  };
}

function shownPlan({ plan, asOf }: CoolRoomNow): CoolRoom['plan'] {
  const { runIn, runFor, thenHolds } = plan;
  return {
    on: plan.on,
    planned: plan.planned,
    usual: plan.usual && { hours: [...plan.usual.hours], days: plan.usual.days },
    changesAt: isoOrNull(plan.changesAt),
    runAt: runIn === null || asOf === null ? null : iso(asOf + runIn * 60 * MINUTE),
    runMinutes: roundedOrNull(runFor === null ? null : runFor * 60, 0),
    thenHoldsMinutes: roundedOrNull(thenHolds === null ? null : thenHolds * 60, 0),
    litres: roundedOrNull(plan.litres),
    carbonDioxide: roundedOrNull(plan.carbonDioxide),
    money: roundedOrNull(plan.money),
  };
}
