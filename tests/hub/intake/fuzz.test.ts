import { expect, test } from 'vitest';
import { fuzzed } from './fuzzed.ts';

// A new seed each time: what it was is in the name, to be run again with FUZZ_SEED. The same with
// more than 100,000 messages is in tests/long/.
const seed = Number(process.env.FUZZ_SEED ?? Date.now() % 1_000_000_000);

test(`3,000 messages of any kind leave the hub as it was (seed ${seed})`, {
  timeout: 300_000,
}, async () => {
  const after = await fuzzed(seed, 3000);
  expect(after).toMatchObject({
    alive: true,
    good: 4321,
    failure: null,
    unclear: [],
    bodies: true,
  });
  expect(after.acknowledged).toBeGreaterThan(2900);
  expect(after.refused).toBeGreaterThan(300); // it was no easy ride
  expect(after.probes).toBeLessThanOrEqual(after.mostProbes);
  expect(after.refusalRows).toBeLessThanOrEqual(400);
});
