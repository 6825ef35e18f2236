import { defineConfig } from 'vitest/config';

const report = process.env.DEWPOST_REPORT;

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/long/**'],
    // Each file starts its own hub, broker and data folder; two at a time suits two cores.
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 120_000,
    reporters: report ? ['default', 'json'] : ['default'],
    ...(report ? { outputFile: { json: report } } : {}),
  },
});
