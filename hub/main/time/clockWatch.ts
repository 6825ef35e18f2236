import type { Clock } from '../../clock.ts';

/** A step of less is a correction like any other, and taken as it comes. Ours. */
const STEP = 60_000; // ms
/** A clock that jumped is believed when it has stood by it for so long. Ours: a short spell of a
 *  wrong clock then leaves no trace, and a hub that was put right is not kept from its work. */
const STANDS = 5 * 60_000; // ms

/** `unset`: it was never set. `jumped`: it was put forward or back, and nobody knows yet for good. */
export type ClockState = 'ok' | 'unset' | 'jumped';

export type Watched = {
  /** Just noticed: the clock is now `by` ms ahead of where it should be (behind: negative). */
  readonly onJump: (by: number) => void;
  /**
   * The clock can be believed again. `by`: how far it was put for good; 0 when it came back; null when
   * it was set for the first time.
   */
  readonly onSettled: (by: number | null) => void;
};

/**
 * Holds the clock against the machine's steady count. Nothing here decides which of two times is
 * right: a clock that jumped and stays is followed, because people set clocks right, not wrong.
 */
export function watchClock(clock: Clock, { onJump, onSettled }: Watched) {
  const step = STEP * Math.max(1, clock.speed);
  const between = () => clock.now() - clock.steady();
  /** Of the clock as it was last believed; null: it never was. */
  let trusted: number | null = clock.isSet() ? between() : null;
  let pending: { readonly offset: number; readonly since: number } | null = null;
  let state: ClockState = trusted === null ? 'unset' : 'ok';

  const settle = (offset: number, by: number | null) => {
    trusted = offset;
    pending = null;
    state = 'ok';
    onSettled(by);
  };

  return {
    state: () => state,
    /** Where the steady count stands in time: add it to a count. Only when the state is `ok`. */
    offset: () => trusted ?? between(),
    /** Compares the two. To be called every second or so, and before anything is timed. */
    check(): ClockState {
      const offset = between();
      if (!clock.isSet()) {
        if (state === 'ok') onJump(offset - (trusted ?? offset));
        state = 'unset';
        pending = null;
      } else if (trusted === null) settle(offset, null);
      else if (Math.abs(offset - trusted) < step) {
        if (state === 'ok') trusted = offset;
        else settle(offset, 0);
      } else if (pending === null || Math.abs(offset - pending.offset) >= step) {
        pending = { offset, since: clock.steady() };
        state = 'jumped';
        onJump(offset - trusted);
      } else if (clock.steady() - pending.since >= STANDS) settle(offset, offset - trusted);
      return state;
    },
  };
}
export type ClockWatch = ReturnType<typeof watchClock>;
