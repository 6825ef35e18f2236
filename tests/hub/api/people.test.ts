import { expect, test } from 'vitest';
import { cookieOf, PASSWORD, peopledHub } from './lockedHub.ts';

const DAY = 86_400_000; // ms
const NEXT = 'another-one-to-keep';

test('a code lets one person join, with the role it was made for', async () => {
  const { invite, join, get, ann } = await peopledHub();
  const { code } = await invite('grower');
  expect(code).toMatch(/^([a-z2-9]{4}-){3}[a-z2-9]{4}$/);
  const joined = await join(` ${code.toUpperCase()} `, 'Gus');
  expect([joined.statusCode, joined.json()]).toEqual([
    200,
    { claimed: true, open: false, name: 'Gus', role: 'grower' },
  ]);
  expect((await get('/api/people', cookieOf(joined))).statusCode).toBe(200);
  const again = await join(code, 'Eve');
  expect([again.statusCode, again.json().error]).toEqual([
    403,
    expect.stringMatching(/^Expected a code that a grower made and nobody has used, got another/),
  ]);
  const { people, codes } = (await get('/api/people', ann)).json();
  expect(people.map(({ name, role }: { name: string; role: string }) => [name, role])).toEqual([
    ['Ann', 'grower'],
    ['Gus', 'grower'],
    ['Hal', 'helper'],
  ]);
  expect(codes).toEqual([]);
});

test('a code that waits is listed without being told, and can be taken back', async () => {
  const { invite, join, get, post, ann } = await peopledHub();
  const { code, id } = await invite('helper');
  const listed = await get('/api/people', ann);
  expect(listed.json().codes).toMatchObject([{ id, role: 'helper', name: null }]);
  expect(listed.body).not.toContain(code);
  await post(`/api/people/codes/${id}/drop`, {}, { cookie: ann });
  expect((await join(code, 'Eve')).statusCode).toBe(403);
});

test('a code counts for three days', async () => {
  let now = Date.UTC(2026, 4, 10);
  const { invite, join } = await peopledHub({ wall: () => now });
  const [early, late] = [await invite('helper'), await invite('helper')];
  now += 3 * DAY - 1;
  expect((await join(early.code, 'Ida')).statusCode).toBe(200);
  now += 2;
  expect((await join(late.code, 'Joe')).statusCode).toBe(403);
});

test.for(['Ann', 'ann', ' HAL ', 'hub', 'Grower'])('the name %s cannot be taken', async (name) => {
  const { invite, join, store } = await peopledHub();
  const { code } = await invite('helper');
  const reply = await join(code, name);
  expect([reply.statusCode, reply.json().error]).toEqual([
    409,
    'Expected a name that nobody here has in name, got one that is taken',
  ]);
  expect((await join(code, 'Kit')).statusCode).toBe(200); // the code was not used up
  expect(store.people.all()).toHaveLength(3);
});

test.for(['', '  ', 'a\u0000b', 'a\nb', '\u202Egnp', 'x'.repeat(61)])(
  'the name %j is refused',
  async (name) => {
    const { invite, join } = await peopledHub();
    const reply = await join((await invite('helper')).code, name);
    expect(reply.statusCode).toBe(400);
    expect(reply.json().error).toMatch(/^Expected .* in name, got another one$/);
  },
);

test('a name is the same however its letters are put together', async () => {
  const { invite, join, post, from } = await peopledHub();
  await join((await invite('helper')).code, 'Zoe\u0308');
  from.remoteAddress = '10.9.9.9';
  const signed = await post('/api/sign-in', { name: 'Zo\u00EB', password: PASSWORD });
  expect([signed.statusCode, signed.json().name]).toEqual([200, 'Zo\u00EB']);
});

test('a new password by a code ends all sessions of that person, and no other', async () => {
  const { post, join, get, ann, hal, journal } = await peopledHub();
  const made = await post('/api/people/Hal/code', {}, { cookie: ann });
  const { code, name } = made.json();
  expect(name).toBe('Hal');
  expect((await get('/api/today', hal)).statusCode).toBe(200); // until the code is used
  expect((await join(code, 'Ann', NEXT)).json().error).toMatch(/^Expected the name the code was/);
  const joined = await join(code, 'Hal', NEXT);
  expect(joined.json()).toMatchObject({ name: 'Hal', role: 'helper' });
  expect((await get('/api/today', hal)).statusCode).toBe(401);
  expect((await get('/api/today', cookieOf(joined))).statusCode).toBe(200);
  expect((await get('/api/today', ann)).statusCode).toBe(200);
  const signIn = async (password: string) =>
    (await post('/api/sign-in', { name: 'Hal', password })).statusCode;
  expect([await signIn(PASSWORD), await signIn(NEXT)]).toEqual([403, 200]);
  expect(journal('password-set').map(({ who }) => who)).toEqual(['Hal']);
});

