import { randomBytes, randomInt, type ScryptOptions, scrypt, timingSafeEqual } from 'node:crypto';
import { promisify } from 'node:util';

const derive = promisify<string | Uint8Array, Buffer, number, ScryptOptions, Buffer>(scrypt);
// RFC 7914 scrypt. N 2^14, r 8, p 1: 16 MiB and some 50 ms each, bearable for a single-board
// computer on which sixty probes may connect at once after a power cut.
const COST: ScryptOptions = { N: 16_384, r: 8, p: 1 };
const KEY = 32; // bytes
// Without letters and digits that are taken for one another when read from a screen.
const LETTERS = 'abcdefghjkmnpqrstuvwxyz23456789';

/** What is kept of a password: `scrypt$SALT$KEY`, both in base64. */
export async function hashPassword(password: string): Promise<string> {
  const salt = randomBytes(16);
  const key = await derive(password, salt, KEY, COST);
  return `scrypt$${salt.toString('base64')}$${key.toString('base64')}`;
}

export async function passwordFits(password: string | Uint8Array, kept: string): Promise<boolean> {
  const [, salt = '', key = ''] = kept.split('$');
  const wanted = Buffer.from(key, 'base64');
  if (wanted.length !== KEY) return false;
  return timingSafeEqual(await derive(password, Buffer.from(salt, 'base64'), KEY, COST), wanted);
}

/** A secret to be typed once, in groups of four. */
export function newSecret(groups: number): string {
  const letter = () => LETTERS[randomInt(LETTERS.length)] ?? 'x';
  const group = () => Array.from({ length: 4 }, letter).join('');
  return Array.from({ length: groups }, group).join('-');
}
