import { isIPv6 } from 'node:net';
import type { FastifyRequest } from 'fastify';
import { Refused } from './parts.ts';
import { makeTries } from './tries.ts';

const SECOND = 1000; // ms
/** An address that keeps guessing. Ours. */
const LONGEST_OF_ADDRESS = 15 * 60 * SECOND;
/** A name that somebody keeps guessing at: short, because its owner waits too. Ours. */
const LONGEST_OF_NAME = 30 * SECOND;
/** Pairs of name and address that have signed in, remembered. Ours. */
const MOST_KNOWN = 500;

/** An address, or the network of 2^64 that one IPv6 machine may choose its address from (RFC 4291, 2.5.4). */
export function sourceOf(address: string): string {
  const plain = address.replace(/^::ffff:(?=\d+\.)/i, '').replace(/%.*$/, '');
  if (!isIPv6(plain)) return plain;
  const [head = '', tail] = plain.toLowerCase().split('::');
  const front = head.split(':').filter(Boolean);
  const back = (tail ?? '').split(':').filter(Boolean);
  const zeros = Array(Math.max(0, 8 - front.length - back.length)).fill('0');
  return `${[...front, ...zeros, ...back].slice(0, 4).join(':')}::/64`;
}

export type WayIn = ReturnType<typeof makeWayIn>;

/** Counts tries to get in, by address and by name, and makes those who fail wait. */
export function makeWayIn(clock?: () => number) {
  const byAddress = makeTries(LONGEST_OF_ADDRESS, clock);
  const byName = makeTries(LONGEST_OF_NAME, clock);
  // Where a name has signed in before, the tries of others elsewhere do not count against it.
  const known = new Set<string>();
  const pair = (request: FastifyRequest, name: string) => `${sourceOf(request.ip)} ${name}`;
  let failed = 0;
  /** This name is at home at this address. */
  const remember = (request: FastifyRequest, name: string) => {
    known.delete(pair(request, name));
    known.add(pair(request, name));
    const [oldest] = known;
    if (known.size > MOST_KNOWN && oldest !== undefined) known.delete(oldest);
  };
  return {
    /**
     * A try begins. It counts as failed until it is said to have got in, so that many at the same
     * moment are not one.
     *
     * @throws Refused 429 while this address, or this name from elsewhere, has to wait.
     */
    begin(request: FastifyRequest, name: string): { gotIn(): void } {
      const address = sourceOf(request.ip);
      const isKnown = known.has(pair(request, name));
      const wait = Math.max(byAddress.waits(address), isKnown ? 0 : byName.waits(name));
      if (wait > 0) {
        const seconds = Math.ceil(wait / SECOND);
        throw new Refused(
          429,
          `Expected the next try in ${seconds} s, after several that failed, got one now`,
          { 'retry-after': String(seconds) },
        );
      }
      failed++;
      byAddress.failed(address);
      if (!isKnown) byName.failed(name);
      return {
        gotIn() {
          failed--;
          byAddress.undo(address);
          byName.forget(name);
          remember(request, name);
        },
      };
    },
    remember,
    /** Tries that failed since the start. */
    failed: () => failed,
  };
}
