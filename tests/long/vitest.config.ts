import { defineConfig } from 'vitest/config';

// What takes half an hour: not part of `npm test`.
export default defineConfig({
  test: {
    root: new URL('../..', import.meta.url).pathname,
    include: ['tests/long/**/*.long.ts'],
    maxWorkers: 1,
    testTimeout: 600_000,
    hookTimeout: 7_200_000,
  },
});
