// Who may import whom. A room is a folder; its row says which rooms of ours and which packages of
// others it may use. `types` may be imported as types only.

export type Row = {
  readonly ours: readonly string[];
  readonly packages: readonly string[];
  /** Rooms of which only types may be used. */
  readonly types?: readonly string[];
  readonly node?: boolean;
};

/** The order inside rules/: a folder may use those before it. */
export const rulesOrder = [
  'statistics',
  'air',
  'wetness',
  'heat',
  'frost',
  'water',
  'stations',
  'disease',
  'cooler',
  'batches',
  'money',
  'losses',
  'days',
  'decide',
];

const hubStages = [
  'hub/contract',
  'hub/words',
  'hub/farm',
  'hub/broker',
  'hub/intake',
  'hub/store',
  'hub/lots',
  'hub/record',
  'hub/snapshot',
  'hub/season',
  'hub/tasks',
  'hub/alarms',
  'hub/methods',
  'hub/api',
  'hub/clock.ts',
  'hub/settings.ts',
  'hub/passwords.ts',
];

export const rows: Readonly<Record<string, Row>> = {
  rules: { ours: ['rules'], packages: [] },
  'hub/contract': { ours: [], packages: ['zod'] },
  'hub/words': { ours: [], types: ['hub/contract'], packages: [] },
  'hub/farm': { ours: ['rules', 'hub/contract', 'hub/words'], packages: ['yaml'] },
  'hub/broker': { ours: [], packages: ['aedes', 'mqtt'], node: true },
  'hub/intake': { ours: ['rules', 'hub/contract', 'hub/words', 'hub/farm'], packages: [] },
  'hub/store': { ours: ['rules'], packages: ['better-sqlite3'], node: true },
  'hub/lots': {
    ours: ['rules', 'hub/store', 'hub/farm', 'hub/clock.ts'],
    types: ['hub/contract'],
    packages: [],
  },
  'hub/record': {
    ours: ['rules', 'hub/store', 'hub/farm', 'hub/clock.ts'],
    types: ['hub/contract'],
    packages: [],
  },
  'hub/snapshot': {
    ours: ['rules', 'hub/store', 'hub/farm', 'hub/lots', 'hub/record', 'hub/clock.ts'],
    types: ['hub/contract'],
    packages: [],
  },
  'hub/season': {
    ours: ['rules', 'hub/store', 'hub/farm', 'hub/snapshot', 'hub/clock.ts'],
    types: ['hub/contract'],
    packages: [],
  },
  // Reads the source of rules/ as text, at build; runs nothing of it.
  'hub/methods': { ours: ['hub/contract'], packages: ['typescript'], node: true },
  'hub/tasks': { ours: ['rules', 'hub/store'], packages: [] },
  'hub/alarms': { ours: ['rules'], packages: ['nodemailer'], node: true },
  'hub/api': {
    ours: [
      'rules',
      'hub/contract',
      'hub/words',
      'hub/farm',
      'hub/store',
      'hub/lots',
      'hub/record',
      'hub/snapshot',
      'hub/season',
      'hub/tasks',
      'hub/alarms',
      'hub/methods',
      'hub/clock.ts',
      'hub/passwords.ts',
    ],
    packages: [
      'fastify',
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
  'hub/main': { ours: ['rules', ...hubStages], packages: ['node-cron', 'pino'], node: true },
  'hub/dewpost.ts': { ours: ['hub/main'], packages: [] },
  dashboard: {
    ours: ['hub/contract', 'hub/words'],
    packages: ['preact', '@preact/signals', '@preact/preset-vite', 'uplot', 'vite'],
  },
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
    ],
    node: true,
  },
};

/** The room a file belongs to: the longest row that is a beginning of its path. */
export const roomOf = (path: string): string | undefined =>
  Object.keys(rows)
    .filter((room) => path === room || path.startsWith(`${room}/`))
    .sort((a, b) => b.length - a.length)[0];

