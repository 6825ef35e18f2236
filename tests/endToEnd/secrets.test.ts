import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { gardenFile } from './gardenFile.ts';
import { dewpost, root } from './hubProcess.ts';
import { type Begun, begin, killed, tempFolder, until } from './processes.ts';

// A hub that writes down all it can: none of what lets somebody in may be among it, nor in any answer.

const PASSWORD = 'rain-on-glass-7391';
const WRONG = 'wrong-guess-8264';
const NEXT = 'dew-on-petals-5528';
const data = tempFolder();
let hub: Begun;
let page = '';
const answers: string[] = [];
const secrets = new Map<string, string>();

async function ask(path: string, command?: unknown, headers: Record<string, string> = {}) {
  const reply = await fetch(new URL(path, page), {
    headers: {
      ...(command === undefined ? {} : { 'content-type': 'application/json' }),
      ...headers,
    },
    ...(command === undefined
      ? {}
      : {
          method: 'POST',
          body: typeof command === 'string' ? command : JSON.stringify(command),
        }),
  });
  const body = await reply.text();
  answers.push(body);
  return {
    status: reply.status,
    body,
    cookie: reply.headers.getSetCookie()[0]?.split(';')[0] ?? '',
  };
}

beforeAll(async () => {
  const farm = gardenFile(data);
  const built = join(root, 'dist', 'hub', 'dewpost.js');
  hub = begin(
    process.execPath,
    [
      ...[built, 'start', '--data', data, '--farm', farm],
      ...['--http', '127.0.0.1:0', '--mqtt', '127.0.0.1:0'],
    ],
    { cwd: root, env: { ...process.env, DEWPOST_LOG: 'trace' } },
  );
  const code = await until(
    () => /type this code, once: (\S+)/.exec(hub.out())?.[1],
    'a code to claim the hub with',
    40_000,
  );
  page = /Open (http:\S+) in/.exec(hub.out())?.[1] ?? '';
  secrets.set('the claim code', code);
  for (const [what, text] of Object.entries({ PASSWORD, WRONG, NEXT })) secrets.set(what, text);

  await ask('/api/claim', { code: `${code}x`, name: 'Una', password: WRONG });
  await ask('/api/claim', { code, name: 'Una', password: PASSWORD, passwort: WRONG });
  const claimed = await ask('/api/claim', { code, name: 'Una', password: PASSWORD });
  expect(claimed.status).toBe(200);
  await ask('/api/sign-in', { name: 'Una', password: WRONG });
  await ask('/api/sign-in', { name: WRONG, password: '' });
  await ask('/api/sign-in', { nam: 'Una', pasword: PASSWORD });
  await ask('/api/sign-in', [PASSWORD]);
  await ask('/api/sign-in', JSON.stringify(PASSWORD));
  await ask('/api/sign-in', `{"name":"Una","password":"${PASSWORD}`);
  const { cookie } = claimed;
  secrets.set('the cookie', cookie.replace('dewpost=', ''));
  secrets.set(
    'the id in it',
    decodeURIComponent(cookie).replace('dewpost=', '').split('.')[0] ?? '',
  );
  const signedIn = { cookie };
  await ask('/api/password', { password: WRONG, newPassword: NEXT }, signedIn);
  await ask('/api/password', { password: PASSWORD, newPassword: WRONG, more: 1 }, signedIn);
  const made = await ask('/api/people/codes', { role: 'helper' }, signedIn);
  const joinCode = JSON.parse(made.body).code as string;
  answers.pop(); // the one answer that has to tell it
  secrets.set('a code to join with', joinCode);
  await ask('/api/join', { code: joinCode, name: 'Hal', password: NEXT, x: joinCode });
  expect((await ask('/api/join', { code: joinCode, name: 'Hal', password: NEXT })).status).toBe(
    200,
  );
  await ask('/api/join', { code: joinCode, name: 'Eve', password: WRONG });
  await ask('/api/today', undefined, { cookie: `dewpost=${WRONG}` });
  await ask(`/api/people/${WRONG}x/remove`, {}, {});
  for (const path of [
    '/api/people',
    '/api/who',
    '/api/today',
    '/api/health',
    '/metrics',
    '/api/farm',
  ])
    await ask(path, undefined, signedIn);
}, 90_000);
afterAll(async () => {
  if (hub) await killed(hub.child);
});

const expectNone = (text: string, where: string) => {
  for (const [what, secret] of secrets) {
    expect(secret.length, what).toBeGreaterThan(9);
    expect(text.includes(secret), `${what} in ${where}`).toBe(false);
  }
};

test('the log tells what was asked, and no secret', async () => {
  const log = hub.err();
  expect(log).toContain('"route":"/api/sign-in"');
  expect(log).toContain('"msg":"the hub is claimed"');
  expect(log).toContain('"msg":"somebody joined with a code"');
  for (const line of log.trim().split('\n'))
    expect(JSON.parse(line)).toMatchObject({ level: expect.any(Number), msg: expect.any(String) });
  expectNone(log, 'the log');
});

test('what it says on its own screen holds no secret but the claim code, and that once', () => {
  const said = hub.out();
  const code = secrets.get('the claim code') ?? '';
  expect(said.split(code)).toHaveLength(2);
  expectNone(said.replace(code, ''), 'what it said');
});

test('no answer holds a secret, whatever was wrong with the question', () => {
  expect(answers.length).toBeGreaterThan(18);
  for (const answer of answers) expectNone(answer, answer.slice(0, 300));
});

test('the farm that is written out holds no secret, nor anything kept of a password', async () => {
  const file = join(data, 'out.yaml');
  expect(await dewpost('farm', 'export', file, '--data', data)).toMatchObject({ code: 0 });
  const text = readFileSync(file, 'utf8');
  expectNone(text, 'the farm file');
  expect(text).not.toMatch(/scrypt\$/);
});

test('the store and its copy keep passwords only as what cannot be turned back', async () => {
  const file = join(data, 'copy.db');
  expect(await dewpost('backup', file, '--data', data)).toMatchObject({ code: 0 });
  const text = readFileSync(file).toString('latin1');
  expect(text).toContain('scrypt$');
  for (const what of ['PASSWORD', 'NEXT', 'the claim code', 'the id in it', 'a code to join with'])
    expect(text.includes(secrets.get(what) ?? 'x'), what).toBe(false);
});
