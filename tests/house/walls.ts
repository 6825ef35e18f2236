// Who may import whom. A room is a folder; its row says which rooms of ours and which packages of
// others it may use. `types` may be imported as types only.

import { hubStages } from './order.ts';

export type Row = {
  readonly ours: readonly string[];
  readonly packages: readonly string[];
  /** Rooms of which only types may be used. */
  readonly types?: readonly string[];
  readonly node?: boolean;
};

export const rows: Readonly<Record<string, Row>> = {
  rules: { ours: ['rules'], packages: [] },
  'hub/contract': { ours: [], packages: ['zod'] },
  'hub/words': { ours: [], types: ['hub/contract'], packages: [] },
  'hub/farm': { ours: ['rules', 'hub/contract', 'hub/words'], packages: ['yaml'] },
  'hub/broker': { ours: [], packages: ['aedes', 'mqtt'], node: true },
  'hub/intake': { ours: ['rules', 'hub/contract', 'hub/words', 'hub/farm'], packages: [] },
  'hub/store': { ours: ['rules'], packages: ['better-sqlite3'], node: true },
  'hub/journal': { ours: [], types: ['hub/store'], packages: [] },
  'hub/batches': {
    ours: ['rules', 'hub/words', 'hub/journal', 'hub/farm', 'hub/clock.ts'],
    types: ['hub/contract', 'hub/store'],
    packages: [],
  },
  'hub/picks': {
    ours: ['hub/journal'],
    types: ['hub/store'],
    packages: [],
  },
  'hub/earnings': {
    ours: ['rules', 'hub/farm', 'hub/batches', 'hub/picks', 'hub/lots', 'hub/clock.ts'],
    types: ['hub/contract'],
    packages: [],
  },
  'hub/lots': {
    ours: ['rules', 'hub/journal', 'hub/store', 'hub/farm', 'hub/clock.ts'],
    types: ['hub/contract'],
    packages: [],
  },
  'hub/record': {
    ours: ['rules', 'hub/store', 'hub/farm', 'hub/clock.ts'],
    types: ['hub/contract'],
    packages: [],
  },
  'hub/batchFile': {
    ours: [
      'hub/contract',
      'hub/words',
      'hub/farm',
      'hub/journal',
      'hub/batches',
      'hub/record',
      'hub/clock.ts',
    ],
    packages: ['csv-parse', 'zod'],
  },
  'hub/snapshot': {
    ours: [
      'rules',
      'hub/store',
      'hub/farm',
      'hub/batches',
      'hub/lots',
      'hub/record',
      'hub/clock.ts',
    ],
    types: ['hub/contract'],
    packages: [],
  },
  'hub/losses': {
    ours: ['rules', 'hub/store', 'hub/journal', 'hub/farm', 'hub/lots', 'hub/clock.ts'],
    types: ['hub/contract'],
    packages: [],
  },
  // Pictures in a folder: knows nothing of what they show.
  'hub/photos': { ours: [], packages: [], node: true },
  'hub/season': {
    ours: ['rules', 'hub/store', 'hub/farm', 'hub/snapshot', 'hub/clock.ts'],
    types: ['hub/contract', 'hub/picks'],
    packages: [],
  },
  'hub/growing': {
    ours: [
      'rules',
      'hub/store',
      'hub/farm',
      'hub/batches',
      'hub/snapshot',
      'hub/season',
      'hub/clock.ts',
    ],
    types: ['hub/contract'],
    packages: [],
  },
  'hub/planning': {
    ours: [
      'rules',
      'hub/words',
      'hub/journal',
      'hub/batches',
      'hub/lots',
      'hub/growing',
      'hub/clock.ts',
    ],
    types: ['hub/contract', 'hub/store', 'hub/snapshot', 'hub/farm'],
    packages: [],
    node: true,
  },
  // Reads the source of rules/ as text, at build; runs nothing of it.
  'hub/methods': { ours: ['hub/contract'], packages: ['typescript'], node: true },
  'hub/tasks': { ours: ['rules', 'hub/store'], types: ['hub/batches'], packages: [] },
  'hub/placesCompared': {
    ours: [
      'rules',
      'hub/store',
      'hub/farm',
      'hub/batches',
      'hub/snapshot',
      'hub/growing',
      'hub/tasks',
      'hub/clock.ts',
    ],
    types: ['hub/contract'],
    packages: [],
  },
  // A limit tried on the past, on a thread of its own.
  'hub/trial': {
    ours: ['rules', 'hub/store', 'hub/farm', 'hub/snapshot', 'hub/tasks', 'hub/clock.ts'],
    types: ['hub/contract'],
    packages: [],
    node: true,
  },
  // What a season came to: pure counts.
  'hub/review': {
    ours: ['rules', 'hub/picks'],
    types: ['hub/contract', 'hub/tasks', 'hub/alarms', 'hub/batches'],
    packages: [],
  },
  'hub/alarms': { ours: ['rules'], packages: ['nodemailer'], node: true },
  'hub/api': {
    ours: [
      'rules',
      'hub/contract',
      'hub/words',
      'hub/farm',
      'hub/store',
      'hub/journal',
      'hub/batches',
      'hub/picks',
      'hub/lots',
      'hub/earnings',
      'hub/record',
      'hub/batchFile',
      'hub/snapshot',
      'hub/losses',
      'hub/photos',
      'hub/season',
      'hub/growing',
      'hub/planning',
      'hub/tasks',
      'hub/placesCompared',
      'hub/alarms',
      'hub/review',
      'hub/trial',
      'hub/methods',
      'hub/clock.ts',
      'hub/passwords.ts',
    ],
    packages: [
      'fastify',
      '@fastify/compress',
      '@fastify/cookie',
      '@fastify/helmet',
      '@fastify/rate-limit',
      '@fastify/static',
      '@fastify/swagger',
      'fastify-type-provider-zod',
      'zod',
    ],
    node: true,
  },
  'hub/clock.ts': { ours: ['rules'], packages: [] },
  'hub/settings.ts': { ours: ['hub/words'], packages: ['zod'], node: true },
  'hub/passwords.ts': { ours: [], packages: [], node: true },
  'hub/main': {
    ours: ['rules', ...hubStages],
    packages: ['node-cron', 'pino', 'csv-parse'],
    node: true,
  },
  'hub/dewpost.ts': { ours: ['hub/main'], packages: [] },
  dashboard: {
    ours: ['hub/contract', 'hub/words'],
    packages: ['preact', '@preact/signals', '@preact/preset-vite', 'uplot', 'vite'],
  },
  // Parts of the build, never of the page.
  'dashboard/vite.config.ts': {
    ours: ['dashboard', 'dashboard/squeezed.ts'],
    packages: ['vite', '@preact/preset-vite'],
  },
  'dashboard/squeezed.ts': { ours: [], packages: ['vite'], node: true },
  simulators: { ours: [], packages: ['mqtt'], node: true },
  tests: {
    ours: ['rules', 'dashboard', 'simulators', 'hub/main', 'hub/dewpost.ts', ...hubStages],
    packages: [
      'vitest',
      'fast-check',
      'playwright-core',
      '@axe-core/playwright',
      'psychrolib',
      'simple-statistics',
      'suncalc',
      'astronomy-engine',
      'vega-datasets',
      'yaml',
      'zod',
      'mqtt',
      'aedes',
      'better-sqlite3',
      'node-cron',
      'pino',
      'typescript',
      'vite',
      'smtp-server',
      'ical.js',
    ],
    node: true,
  },
};
