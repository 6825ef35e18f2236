import type { Logger } from 'pino';
import type { Clock } from '../../clock.ts';
import type { Message, Release } from '../../intake/index.ts';
import type { Store } from '../../store/index.ts';
import { moveTimes } from '../../tasks/index.ts';
import { type ClockState, watchClock } from './clockWatch.ts';
import { type HoldingParts, makeHolding, type Wire } from './holding.ts';

export type TimingParts = Omit<HoldingParts, 'steady' | 'intake'> & {
  readonly clock: Clock;
  readonly store: Store;
  readonly log: Logger;
  readonly intake: HoldingParts['intake'] & {
    receive(message: Message, release: Release): void;
  };
  /** The clock was put forward by `by` ms for good (back: negative): what is in memory moves along. */
  readonly moved: (by: number) => void;
  /** Told when the clock jumped: timers that wait for a time of day have to think again. */
  readonly jumped: () => void;
  /** Everything held has been let in, and the time is right: time for a look. */
  readonly settled: () => void;
};

/** Lets messages through under a clock to be believed, and holds them under any other. */
export function makeTiming(parts: TimingParts) {
  const { clock, store, log, intake, moved, jumped, settled } = parts;
  const holding = makeHolding({ ...parts, steady: clock.steady });
  /** Held messages are to be let in, or are being let in. */
  let placing = holding.count() > 0;
  let busy = false;

  const watch = watchClock(clock, {
    onJump(by) {
      log.warn({ by: by / 1000 }, 'the clock jumped; readings wait until it stands');
      jumped();
    },
    onSettled(by) {
      log.warn({ by: by === null ? null : by / 1000 }, 'the clock can be believed again');
      jumped();
      placing = true;
      if (by === null || by === 0) return;
      moveTimes(store, by);
      moved(by);
      const body = { by };
      store.journal.add({
        ...{ t: clock.now(), who: 'hub', what: 'clock' },
        ...{ place: null, subject: null, body },
      });
    },
  });

  /** Lets in what can be let in. */
  const place = async () => {
    if (!placing || busy || watch.state() !== 'ok') return;
    busy = true;
    const all = await holding.place(watch.offset(), clock.now());
    busy = false;
    if (!all || watch.state() !== 'ok') return; // at the next tick
    placing = false;
    settled();
  };

  return {
    receive(message: Wire, release: Release) {
      if (watch.check() !== 'ok' && holding.hold(message, release)) return;
      intake.receive({ ...message, receivedAt: clock.now() }, release);
    },
    /** Whether decisions may be made by this clock, with all there is. */
    ready: () => watch.check() === 'ok' && !placing,
    state: (): ClockState => watch.state(),
    held: holding.count,
    /** Every second or so. */
    async tick() {
      watch.check();
      await place();
    },
    flush: holding.flush,
  };
}