const LONGEST = 250; // lines
/** A language is one file, however long: it is a table of words, not code to be read through. */
const LANGUAGE = /^hub\/words\/[a-z]{2}\.ts$/;
const IMPORT =
  /^\s*(?:import|export)\s+(type\s+)?[^'"]*?from\s+['"]([^'"]+)['"]|^\s*import\s+['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]/gm;

function resolve(from: string, specifier: string): string {
  const parts = from.split('/').slice(0, -1);
  for (const step of specifier.split('/')) {
    if (step === '..') parts.pop();
    else if (step !== '.') parts.push(step);
  }
  return parts.join('/');
}

const packageOf = (specifier: string) =>
  specifier.startsWith('@')
    ? specifier.split('/').slice(0, 2).join('/')
    : (specifier.split('/')[0] ?? '');

/** Files of rules/ that stand outside its folders and that every folder may use. */
const inTheOpen = (path: string) => /^rules\/[a-zA-Z]+\.ts$/.test(path);

function faultInRules(from: string, to: string): string | null {
  if (inTheOpen(from) || inTheOpen(to)) return null;
  const [mine = '', theirs = ''] = [from.split('/')[1], to.split('/')[1]];
  if (mine === theirs) return null;
  if (!rulesOrder.includes(mine) || !rulesOrder.includes(theirs))
    return `${to} has no place in the order of rules/`;
  if (rulesOrder.indexOf(theirs) > rulesOrder.indexOf(mine))
    return `${to} lies to the right of rules/${mine}`;
  return to === `rules/${theirs}/index.ts`
    ? null
    : `${to} lies behind a door: import rules/${theirs}/index.ts`;
}

/** Folders of the hub have a door, their index.ts; single files are their own. */
const DOORS = hubStages.filter((stage) => !stage.endsWith('.ts'));

function faultOf(from: string, specifier: string, typesOnly: boolean): string | null {
  const room = roomOf(from) ?? '';
  const row = rows[room] as Row;
  if (specifier.startsWith('node:')) return row.node ? null : `${specifier} is not for ${room}`;
  if (!specifier.startsWith('.'))
    return row.packages.includes(packageOf(specifier))
      ? null
      : `the package ${specifier} is not for ${room}`;
  const to = resolve(from, specifier);
  if (room === 'rules' && to.startsWith('rules/')) return faultInRules(from, to);
  const theirs = roomOf(to);
  if (theirs === room) return null;
  if (theirs === undefined || !to.includes('/')) return `${to} is in no room`;
  if (row.types?.includes(theirs)) return typesOnly ? null : `${to} may be imported as types only`;
  if (!row.ours.includes(theirs)) return `${to} is not for ${room}`;
  const behind = DOORS.includes(theirs) && to !== `${theirs}/index.ts` && room !== 'tests';
  return behind ? `${to} lies behind a door: import ${theirs}/index.ts` : null;
}

/** Everything in a source file that is on the wrong side of a wall. */
export function faultsOf(path: string, source: string): string[] {
  const room = roomOf(path);
  if (room === undefined) return [`${path} is in no room: add its row to the walls`];
  const faults: string[] = [];
  const lines = source.split('\n').length - 1;
  if (lines > LONGEST && !LANGUAGE.test(path))
    faults.push(`${lines} lines: at most ${LONGEST}, so it is two files`);
  for (const match of source.matchAll(IMPORT)) {
    const specifier = match[2] ?? match[3] ?? match[4] ?? '';
    const fault = faultOf(path, specifier, match[1] !== undefined);
    if (fault) faults.push(fault);
  }
  if (room === 'rules') {
    const code = source.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '');
    for (const word of ['Date', 'Intl', 'Math.random', 'process', 'setTimeout'])
      if (new RegExp(`\\b${word.replace('.', '\\.')}\\b[.(]`).test(code))
        faults.push(`${word} is not for rules/`);
  }
  return faults;
}