test('who is removed is signed out at once, and cannot come back with a code left over', async () => {
  const { post, get, join, invite, ann, hal, journal } = await peopledHub();
  const gus = cookieOf(await join((await invite('grower')).code, 'Gus'));
  const left = (await post('/api/people/codes', { role: 'grower' }, { cookie: gus })).json();
  const own = (await post('/api/people/Gus/code', {}, { cookie: ann })).json();
  const reply = await post('/api/people/Gus/remove', {}, { cookie: ann });
  expect(reply.json().people.map(({ name }: { name: string }) => name)).toEqual(['Ann', 'Hal']);
  expect((await get('/api/today', gus)).statusCode).toBe(401);
  expect((await join(left.code, 'Gus')).statusCode).toBe(403);
  expect((await join(own.code, 'Gus')).statusCode).toBe(403);
  expect((await post('/api/sign-in', { name: 'Gus', password: PASSWORD })).statusCode).toBe(403);
  expect((await get('/api/today', hal)).statusCode).toBe(200);
  expect(journal('person-removed')).toMatchObject([{ who: 'Ann', subject: 'Gus' }]);
});

test('the last grower stays', async () => {
  const { post, get, ann, invite, join } = await peopledHub();
  const refused = await post('/api/people/Ann/remove', {}, { cookie: ann });
  expect([refused.statusCode, refused.json()]).toEqual([
    409,
    { error: 'Expected another grower to stay, got Ann, the last one' },
  ]);
  expect((await get('/api/today', ann)).statusCode).toBe(200);
  await join((await invite('grower')).code, 'Gus');
  expect((await post('/api/people/Ann/remove', {}, { cookie: ann })).statusCode).toBe(200);
  expect((await get('/api/today', ann)).statusCode).toBe(401);
});

test('somebody unknown is neither removed nor given a code', async () => {
  const { post, ann } = await peopledHub();
  for (const what of ['remove', 'code']) {
    const reply = await post(
      `/api/people/${encodeURIComponent("O'Hara")}/${what}`,
      {},
      { cookie: ann },
    );
    expect([reply.statusCode, reply.json().error]).toEqual([
      404,
      'Expected the name of somebody here, got "O\'Hara"',
    ]);
  }
});

test('one changes one’s own password with the old one, and stays signed in here only', async () => {
  const { post, get, ann, journal } = await peopledHub();
  const phone = cookieOf(await post('/api/sign-in', { name: 'Ann', password: PASSWORD }));
  const change = (password: string, newPassword: string) =>
    post('/api/password', { password, newPassword }, { cookie: phone });
  const wrong = await change('not-this-one', NEXT);
  expect([wrong.statusCode, wrong.json().error]).toEqual([
    403,
    'Expected the password as it is now in password, got another one',
  ]);
  const short = await change(PASSWORD, 'short');
  expect([short.statusCode, short.json().error]).toEqual([
    400,
    expect.stringMatching(/in newPassword, got another one$/),
  ]);
  const changed = await change(PASSWORD, NEXT);
  expect(changed.statusCode).toBe(200);
  expect((await get('/api/today', ann)).statusCode).toBe(401);
  expect((await get('/api/today', phone)).statusCode).toBe(401);
  expect((await get('/api/today', cookieOf(changed))).statusCode).toBe(200);
  expect(journal('password-changed').map(({ who }) => who)).toEqual(['Ann']);
});

test('signing out everywhere ends every session of that person', async () => {
  const { post, get, ann, hal } = await peopledHub();
  const phone = cookieOf(await post('/api/sign-in', { name: 'Ann', password: PASSWORD }));
  expect((await post('/api/sign-out-everywhere', {}, { cookie: phone })).json().name).toBe(null);
  for (const cookie of [ann, phone]) expect((await get('/api/today', cookie)).statusCode).toBe(401);
  expect((await get('/api/today', hal)).statusCode).toBe(200);
});

test('what people did about people is in the journal, without any code or password', async () => {
  const { journal, invite } = await peopledHub();
  const { code } = await invite('helper');
  const entries = ['claimed', 'joined', 'code-made'].flatMap(journal);
  expect(entries.map(({ who, what }) => `${who} ${what}`)).toEqual([
    'Ann claimed',
    'Hal joined',
    'Ann code-made',
    'Ann code-made',
  ]);
  for (const secret of [code, PASSWORD]) expect(JSON.stringify(entries)).not.toContain(secret);
});
