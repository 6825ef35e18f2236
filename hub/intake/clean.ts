import { bounds, SATURATED } from './bounds.ts';
import type { RawReading, Reason, Refused } from './message.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
/** A probe's clock may run this far ahead of the hub's. Common practice, no source. */
const AHEAD = 5 * MINUTE;
/** A time before this comes from a clock that was never set. */
const FIRST_POSSIBLE = Date.UTC(2000, 0, 1);
/** No probe holds back readings for so long; clocks that were never set begin in 2000 or 2010, too. Ours. */
const HELD_BACK = 365 * 24 * HOUR;
/** Two readings further apart than this say nothing about a jump. */
const COMPARABLE = 30 * MINUTE;
/** A value that comes again after a longer silence than this was not seen to stand still. Ours. */
const SEEN = 2 * HOUR;
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
  /** Only those that have this flag now (null: none). */
  readonly was: Reason | null;
};
export type Cleaned = {
  readonly reading: CleanReading;
  readonly amendments: readonly Amendment[];
  readonly refused: Refused | null;
};

type JumpReason = 'spike' | 'impossible-rate';
const isJump = (flag: string | null): flag is JumpReason =>
  flag === 'spike' || flag === 'impossible-rate';

type Past = {
  /** Newest reading that was believed. */
  last: { t: number; raw: number } | null;
  /** A jump that waits to be confirmed: first and newest of it, and how many more must agree. */
  jump: { from: number; t: number; raw: number; needs: number; reason: JumpReason } | null;
  run: { from: number; t: number; raw: number; stuck: boolean } | null;
  /** For "did anything move on the farm?": where it last settled, and when it left there. */
  anchor: { raw: number; movedAt: number } | null;
};

/** What was stored of a series before this process began, oldest first. */
export type Recall = (
  probe: string,
  quantity: RawReading['quantity'],
) => readonly { t: number; value: number; raw: number | null; flag: string | null }[];

/** What is added to a raw value that was taken at `t`. */
export type OffsetOf = (probe: string, quantity: string, raw: number, t: number) => number;

const key = (probe: string, quantity: string) => `${probe}\n${quantity}`;

/**
 * Looks at readings in the order they come: range, clock, jumps, impossible rates, stuck values.
 * Nothing is thrown away: a doubtful reading keeps its raw value and carries a flag.
 */
