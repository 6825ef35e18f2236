import type { Pace } from './pace.ts';

/** Tells the sender: kept (no error), or not kept and to be sent again. */
export type Release = (error?: Error | null) => void;

/**
 * Group commit: what came in within a short wait is written in one commit, and only then
 * acknowledged, in the order it came.
 *
 * @param write keeps a batch, or throws and keeps nothing of it.
 * @param most batch size that does not wait.
 * @param waitMs how long a batch waits at the most, while more keeps coming.
 * @param onFault told when a sender could not be told.
 * @param pace how often a commit may be made; without it, as often as messages come.
 */
export function commitQueue<Item>(
  write: (batch: readonly Item[]) => void,
  most = 500,
  waitMs = 5,
  onFault: (error: unknown) => void = () => {},
  pace: Pace | undefined = undefined,
) {
  let held: { item: Item; release: Release }[] = [];
  let timer: NodeJS.Immediate | undefined;
  let later: NodeJS.Timeout | undefined;

  const flush = () => {
    clearImmediate(timer);
    clearTimeout(later);
    timer = undefined;
    later = undefined;
    if (held.length === 0) return;
    const batch = held;
    held = [];
    pace?.spend();
    let failure: Error | null = null;
    try {
      write(batch.map(({ item }) => item));
    } catch (error) {
      failure = error instanceof Error ? error : new Error(String(error));
    }
    for (const { release } of batch)
      try {
        release(failure);
      } catch (error) {
        onFault(error); // a socket that is gone does not keep the others from being told
      }
  };

  // A timer would make a lone sender wait for nobody: company that comes at all comes within a turn
  // or two of the loop. At 50 senders with one message in flight this took four times as many.
  const waitForCompany = () => {
    const until = performance.now() + waitMs;
    let seen = 0;
    const turn = () => {
      if (held.length > seen && performance.now() < until) {
        seen = held.length;
        timer = setImmediate(turn);
      } else flush();
    };
    timer = setImmediate(turn);
  };

  return {
    hold(item: Item, release: Release) {
      held.push({ item, release });
      if (held.length >= most) flush();
      else if (timer === undefined && later === undefined) {
        const wait = pace?.wait() ?? 0;
        if (wait > 0) later = setTimeout(flush, wait);
        else waitForCompany();
      }
    },
    /** At once; before closing the store, and in replays. */
    flush,
  };
}
