import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('../..', import.meta.url).pathname,
    include: ['tests/long/**/*.test.ts'],
    fileParallelism: false,
    testTimeout: 30 * 60_000,
    hookTimeout: 120_000,
  },
});
