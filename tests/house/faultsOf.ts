import { hubStages, rulesOrder } from './order.ts';
import { type Row, rows } from './walls.ts';

// Which imports are on the wrong side of a wall.

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
/** What pages may have of the words before they load a language. */
const DOOR_OF_PAGES = 'hub/words/page.ts';

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
  if (room === 'dashboard' && theirs === 'hub/words' && !typesOnly)
    return to === DOOR_OF_PAGES ? null : `${to} holds a whole language: import ${DOOR_OF_PAGES}`;
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
