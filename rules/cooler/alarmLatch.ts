import { expectRange } from '../expectRange.ts';
import { type Instant, MINUTE } from '../units.ts';

/**
 * normal -> pending (the condition holds, the hold-off runs) -> active -> back inside the limit.
 * An alarm nobody has seen latches: it becomes cleared-unacknowledged and not normal, so that what
 * happened in the night is still there in the morning.
 */
export type AlarmState =
  | 'normal'
  | 'pending'
  | 'active-unacknowledged'
  | 'active-acknowledged'
  | 'cleared-unacknowledged';

export type AlarmLatch = {
  readonly state: AlarmState;
  /** Since when the condition holds without a break; null while it does not. */
  readonly over: Instant | null;
  /** When the latest value came; null before any. */
  readonly heard: Instant | null;
  /** No value for more than three sample periods: an alarm of its own. */
  readonly noData: boolean;
  /** Who said "seen"; stops the sound, not the state. */
  readonly seenBy: string | null;
};

export type LatchSettings = {
  readonly limit: number;
  /** Which side of the limit is wrong. */
  readonly side: 'above' | 'below';
  readonly holdOffMinutes: number;
  readonly everyMinutes: number;
  /** How far inside the limit, K, it must come before it may clear; 0.4 when not given. */
  readonly rearm?: number;
};

/** A value (null: a sample that failed), the passing of time, or somebody saying "seen". */
export type LatchEvent =
  | { readonly kind: 'value'; readonly t: Instant; readonly value: number | null }
  | { readonly kind: 'time'; readonly t: Instant }
  | { readonly kind: 'seen'; readonly t: Instant; readonly by: string };

const REARM = 0.4; // K, common practice: 0.3 to 0.5
const MISSED = 3; // sample periods; common practice. One missing sample does not restart the hold-off

export const RESTING: AlarmLatch = {
  state: 'normal',
  over: null,
  heard: null,
  noData: false,
  seenBy: null,
};

/**
 * The next state of an alarm. Pure: keep what it returns and hand it back with the next event.
 * States as in ISA-18.2 / IEC 62682 (from memory).
 * @throws RangeError for a hold-off, sample period or re-arm distance below 0
 */
export function alarmLatch(
  latch: AlarmLatch,
  event: LatchEvent,
  settings: LatchSettings,
): AlarmLatch {
  const { holdOffMinutes, everyMinutes, rearm = REARM } = settings;
  expectRange('hold-off', holdOffMinutes, 0, 1440, 'min');
  expectRange('sample period', everyMinutes, 0.01, 1440, 'min');
  expectRange('re-arm distance', rearm, 0, 50, 'K');
  if (event.kind === 'seen') return seen(latch, event.by);
  const silent = latch.heard !== null && event.t - latch.heard > MISSED * everyMinutes * MINUTE;
  if (event.kind === 'time' || event.value === null) {
    return { ...latch, noData: latch.noData || silent };
  }
  const past =
    settings.side === 'above' ? event.value - settings.limit : settings.limit - event.value;
  // Through a long silence nobody knows whether the condition held, so its time begins anew.
  const over = past > 0 ? (silent ? event.t : (latch.over ?? event.t)) : null;
  const held = over !== null && event.t - over >= holdOffMinutes * MINUTE;
  return {
    state: nextState(latch.state, over !== null, held, past <= -rearm),
    over,
    heard: event.t,
    noData: false,
    seenBy: latch.seenBy,
  };
}

function nextState(state: AlarmState, over: boolean, held: boolean, inside: boolean): AlarmState {
  switch (state) {
    case 'normal':
    case 'pending':
      return held ? 'active-unacknowledged' : over ? 'pending' : 'normal';
    case 'active-unacknowledged':
      return inside ? 'cleared-unacknowledged' : state;
    case 'active-acknowledged':
      return inside ? 'normal' : state;
    case 'cleared-unacknowledged':
      return held ? 'active-unacknowledged' : state;
  }
}

function seen(latch: AlarmLatch, by: string): AlarmLatch {
  if (latch.state === 'active-unacknowledged') {
    return { ...latch, state: 'active-acknowledged', seenBy: by };
  }
  if (latch.state === 'cleared-unacknowledged') {
    return { ...latch, state: latch.over === null ? 'normal' : 'pending', seenBy: by };
  }
  return latch;
}
