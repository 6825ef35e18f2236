import { bounds, SATURATED } from './bounds.ts';
import type { RawReading, Reason, Refused } from './message.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
/** A probe's clock may run this far ahead of the hub's. Common practice, no source. */
const AHEAD = 5 * MINUTE;
/** A time before this comes from a clock that was never set. */
const FIRST_POSSIBLE = Date.UTC(2000, 0, 1);
/** Two readings further apart than this say nothing about a jump. */
const COMPARABLE = 30 * MINUTE;
/** Elsewhere "things moved" when another probe's temperature changed by this much, K. Ours. */
const MOVED = 2;

/** A reading that has been looked at. `value` has the correction in it; `flag` says why it is doubted. */
export type CleanReading = {
  readonly probe: string;
  readonly quantity: RawReading['quantity'];
  readonly t: number;
  readonly value: number;
  readonly raw: number | null;
  readonly flag: Reason | null;
};
/** From `from` to `to`, readings already stored get this flag, or lose theirs. */
export type Amendment = {
  readonly probe: string;
  readonly quantity: RawReading['quantity'];
  readonly from: number;
  readonly to: number;
  readonly flag: Reason | null;
};
export type Cleaned = {
  readonly reading: CleanReading;
  readonly amendments: readonly Amendment[];
  readonly refused: Refused | null;
};

type Past = {
  /** Newest reading that was believed. */
  last: { t: number; raw: number } | null;
  /** A jump that waits to be confirmed: first and newest of it, and how many more must agree. */
  jump: { from: number; t: number; raw: number; needs: number } | null;
  run: { from: number; raw: number; stuck: boolean } | null;
  /** For "did anything move on the farm?": where it last settled, and when it left there. */
  anchor: { raw: number; movedAt: number } | null;
};

/** What was stored of a series before this process began, oldest first. */
export type Recall = (
  probe: string,
  quantity: RawReading['quantity'],
) => readonly { t: number; value: number; raw: number | null; flag: string | null }[];

const key = (probe: string, quantity: string) => `${probe}\n${quantity}`;

/**
 * Looks at readings in the order they come: range, clock, jumps, impossible rates, stuck values.
 * Nothing is thrown away: a doubtful reading keeps its raw value and carries a flag.
 */