export function cleaner(recall: Recall, offsetOf: OffsetOf) {
  const past = new Map<string, Past>();

  const pastOf = (probe: string, quantity: RawReading['quantity']): Past => {
    const name = key(probe, quantity);
    let known = past.get(name);
    if (known) return known;
    known = { last: null, jump: null, run: null, anchor: null };
    past.set(name, known);
    for (const { t, value, raw, flag } of recall(probe, quantity)) {
      const sent = raw ?? value;
      if (flag === null) {
        known.last = { t, raw: sent };
        known.jump = null;
      }
      if (isJump(flag)) wait(known, t, sent, flag, bounds[quantity].jump ?? 0);
      if (flag === null || flag === 'stuck') follow(known, t, sent, flag === 'stuck');
    }
    return known;
  };

  /** A jump begins, or goes on. @returns how many more must agree with it. */
  const wait = (known: Past, t: number, raw: number, reason: JumpReason, jump: number): number => {
    const waiting = known.jump;
    const agrees = waiting && t > waiting.t && Math.abs(raw - waiting.raw) <= jump / 2;
    known.jump = agrees
      ? { ...waiting, t, raw, needs: waiting.needs - 1 }
      : { from: t, t, raw, needs: reason === 'spike' ? 1 : 2, reason };
    return known.jump.needs;
  };

  const follow = (known: Past, t: number, raw: number, stuck: boolean) => {
    const { run } = known;
    if (run?.raw !== raw || t - run.t > SEEN) known.run = { from: t, t, raw, stuck };
    else known.run = { ...run, t, stuck: run.stuck || stuck };
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

  /** Why a reading is not believed yet, or that a jump now is; null for an ordinary one. */
  const judge = (
    known: Past,
    t: number,
    raw: number,
    { jump, rate }: { readonly jump: number | null; readonly rate: number | null },
  ): JumpReason | 'believed' | null => {
    const { last, jump: waiting } = known;
    if (!last || jump === null) return null;
    if (waiting && t > waiting.t && Math.abs(raw - waiting.raw) <= jump / 2)
      return wait(known, t, raw, waiting.reason, jump) <= 0 ? 'believed' : waiting.reason;
    if (t - last.t > COMPARABLE) return null;
    const change = Math.abs(raw - last.raw);
    const inMinutes = (t - last.t) / MINUTE;
    // Within a minute a probe's own noise would look like a rate: there the change itself counts.
    const tooFast = rate !== null && change / Math.max(1, inMinutes) > rate;
    // The limit is per five minutes; over a longer step it grows with the step.
    if (!tooFast && change <= jump * Math.max(1, inMinutes / 5)) return null;
    const reason = tooFast ? 'impossible-rate' : 'spike';
    wait(known, t, raw, reason, jump);
    return reason;
  };

  /** @param live came over the wire just now; readings of a file may be of any year. */
  const clean = (given: RawReading, receivedAt: number, live = false): Cleaned => {
    const { probe, quantity } = given;
    const series = { probe, quantity };
    const limits = bounds[quantity];
    const amendments: Amendment[] = [];
    const said = given.t ?? receivedAt;
    const first = live ? Math.max(FIRST_POSSIBLE, receivedAt - HELD_BACK) : FIRST_POSSIBLE;
    const wrongClock = said > receivedAt + AHEAD || said < first;
    const t = given.t === null || wrongClock ? receivedAt : given.t;
    const raw = given.value;
    const corrected = raw + offsetOf(probe, quantity, raw, t);
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
        `Expected a time between ${new Date(clampTime(first)).getUTCFullYear()} and now, got ${new Date(clampTime(said)).toISOString()}`,
      );
    } else if (!inRange(raw, limits) || !inRange(value, limits)) {
      doubt(
        'out-of-range',
        `Expected ${quantity} from ${limits.from} to ${limits.to}, got ${value === raw ? raw : `${raw} corrected to ${value}`}`,
      );
    } else {
      const known = pastOf(probe, quantity);
      // A reading from before the newest is a late one: the checks that look back don't apply.
      if (!known.last || t > known.last.t) {
        const jump = judge(known, t, raw, limits);
        if (isJump(jump)) {
          const from = known.last?.raw;
          doubt(
            jump,
            `Expected ${quantity} near ${from} after ${minutesSince(known, t)} min, got ${raw}`,
          );
        } else {
          if (jump === 'believed' && known.jump)
            amendments.push({
              ...series,
              from: known.jump.from,
              to: t - 1,
              flag: null,
              was: known.jump.reason,
            });
          known.jump = null;
          known.last = { t, raw };
          follow(known, t, raw, false);
          const { run } = known;
          const canStick =
            limits.stuckHours !== null && !(quantity === 'humidity' && raw >= SATURATED);
          if (run && canStick && t - run.from >= (limits.stuckHours ?? 0) * HOUR) {
            if (!run.stuck && movedElsewhere(probe, run.from)) {
              run.stuck = true;
              amendments.push({ ...series, from: run.from, to: t - 1, flag: 'stuck', was: null });
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
  return Object.assign(clean, {
    /** What was looked at may not have been kept: the store says how things stand. */
    forget: () => past.clear(),
  });
}

const inRange = (value: number, { from, to }: { readonly from: number; readonly to: number }) =>
  value >= from && value <= to;
const minutesSince = (known: Past, t: number) =>
  known.last ? Math.round((t - known.last.t) / MINUTE) : 0;
/** The range of times a date can be written for. */
const clampTime = (t: number) => Math.max(-8.64e15, Math.min(8.64e15, t));
