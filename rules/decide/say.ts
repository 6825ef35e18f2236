import type { Act, AlarmKind, Evidence, Leave, Saving, Unknown } from '../answer.ts';
import type { Instant } from '../units.ts';
import { minutes } from '../units.ts';
import type { How } from './how.ts';

// The three answers, written short.

/** No probe knows more than two decimals, and an answer that is the same should look the same. */
const rounded = (value: number | string | null) =>
  typeof value === 'number' ? Math.round(value * 100) / 100 : value;

/**
 * One fact: what was measured, its unit, what it was held against, where that comes from, and how
 * the value came about.
 * @param limitFrom who set the limit, where the source tells of the formula instead
 */
export const fact = (
  what: string,
  value: number | string | null,
  unit: string,
  limit: number | string | null,
  source: string,
  { method, inputs }: How,
  limitFrom: string = source,
): Evidence => ({
  what,
  value: rounded(value),
  unit,
  limit: rounded(limit),
  source,
  method,
  inputs,
  limitFrom: limit === null ? null : limitFrom,
});

export const leave = (...because: readonly Evidence[]): Leave => ({ verdict: 'leave', because });

export const unknown = (
  missing: readonly string[],
  because: readonly Evidence[] = [],
): Unknown => ({ verdict: 'unknown', because, missing });

export const NOT_KNOWN: Saving = { amount: null, money: null };

export const act = (
  because: readonly Evidence[],
  how: {
    readonly minutes: number;
    readonly from?: Instant | null;
    readonly doBy?: Instant | null;
    readonly saves?: Saving;
    readonly alarm?: AlarmKind | null;
  },
): Act => ({
  verdict: 'act',
  because,
  from: how.from ?? null,
  doBy: how.doBy ?? null,
  minutes: minutes(how.minutes),
  saves: how.saves ?? NOT_KNOWN,
  alarm: how.alarm ?? null,
});
