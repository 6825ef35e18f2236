import {
  createHash,
  randomBytes,
  randomInt,
  type ScryptOptions,
  scrypt,
  timingSafeEqual,
} from 'node:crypto';
import { promisify } from 'node:util';

const scryptNow = promisify<string | Uint8Array, Buffer, number, ScryptOptions, Buffer>(scrypt);
// RFC 7914 scrypt. N 2^14, r 8, p 1: 16 MiB and some 50 ms each, bearable for a single-board
// computer on which sixty probes may connect at once after a power cut.
const COST: ScryptOptions = { N: 16_384, r: 8, p: 1 };
const KEY = 32; // bytes
// Without letters and digits that are taken for one another when read from a screen.
const LETTERS = 'abcdefghjkmnpqrstuvwxyz23456789';

/** Derivations at the same time: 16 MiB each, and the store's and page's own work goes on. Ours. */
const AT_ONCE = 2;
/** Derivations that wait: all probes of a large farm at once. Ours. */
const MOST_WAITING = 256;
let running = 0;
const waiting: (() => void)[] = [];

/** More passwords are to be worked on than this machine can take on: try again later. */
export class TooManyPasswords extends Error {}

/** @throws TooManyPasswords when the queue is full. */
async function derive(password: string | Uint8Array, salt: Uint8Array): Promise<Buffer> {
  if (running >= AT_ONCE) {
    if (waiting.length >= MOST_WAITING)
      throw new TooManyPasswords(
        `Expected at most ${MOST_WAITING} passwords that wait to be checked, got more: try again in a minute`,
      );
    await new Promise<void>((resolve) => waiting.push(resolve)); // its turn is handed to it
  } else running++;
  try {
    return await scryptNow(password, Buffer.from(salt), KEY, COST);
  } finally {
    const next = waiting.shift();
    if (next) next();
    else running--;
  }
}

/** What is kept of a password: `scrypt$SALT$KEY`, both in base64. */
export async function hashPassword(password: string): Promise<string> {
  const salt = randomBytes(16);
  const key = await derive(password, salt);
  return `scrypt$${salt.toString('base64')}$${key.toString('base64')}`;
}

export async function passwordFits(password: string | Uint8Array, kept: string): Promise<boolean> {
  const [, salt = '', key = ''] = kept.split('$');
  const wanted = Buffer.from(key, 'base64');
  if (wanted.length !== KEY) return false;
  return timingSafeEqual(await derive(password, Buffer.from(salt, 'base64')), wanted);
}

/** A kept password that no password fits: checking one of a name nobody has takes as long as any. */
export const NOBODY = `scrypt$${randomBytes(16).toString('base64')}$${randomBytes(KEY).toString('base64')}`;

/** A secret to be typed once, in groups of four. */
export function newSecret(groups: number): string {
  const letter = () => LETTERS[randomInt(LETTERS.length)] ?? 'x';
  const group = () => Array.from({ length: 4 }, letter).join('');
  return Array.from({ length: groups }, group).join('-');
}

/**
 * What is kept of a secret that the hub itself drew: at least 79 random bits, which nobody tries one
 * by one, so a plain hash (FIPS 180-4, SHA-256) is enough and can be looked up. Not for passwords.
 */
export const hashOfDrawn = (secret: string): string =>
  createHash('sha256').update(secret).digest('hex');
