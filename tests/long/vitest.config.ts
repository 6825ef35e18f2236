import { defineConfig } from 'vitest/config';

// Tests that take minutes: `npm run test:long`.
export default defineConfig({
  test: {
    root: new URL('../..', import.meta.url).pathname,
    include: ['tests/long/**/*.test.ts'],
    maxWorkers: 1,
    fileParallelism: false,
    testTimeout: 30 * 60_000,
    hookTimeout: 30 * 60_000,
  },
});