export function cleaner(recall: Recall, offsetOf: (probe: string, quantity: string) => number) {
  const past = new Map<string, Past>();

  const pastOf = (probe: string, quantity: RawReading['quantity']): Past => {
    const name = key(probe, quantity);
    let known = past.get(name);
    if (known) return known;
    known = { last: null, jump: null, run: null, anchor: null };
    past.set(name, known);
    for (const { t, value, raw, flag } of recall(probe, quantity)) {
      const sent = raw ?? value;
      if (flag === null) known.last = { t, raw: sent };
      if (flag === null || flag === 'stuck') follow(known, t, sent, flag === 'stuck');
    }
    return known;
  };

  const follow = (known: Past, t: number, raw: number, stuck: boolean) => {
    if (known.run?.raw !== raw) known.run = { from: t, raw, stuck };
    else if (stuck) known.run.stuck = true;
    if (!known.anchor) known.anchor = { raw, movedAt: Number.NEGATIVE_INFINITY };
    else if (Math.abs(raw - known.anchor.raw) > MOVED) known.anchor = { raw, movedAt: t };
  };

  const movedElsewhere = (probe: string, since: number) => {
    for (const [name, { anchor }] of past)
      if (
        anchor &&
        anchor.movedAt > since &&
        !name.startsWith(`${probe}\n`) &&
        name.endsWith('\ntemperature')
      )
        return true;
    return false;
  };

  /** Whether a jump is believed yet; undefined when there is none. */
  const jumped = (
    known: Past,
    t: number,
    raw: number,
    limits: { jump: number | null; rate: number | null },
  ) => {
    const { last } = known;
    if (!last || limits.jump === null || t - last.t > COMPARABLE) return undefined;
    const change = Math.abs(raw - last.raw);
    const inMinutes = (t - last.t) / MINUTE;
    const tooFast = limits.rate !== null && change / inMinutes > limits.rate;
    // The limit is per five minutes; over a longer step it grows with the step.
    if (!tooFast && change <= limits.jump * Math.max(1, inMinutes / 5)) return undefined;
    const waiting = known.jump;
    if (waiting && Math.abs(raw - waiting.raw) <= limits.jump / 2 && t > waiting.t) {
      const needs = waiting.needs - 1;
      known.jump = { ...waiting, t, raw, needs };
      return needs <= 0
        ? ('believed' as const)
        : tooFast
          ? ('impossible-rate' as const)
          : ('spike' as const);
    }
    known.jump = { from: t, t, raw, needs: tooFast ? 2 : 1 };
    return tooFast ? ('impossible-rate' as const) : ('spike' as const);
  };

  return function clean(given: RawReading, receivedAt: number): Cleaned {
    const { probe, quantity } = given;
    const limits = bounds[quantity];
    const amendments: Amendment[] = [];
    const wrongClock =
      given.t !== null && (given.t > receivedAt + AHEAD || given.t < FIRST_POSSIBLE);
    const t = given.t === null || wrongClock ? receivedAt : given.t;
    const raw = given.value;
    const corrected = raw + offsetOf(probe, quantity);
    const value =
      quantity === 'humidity' && raw <= limits.to
        ? Math.min(100, Math.max(0, corrected))
        : corrected;
    let flag: Reason | null = null;
    let sentence = '';
    const doubt = (reason: Reason, words: string) => {
      flag = reason;
      sentence = `${words} from ${probe}`;
    };

    if (wrongClock) {
      doubt(
        'clock',
        `Expected a time between 2000 and now, got ${new Date(clampTime(given.t ?? 0)).toISOString()}`,
      );
    } else if (!(raw >= limits.from && raw <= limits.to)) {
      doubt('out-of-range', `Expected ${quantity} from ${limits.from} to ${limits.to}, got ${raw}`);
    } else {
      const known = pastOf(probe, quantity);
      // A reading from before the newest is a late one: the checks that look back don't apply.
      if (!known.last || t > known.last.t) {
        const jump = jumped(known, t, raw, limits);
        if (jump === 'spike' || jump === 'impossible-rate') {
          const from = known.last?.raw;
          doubt(
            jump,
            `Expected ${quantity} near ${from} after ${minutesSince(known, t)} min, got ${raw}`,
          );
        } else {
          if (jump === 'believed' && known.jump)
            amendments.push({ probe, quantity, from: known.jump.from, to: t - 1, flag: null });
          known.jump = null;
          known.last = { t, raw };
          follow(known, t, raw, false);
          const { run } = known;
          const canStick =
            limits.stuckHours !== null && !(quantity === 'humidity' && raw >= SATURATED);
          if (run && canStick && t - run.from >= (limits.stuckHours ?? 0) * HOUR) {
            if (!run.stuck && movedElsewhere(probe, run.from)) {
              run.stuck = true;
              amendments.push({ probe, quantity, from: run.from, to: t - 1, flag: 'stuck' });
            }
            if (run.stuck)
              doubt(
                'stuck',
                `Expected ${quantity} to change within ${limits.stuckHours} h, got ${raw} all that time`,
              );
          }
        }
      }
    }
    return {
      reading: { probe, quantity, t, value, raw: value === raw ? null : raw, flag },
      amendments,
      refused: flag === null ? null : { source: probe, reason: flag, sentence },
    };
  };
}

const minutesSince = (known: Past, t: number) =>
  known.last ? Math.round((t - known.last.t) / MINUTE) : 0;
/** The range of times a date can be written for. */
const clampTime = (t: number) => Math.max(-8.64e15, Math.min(8.64e15, t));
