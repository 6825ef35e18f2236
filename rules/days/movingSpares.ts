import { expectRange } from '../expectRange.ts';
import type { HarmShare } from './harmPerHour.ts';

/** What carrying trays elsewhere is expected to spare, and what the carrying costs. */
export type MovingSpares = {
  /** Harmful hours fewer a day. */
  readonly fewerHours: number;
  /** Of what stands in the trays, 0..1. */
  readonly share: number;
  readonly kg: number | null;
  readonly money: number | null;
  /** Money with the least and the most share an hour may cost. */
  readonly moneyBetween: readonly [number, number] | null;
  readonly cost: number;
  /** Days in which the carrying is paid; null when it never is, or nobody knows. */
  readonly paidIn: number | null;
};

export type MoveTold = {
  readonly trays: number;
  /** kg and money per kg; null where not told. */
  readonly perTray: number | null;
  readonly price: number | null;
  /** Days the trays still have to stand. */
  readonly daysLeft: number;
  /** Harmful hours a day that the other place has more of; below zero: fewer. */
  readonly harmMore: number;
  readonly share: HarmShare;
  readonly minutes: number;
  /** Money per hour. */
  readonly wage: number;
};

/**
 * What carrying spares: harmful hours fewer a day × the days left × the share of the crop that an
 * hour costs × what the trays are worth. Against it stand the minutes of carrying at the wage.
 *
 * Source: expected value; the share is learned or a guess of ours, see harmPerHour. That the days
 * to come are as apart as the last ones were is ours.
 */
export function movingSpares(told: MoveTold): MovingSpares {
  const { trays, perTray, price, daysLeft, harmMore, share, minutes, wage } = told;
  expectRange('trays', trays, 0, 1_000_000, '');
  expectRange('days left', daysLeft, 0, 1000, 'd');
  const fewerHours = Math.max(0, -harmMore);
  const lost = (perHour: number) => Math.min(1, perHour * fewerHours * daysLeft);
  const worth = perTray === null || price === null ? null : trays * perTray * price;
  const cost = (minutes / 60) * wage;
  const aDay = worth === null ? null : worth * share.mean * fewerHours;
  return {
    fewerHours,
    share: lost(share.mean),
    kg: perTray === null ? null : trays * perTray * lost(share.mean),
    money: worth === null ? null : worth * lost(share.mean),
    moneyBetween: worth === null ? null : [worth * lost(share.low), worth * lost(share.high)],
    cost,
    paidIn: aDay === null || aDay <= 0 ? null : cost / aDay,
  };
}
