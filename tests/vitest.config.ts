import { defineConfig } from 'vitest/config';

const report = process.env.DEWPOST_REPORT;

// Pure functions leave nothing behind: their files may share a worker, which spares loading rules/
// a hundred times.
const PURE = 'tests/rules/**/*.test.ts';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    // Each file starts its own hub, broker and data folder; two at a time suits two cores.
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 120_000,
    reporters: report ? ['default', 'json'] : ['default'],
    ...(report ? { outputFile: { json: report } } : {}),
    projects: [
      { extends: true, test: { name: 'pure', include: [PURE], isolate: false } },
      {
        extends: true,
        test: {
          name: 'whole',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/long/**', PURE],
        },
      },
    ],
  },
});
