import { setTimeout as wait } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { doorKeeper } from '../../../hub/main/broker/doorKeeper.ts';

/** A keeper whose passwords are the names backwards; looking at one takes until it is let go. */
function keeper({ held = false } = {}) {
  let now = 0;
  const looks: string[] = [];
  let atOnce = 0;
  let most = 0;
  const waiting: (() => void)[] = [];
  const kept = new Map(['p1', 'p2', 'p3'].map((name) => [name, [...name].reverse().join('')]));
  const ask = doorKeeper(
    (user) => kept.get(user),
    async (password, wanted) => {
      looks.push(Buffer.from(password).toString());
      atOnce++;
      most = Math.max(most, atOnce);
      if (held) await new Promise<void>((resolve) => waiting.push(resolve));
      atOnce--;
      return Buffer.from(password).toString() === wanted;
    },
    () => now,
  );
  return {
    ask: (user: string | undefined, password: string | undefined, address = '10.0.0.1') =>
      ask(user, password === undefined ? undefined : Buffer.from(password), address),
    looks,
    kept,
    most: () => most,
    pass: (ms: number) => {
      now += ms;
    },
    letGo: async () => {
      for (;;) {
        const next = waiting.shift();
        if (!next) return;
        next();
        await wait(0);
      }
    },
  };
}

test('a right password comes in, a wrong one, an unknown name or none does not', async () => {
  const { ask } = keeper();
  expect(await ask('p1', '1p')).toBe(true);
  expect(await ask('p1', 'p1')).toBe(false);
  expect(await ask('p9', '9p')).toBe(false);
  expect(await ask(undefined, '1p')).toBe(false);
  expect(await ask('p1', undefined)).toBe(false);
});

test('one that fitted is not looked at again, until the password is another', async () => {
  const { ask, looks, kept } = keeper();
  for (let i = 0; i < 5; i++) expect(await ask('p1', '1p')).toBe(true);
  expect(looks).toEqual(['1p']);
  expect(await ask('p1', 'x')).toBe(false);
  kept.set('p1', 'new');
  expect(await ask('p1', '1p')).toBe(false);
  expect(await ask('p1', 'new')).toBe(true);
});

test('after some wrong ones a name has to wait, and nobody else has to', async () => {
  const { ask, looks, pass } = keeper();
  expect(await ask('p2', '2p')).toBe(true);
  for (let i = 0; i < 5; i++) expect(await ask('p1', 'wrong')).toBe(false);
  const looked = looks.length;
  for (let i = 0; i < 1000; i++) expect(await ask('p1', `guess ${i}`)).toBe('later');
  expect(await ask('p1', '1p')).toBe('later');
  expect(looks).toHaveLength(looked); // refused without the work
  expect(await ask('p3', '3p')).toBe(true);
  expect(await ask('p2', '2p')).toBe(true);
  expect(await ask('p1', '1p', '10.0.0.2')).toBe(true); // from another machine
  pass(61_000);
  expect(await ask('p1', '1p')).toBe(true);
});

test('a machine that tries many names has to wait; who was in before comes back in all the same', async () => {
  const { ask, kept } = keeper();
  for (let i = 0; i < 40; i++) kept.set(`q${i}`, 'secret');
  expect(await ask('p1', '1p')).toBe(true);
  let refused = 0;
  for (let i = 0; i < 40; i++) if ((await ask(`q${i}`, 'guess')) === false) refused++;
  expect(refused).toBe(30);
  expect(await ask('p2', '2p')).toBe('later');
  expect(await ask('p1', '1p')).toBe(true);
});

test('only two are looked at at a time, and only so many may wait', async () => {
  const { ask, most, letGo, kept } = keeper({ held: true });
  for (let i = 0; i < 400; i++) kept.set(`q${i}`, 'secret');
  const asked = Array.from({ length: 400 }, (_, i) => ask(`q${i}`, 'secret', `10.0.1.${i}`));
  await wait(10);
  await letGo();
  const verdicts = await Promise.all(asked);
  expect(most()).toBe(2);
  expect(verdicts.filter((one) => one === true)).toHaveLength(202);
  expect(verdicts.filter((one) => one === 'later')).toHaveLength(198);
});
