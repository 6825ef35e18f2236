import fc from 'fast-check';
import { expect, test } from 'vitest';
import { makeTries } from '../../../hub/api/tries.ts';
import { makeWayIn, sourceOf, type WayIn } from '../../../hub/api/wayIn.ts';
import { lockedHub, PASSWORD } from './lockedHub.ts';

const MINUTE = 60_000;

test('the first five failures cost nothing; each further one doubles the wait, up to the longest', () => {
  let now = 0;
  const tries = makeTries(30_000, () => now);
  const waits: number[] = [];
  for (let i = 0; i < 12; i++) {
    tries.failed('x');
    waits.push(tries.waits('x') / 1000);
    now += tries.waits('x');
  }
  expect(waits).toEqual([0, 0, 0, 0, 0, 1, 2, 4, 8, 16, 30, 30]);
  expect(tries.waits('y')).toBe(0);
});

test('no number of failures keeps anybody waiting longer than the longest wait', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: 100_000 }), { maxLength: 60 }),
      fc.integer({ min: 1000, max: 900_000 }),
      (pauses, longest) => {
        let now = 0;
        const tries = makeTries(longest, () => now);
        for (const pause of pauses) {
          now += pause;
          tries.failed('x');
          if (tries.waits('x') > longest) return false;
        }
        now += longest;
        return tries.waits('x') === 0;
      },
    ),
  );
});

test('failures are forgotten after an hour without any', () => {
  let now = 0;
  const tries = makeTries(MINUTE, () => now);
  for (let i = 0; i < 9; i++) tries.failed('x');
  now += 61 * MINUTE;
  tries.failed('x');
  expect(tries.waits('x')).toBe(0);
});

test('a hundred thousand sources take no more memory than five thousand', () => {
  const tries = makeTries(MINUTE);
  for (let i = 0; i < 100_000; i++) tries.failed(`10.${i}`);
  expect(tries.size()).toBe(5000);
});

// RFC 4291, sections 2.2 (text forms), 2.5.4 and 2.5.5.2 (IPv4-mapped addresses).
test.for([
  ['192.168.1.20', '192.168.1.20'],
  ['::ffff:192.168.1.20', '192.168.1.20'],
  ['::1', '0:0:0:0::/64'],
  ['fe80::1:2%eth0', 'fe80:0:0:0::/64'],
  ['2001:db8:1:2:3:4:5:6', '2001:db8:1:2::/64'],
  ['2001:DB8:1:2::9', '2001:db8:1:2::/64'],
  ['2001:db8::9', '2001:db8:0:0::/64'],
])('%s counts as %s', ([address = '', source]) => {
  expect(sourceOf(address)).toBe(source);
});

const asked = (ip: string) => ({ ip }) as Parameters<WayIn['begin']>[0];
const refuses = (work: () => unknown) => {
  try {
    work();
    return false;
  } catch {
    return true;
  }
};

test('guessing at a name from many addresses is slowed down, and its owner where known is not', () => {
  let now = 0;
  const way = makeWayIn(() => now);
  way.begin(asked('10.0.0.1'), 'Ann').gotIn();
  const guess = (i: number) => refuses(() => way.begin(asked(`10.1.0.${i}`), 'Ann'));
  const first = Array.from({ length: 7 }, (_, i) => guess(i));
  expect(first).toEqual([false, false, false, false, false, false, true]);
  expect(refuses(() => way.begin(asked('10.0.0.1'), 'Ann'))).toBe(false);
  // Somewhere new, Ann waits as long as the guesser does, and no longer than half a minute.
  expect(refuses(() => way.begin(asked('10.0.0.2'), 'Ann'))).toBe(true);
  for (let i = 0; i < 50; i++) {
    now += 30_000;
    guess(i % 250);
  }
  now += 30_000;
  expect(refuses(() => way.begin(asked('10.0.0.2'), 'Ann'))).toBe(false);
});

test('getting in with a name of one’s own does not buy more guesses at another', () => {
  const way = makeWayIn(() => 0);
  const refused: boolean[] = [];
  for (let i = 0; i < 8; i++) {
    refused.push(refuses(() => way.begin(asked('10.0.0.1'), `guess ${i}`)));
    if (!refused.at(-1)) refuses(() => way.begin(asked('10.0.0.1'), 'Eve').gotIn());
  }
  expect(refused.at(-1)).toBe(true);
});

test('many guesses at the same moment are not one', async () => {
  const { post, claim } = await lockedHub();
  await claim();
  const replies = await Promise.all(
    Array.from({ length: 9 }, () => post('/api/sign-in', { name: 'Ann', password: 'x' })),
  );
  const codes = replies.map(({ statusCode }) => statusCode);
  expect(codes.filter((code) => code === 403).length).toBeLessThanOrEqual(6);
  expect(codes.every((code) => code === 403 || code === 429)).toBe(true);
});

test('after six that failed a guesser is told how long to wait; then the right password gets in', async () => {
  const { post, claim, from } = await lockedHub();
  await claim();
  from.remoteAddress = '10.0.0.5';
  const signIn = (password: string) => post('/api/sign-in', { name: 'Ann', password });
  for (let i = 0; i < 6; i++) expect((await signIn('x')).statusCode).toBe(403);
  const told = await signIn(PASSWORD);
  expect([told.statusCode, told.json().error]).toEqual([
    429,
    expect.stringMatching(/^Expected the next try in 1 s, after several that failed, got one now$/),
  ]);
  expect(told.headers['retry-after']).toBe('1');
  // The one who claimed it here is not kept waiting by those guesses.
  from.remoteAddress = '127.0.0.1';
  expect((await signIn(PASSWORD)).statusCode).toBe(200);
});

test('more than ten tries a minute from one address are refused, failed or not', async () => {
  const { post, claim } = await lockedHub();
  await claim();
  const codes: number[] = [];
  for (let i = 0; i < 12; i++)
    codes.push((await post('/api/sign-in', { name: 'Ann', password: PASSWORD })).statusCode);
  expect(codes.slice(0, 10)).toEqual(Array(10).fill(200));
  expect(codes[10]).toBe(429);
  const reply = await post('/api/sign-in', { name: 'Ann', password: PASSWORD });
  expect(reply.json().error).toMatch(/^Expected at most 10 tries a minute, got more/);
});

test('the claim code is guarded like a password', async () => {
  const { claim } = await lockedHub();
  const codes: number[] = [];
  for (let i = 0; i < 8; i++) codes.push((await claim('aaaa-aaaa-aaaa')).statusCode);
  expect(codes).toEqual([403, 403, 403, 403, 403, 403, 429, 429]);
});

test('a name that nobody has takes as long to refuse as one that somebody has', async () => {
  const { post, claim, from } = await lockedHub();
  await claim();
  const times = async (name: string, network: string) => {
    const all: number[] = [];
    for (let i = 0; i < 5; i++) {
      from.remoteAddress = `${network}.${i}`;
      const begun = performance.now();
      expect((await post('/api/sign-in', { name, password: 'x' })).statusCode).toBe(403);
      all.push(performance.now() - begun);
    }
    return Math.min(...all);
  };
  const [known, unknown] = [await times('Ann', '10.1.0'), await times('Nobody', '10.2.0')];
  // Without the same work it would be some fifty times shorter.
  expect(unknown).toBeGreaterThan(known / 15);
});
