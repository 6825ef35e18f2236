import { createHmac, randomBytes } from 'node:crypto';
import { passwordFits } from '../../passwords.ts';

// Looking at a password costs 16 MB and some 50 ms of one core, on purpose. So that a flood of
// connections does not take the whole machine: few at a time, few wrong ones, and none twice.

/** At a time; the others wait. Ours: leaves cores of a small board for the readings. */
const AT_A_TIME = 2;
/** Waiting; sixty probes come back at once after a power cut. More are told to come later. Ours. */
const MOST_WAITING = 200;
/** Wrong passwords under one name from one machine, and from one machine in all, within a minute. Ours. */
const WRONG_NAME = 5;
const WRONG_MACHINE = 30;
const WITHIN = 60_000; // ms
/** Remembered at the most; the oldest are forgotten. */
const MOST_KNOWN = 2000;

export type DoorKeeper = (
  user: string | undefined,
  password: Uint8Array | undefined,
  address: string,
) => Promise<boolean | 'later'>;

/**
 * @param keptOf the password kept of a name; null or undefined: nobody of that name may come in.
 * @param fits looks at one password.
 * @param now monotonic ms.
 */
export function doorKeeper(
  keptOf: (user: string) => string | null | undefined,
  fits = passwordFits,
  now = () => performance.now(),
): DoorKeeper {
  const secret = randomBytes(32);
  /** What fitted before, so that a probe that comes back costs nothing. */
  const fitted = new Map<string, string>();
  const wrong = new Map<string, { count: number; since: number }>();
  let busy = 0;
  const queue: (() => void)[] = [];

  const many = (key: string, most: number) => {
    const known = wrong.get(key);
    return known !== undefined && now() - known.since < WITHIN && known.count >= most;
  };
  const countWrong = (key: string) => {
    const known = wrong.get(key);
    if (known && now() - known.since < WITHIN) known.count++;
    else {
      wrong.delete(key);
      wrong.set(key, { count: 1, since: now() });
      const oldest = wrong.keys().next().value;
      if (wrong.size > MOST_KNOWN && oldest !== undefined) wrong.delete(oldest);
    }
  };

  return async (user, password, address) => {
    const kept = user === undefined ? null : keptOf(user);
    const named = `${address}\n${user ?? ''}`;
    if (user === undefined || kept == null || password === undefined) return false;
    const print = createHmac('sha256', secret).update(kept).update(password).digest('base64');
    if (fitted.get(user) === print) return true;
    if (many(named, WRONG_NAME) || many(address, WRONG_MACHINE)) return 'later';
    if (busy < AT_A_TIME) busy++;
    else if (queue.length >= MOST_WAITING) return 'later';
    else await new Promise<void>((resolve) => queue.push(resolve)); // its turn comes with a place
    try {
      // Many may have been wrong while this one waited.
      if (many(named, WRONG_NAME) || many(address, WRONG_MACHINE)) return 'later';
      const right = await fits(password, kept);
      if (right) {
        fitted.delete(user);
        fitted.set(user, print);
        const oldest = fitted.keys().next().value;
        if (fitted.size > MOST_KNOWN && oldest !== undefined) fitted.delete(oldest);
      } else {
        countWrong(named);
        countWrong(address);
      }
      return right;
    } finally {
      const next = queue.shift();
      if (next) next();
      else busy--;
    }
  };
}
