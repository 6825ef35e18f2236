import { expect } from 'vitest';
import { CLAIM_CODE } from '../../../hub/api/index.ts';
import type { MadeCode } from '../../../hub/contract/index.ts';
import { hashPassword } from '../../../hub/passwords.ts';
import { servedHub } from '../smallFarm.ts';

export const PASSWORD = 'long-enough-to-keep';
export const CODE = 'abcd-efgh-jkmn';

export const cookieOf = (reply: { cookies: { name: string; value: string }[] }) =>
  reply.cookies.map(({ name, value }) => `${name}=${encodeURIComponent(value)}`).join('; ');

/** A hub that asks for a sign-in, with the code it printed when it started. */
export async function lockedHub(served: Parameters<typeof servedHub>[1] = {}) {
  const hub = await servedHub({ open: false }, served);
  hub.core.look();
  hub.store.people.putSecret(CLAIM_CODE, await hashPassword(CODE));
  // Each address may try ten times a minute: a test with many tries comes from several.
  const from = { remoteAddress: '127.0.0.1' };
  const post = (url: string, payload: object = {}, headers: Record<string, string> = {}) =>
    hub.app.inject({ method: 'POST', url, payload, headers, ...from });
  const claim = (code = CODE, name = 'Ann') =>
    post('/api/claim', { code, name, password: PASSWORD });
  const get = (url: string, cookie?: string) =>
    hub.app.inject({ url, headers: cookie ? { cookie } : {}, ...from });
  const journal = (what: string) => hub.store.journal.between(what, 0, Number.MAX_SAFE_INTEGER);
  return { ...hub, post, claim, get, from, journal };
}

/** The same, claimed by Ann, a grower; Hal joined as a helper. Cookies of both. */
export async function peopledHub(served: Parameters<typeof servedHub>[1] = {}) {
  const hub = await lockedHub(served);
  const ann = cookieOf(await hub.claim());
  const invite = async (role: 'helper' | 'grower') => {
    const reply = await hub.post('/api/people/codes', { role }, { cookie: ann });
    expect(reply.statusCode).toBe(200);
    return reply.json<MadeCode>();
  };
  const join = async (code: string, name: string, password = PASSWORD) => {
    hub.from.remoteAddress = `10.0.${Math.floor(Math.random() * 250)}.${1 + Math.floor(Math.random() * 250)}`;
    const reply = await hub.post('/api/join', { code, name, password });
    hub.from.remoteAddress = '127.0.0.1';
    return reply;
  };
  const joined = await join((await invite('helper')).code, 'Hal');
  expect(joined.json()).toMatchObject({ name: 'Hal', role: 'helper' });
  return { ...hub, ann, hal: cookieOf(joined), invite, join };
}
