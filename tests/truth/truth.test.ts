import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { truth, WAYS } from './index.ts';

const here = import.meta.dirname;
const scratch = mkdtempSync(join(tmpdir(), 'truth-'));
afterAll(() => rmSync(scratch, { recursive: true }));

const headings = [
  '# What: w',
  '# Source: s',
  '# Why: y',
  '# Covers: c',
  '# How: memory',
  '# Tolerance: exact',
  '# Added: 2026-11-25',
];
function table(name: string, lines: readonly string[]): string {
  const path = join(scratch, name);
  writeFileSync(path, `${lines.join('\n')}\n`);
  return relative(here, path);
}

test('rows come typed: numbers first, then words', () => {
  const path = table('good.csv', [...headings, 'a,b,word', '1,-2.5,yes', 'Infinity,0,no']);
  expect(truth(path, ['a', 'b'], ['word'])).toEqual([
    { a: 1, b: -2.5, word: 'yes' },
    { a: Number.POSITIVE_INFINITY, b: 0, word: 'no' },
  ]);
});

test.for(headings)('a table without "%s" is refused', (missing) => {
  const path = table('bare.csv', [...headings.filter((line) => line !== missing), 'a', '1']);
  expect(() => truth(path, ['a'])).toThrow(`Expected a "${missing.split(' ', 2).join(' ')}" line`);
});

test('other columns, empty cells and empty tables are refused', () => {
  const path = table('other.csv', [...headings, 'a,b', '1,']);
  expect(() => truth(path, ['b', 'a'])).toThrow('Expected columns b,a in');
  expect(() => truth(path, ['a', 'b'])).toThrow('Expected a number for b in');
  expect(() => truth(table('empty.csv', [...headings, 'a']), ['a'])).toThrow('Expected rows in');
});

const tables = readdirSync(here, { recursive: true, encoding: 'utf8' }).filter((name) =>
  name.endsWith('.csv'),
);
test.for(tables)('%s says what it is and where it is from', (path) => {
  expect(() => truth(path, [])).toThrow('Expected columns'); // headings are looked at first
});

const headingOf = (path: string, name: string) =>
  new RegExp(`^# ${name}:\\s+(.*)$`, 'm').exec(readFileSync(join(here, path), 'utf8'))?.[1] ?? '';

test.for(tables)('%s tells how its values were obtained, in one of the known ways', (path) => {
  expect(
    headingOf(path, 'How')
      .split('; ')
      .filter((way) => !WAYS.includes(way)),
  ).toEqual([]);
});

const checks = readdirSync(join(here, '../rules'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.test.ts'))
  .map((name) => readFileSync(join(here, '../rules', name), 'utf8'));

// A tolerance told in a table and another one in its test would be a promise nobody keeps.
test.for(tables)('%s tells the tolerance that its test holds it to', (path) => {
  const using = checks.filter((text) => text.includes(`'${path}'`)).join('\n');
  const held = (tolerance: string) => {
    if (tolerance === 'exact') return /\.toBe\(|\.toEqual\(|toBeNull|toMatchObject/.test(using);
    if (using.includes(tolerance)) return true;
    // 5e-7 is what toBeCloseTo(…, 6) asks for.
    const digits = /^5e-(\d+)$/.exec(tolerance)?.[1];
    return digits !== undefined && using.includes(`, ${Number(digits) - 1})`);
  };
  expect(
    headingOf(path, 'Tolerance')
      .split('; ')
      .filter((each) => !held(each)),
  ).toEqual([]);
});
