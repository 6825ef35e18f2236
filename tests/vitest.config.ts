import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    // Each file starts its own hub, broker and data folder; two at a time suits two cores.
    maxWorkers: 2,
    testTimeout: 30_000,
  },
});
