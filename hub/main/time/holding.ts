import type { Logger } from 'pino';
import {
  commitQueue,
  type Intake,
  type Message,
  type Parsed,
  type Release,
} from '../../intake/index.ts';
import type { Store } from '../../store/index.ts';

const DAY = 86_400_000; // ms
/** A probe's clock may run this far ahead of the hub's, as everywhere. */
const AHEAD = 5 * 60_000; // ms
const FIRST_POSSIBLE = Date.UTC(2000, 0, 1); // a time before this comes from a clock never set
/** Placed in one commit, so that nobody waits long meanwhile. */
const AT_ONCE = 500;
/** Two weeks of a large garden come to some 500,000 messages of 150 bytes. Ours. */
const MOST = 500_000;
const MOST_BYTES = 256 * 1024 * 1024;

export type HoldingParts = {
  readonly store: Store;
  readonly log: Logger;
  /** Names this count of the steady clock. */
  readonly boot: string;
  readonly steady: () => number;
  readonly parse: (message: Message) => Parsed;
  readonly intake: Pick<Intake, 'receive' | 'receiveReadings' | 'flush'>;
};
export type Wire = Omit<Message, 'receivedAt'>;

/**
 * Keeps messages that came while the clock was not to be believed, and lets them in when it is:
 * each with the time it came at. Those of an earlier start of the machine, whose count stands nowhere
 * in time, are let in only with a time of their own; the rest of them stays here.
 */
export function makeHolding(parts: HoldingParts) {
  const { store, log, boot, steady, parse, intake } = parts;
  let { count, bytes } = store.held.size();
  const sizeOf = ({ topic, payload }: Wire) => topic.length + payload.length;
  const queue = commitQueue<Wire & { readonly steady: number }>((batch) => {
    store.transaction(() =>
      store.held.add(batch.map((one) => ({ ...one, boot, from: one.from ?? null }))),
    );
    count += batch.length;
    for (const one of batch) bytes += sizeOf(one);
  });
  const remeasure = () => {
    ({ count, bytes } = store.held.size());
  };

  /** @returns whether there is more. @throws when the store cannot keep them; they stay held. */
  const placeSome = (): boolean => {
    const rows = store.held.due(AT_ONCE);
    let failure: Error | null = null;
    for (const row of rows)
      intake.receive({ ...row, receivedAt: row.receivedAt ?? 0 }, (error) => {
        failure ??= error ?? null;
      });
    intake.flush();
    if (failure) throw failure;
    store.transaction(() => store.held.remove(rows.map(({ id }) => id)));
    return rows.length === AT_ONCE;
  };

  /** What says itself when it was measured, whenever it came. */
  const placeTimeless = (now: number) => {
    let after = 0;
    for (;;) {
      const rows = store.held.timeless(boot, after, AT_ONCE);
      const done: number[] = [];
      for (const row of rows) {
        after = row.id;
        const today = parse({ ...row, receivedAt: now }).readings;
        const other = parse({ ...row, receivedAt: now + DAY }).readings;
        const own = today.filter(
          ({ t }, i) => t !== null && t === other[i]?.t && t >= FIRST_POSSIBLE && t <= now + AHEAD,
        );
        let failure: Error | null = null;
        if (own.length > 0)
          intake.receiveReadings(own, now, (error) => {
            failure ??= error ?? null;
          });
        intake.flush();
        if (failure) throw failure;
        if (own.length === today.length) done.push(row.id);
      }
      store.transaction(() => store.held.remove(done));
      if (rows.length < AT_ONCE) return;
    }
  };

  return {
    count: () => count,
    /** @param release called once, when it is on the disk. @returns false for what need not be held. */
    hold(message: Wire, release: Release): boolean {
      // What cannot be read is refused at once, as ever.
      if (parse({ ...message, receivedAt: 0 }).readings.length === 0) return false;
      if (count >= MOST || bytes + sizeOf(message) > MOST_BYTES)
        release(new Error(`Expected a clock that is set, got ${count} messages waiting for it`));
      else queue.hold({ ...message, steady: steady() }, release);
      return true;
    },
    flush: queue.flush,
    /**
     * The count of this boot begins `offset` ms after 1970. Writes that down first: should the hub
     * end half-way, it goes on with the same times.
     *
     * @returns whether all that can be placed is.
     */
    async place(offset: number, now: number): Promise<boolean> {
      queue.flush();
      try {
        store.held.resolve(boot, offset);
        while (placeSome()) await new Promise((resolve) => setImmediate(resolve));
        placeTimeless(now);
        return true;
      } catch (error) {
        log.error(error, 'held readings could not be placed'); // tried again
        return false;
      } finally {
        remeasure();
      }
    },
  };
}
