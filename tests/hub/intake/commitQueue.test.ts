import { setTimeout as wait } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { commitQueue } from '../../../hub/intake/commitQueue.ts';

test('nobody is told before the batch is written, and then all in the order they came', async () => {
  const said: string[] = [];
  const queue = commitQueue<number>((batch) => said.push(`written ${batch.join(' ')}`), 500, 5);
  for (const item of [1, 2, 3]) queue.hold(item, (error) => said.push(`told ${item} ${error}`));
  expect(said).toEqual([]);
  await wait(30);
  expect(said).toEqual(['written 1 2 3', 'told 1 null', 'told 2 null', 'told 3 null']);
});

test('a full batch does not wait', () => {
  const batches: number[][] = [];
  const queue = commitQueue<number>((batch) => batches.push([...batch]), 2, 10_000);
  for (const item of [1, 2, 3, 4, 5]) queue.hold(item, () => {});
  expect(batches).toEqual([
    [1, 2],
    [3, 4],
  ]);
  queue.flush();
  expect(batches.at(-1)).toEqual([5]);
});

test('when writing fails, all are told why and nothing of it comes back in the next batch', () => {
  const errors: unknown[] = [];
  let broken = true;
  const batches: number[][] = [];
  const queue = commitQueue<number>(
    (batch) => {
      batches.push([...batch]);
      if (broken) throw new Error('disk full');
    },
    500,
    10_000,
  );
  for (const item of [1, 2]) queue.hold(item, (error) => errors.push(error?.message));
  queue.flush();
  broken = false;
  queue.hold(3, (error) => errors.push(error));
  queue.flush();
  expect(errors).toEqual(['disk full', 'disk full', null]);
  expect(batches).toEqual([[1, 2], [3]]);
});

test('what is thrown as text is told as an error', () => {
  let told: unknown;
  const queue = commitQueue<number>(
    () => {
      throw 'no room';
    },
    1,
    5,
  );
  queue.hold(1, (error) => {
    told = error;
  });
  expect(told).toEqual(new Error('no room'));
});

test('flushing with nothing held writes nothing', () => {
  let writes = 0;
  const queue = commitQueue<number>(() => writes++, 10, 5);
  queue.flush();
  queue.flush();
  expect(writes).toBe(0);
});

test('who is held while others are told goes into the next batch', () => {
  const batches: number[][] = [];
  const queue = commitQueue<number>((batch) => batches.push([...batch]), 500, 10_000);
  queue.hold(1, () => queue.hold(2, () => {}));
  queue.flush();
  queue.flush();
  expect(batches).toEqual([[1], [2]]);
});

test('a listener that breaks does not keep the others from being told', () => {
  const told: number[] = [];
  const queue = commitQueue<number>(() => {}, 500, 10_000);
  queue.hold(1, () => {
    throw new Error('socket gone');
  });
  queue.hold(2, () => told.push(2));
  try {
    queue.flush();
  } catch {
    // whether it is told on is not the question here
  }
  expect(told).toEqual([2]);
});
