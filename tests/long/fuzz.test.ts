import { expect, test } from 'vitest';
import { fuzzed } from '../hub/intake/fuzzed.ts';

const COUNT = 120_000;
const seed = Number(process.env.FUZZ_SEED ?? Date.now() % 1_000_000_000);

test(`${COUNT} messages of any kind leave the hub as it was (seed ${seed})`, async () => {
  const after = await fuzzed(seed, COUNT);
  process.stdout.write(`${JSON.stringify({ seed, ...after })}\n`);
  expect(after).toMatchObject({
    alive: true,
    good: 4321,
    failure: null,
    unclear: [],
    bodies: true,
  });
  expect(after.acknowledged).toBeGreaterThan(0.97 * COUNT);
  expect(after.probes).toBeLessThanOrEqual(after.mostProbes);
  expect(after.refusalRows).toBeLessThanOrEqual(400);
  // Over the second half; what a collector has not got round to is in it.
  expect(after.megabytesGrown).toBeLessThan(100);
});
