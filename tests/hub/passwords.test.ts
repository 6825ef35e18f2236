import { expect, test } from 'vitest';
import {
  hashOfDrawn,
  hashPassword,
  NOBODY,
  newSecret,
  passwordFits,
  TooManyPasswords,
} from '../../hub/passwords.ts';

test('a password fits what is kept of it, and no other does', async () => {
  const kept = await hashPassword('rain on glass');
  expect(kept).not.toContain('rain');
  expect(await passwordFits('rain on glass', kept)).toBe(true);
  expect(await passwordFits('rain on grass', kept)).toBe(false);
  expect(await passwordFits('', kept)).toBe(false);
});

test('the same password is kept differently each time', async () => {
  expect(await hashPassword('rain on glass')).not.toBe(await hashPassword('rain on glass'));
});

// RFC 7914, section 12, third vector, is for other costs; the form of what is kept is ours, so the
// check is that Node's scrypt with RFC 7914's parameters as stated gives the same key.
test('what is kept is scrypt with N 16384, r 8, p 1', async () => {
  const { scryptSync } = await import('node:crypto');
  const [, salt = '', key] = (await hashPassword('pleaseletmein')).split('$');
  const wanted = scryptSync('pleaseletmein', Buffer.from(salt, 'base64'), 32, {
    N: 16_384,
    r: 8,
    p: 1,
  });
  expect(key).toBe(wanted.toString('base64'));
});

test('nothing fits a password that nobody has', async () => {
  for (const password of ['', 'x', NOBODY])
    expect(await passwordFits(password, NOBODY)).toBe(false);
});

test('what is not in the form of a kept password fits nothing', async () => {
  for (const kept of ['', 'scrypt$', 'scrypt$$', 'plain', '$$$$'])
    expect(await passwordFits('x', kept)).toBe(false);
});

test('three hundred at once: those beyond the queue are refused, all others are answered', async () => {
  const kept = await hashPassword('x');
  const results = await Promise.allSettled(
    Array.from({ length: 300 }, (_, i) => passwordFits(i % 2 ? 'x' : 'y', kept)),
  );
  const refused = results.filter(({ status }) => status === 'rejected');
  expect(refused.length).toBe(300 - 256 - 2);
  for (const one of refused)
    expect((one as PromiseRejectedResult).reason).toBeInstanceOf(TooManyPasswords);
  const answered = results.filter(({ status }) => status === 'fulfilled');
  expect(
    answered.map((one, i) => (one as PromiseFulfilledResult<boolean>).value === (i % 2 === 1)),
  ).not.toContain(false);
  expect(await passwordFits('x', kept)).toBe(true); // the queue is free again
});

test('drawn secrets are in groups of four, none like another', () => {
  const drawn = Array.from({ length: 500 }, () => newSecret(4));
  for (const secret of drawn)
    expect(secret).toMatch(/^([a-hj-km-np-z2-9]{4}-){3}[a-hj-km-np-z2-9]{4}$/);
  expect(new Set(drawn).size).toBe(500);
});

// Source: NIST, FIPS 180-4 examples, SHA-256 of "abc".
test('a drawn secret is kept as its SHA-256', () => {
  expect(hashOfDrawn('abc')).toBe(
    'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
  );
});
