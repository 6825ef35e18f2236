import { expect, test } from 'vitest';
import { collectTests } from './collectTests.ts';
import { labelOf, readExplanations } from './explanations.ts';
import { findConstants, withNumbersFrom } from './findConstants.ts';

const text = `import { x } from './x.ts';
type Size = 3 | 4;
const A = 17.62; // dimensionless
const TABLE = { cold: -4.5, list: [60_000, 2], 7: 'seven' } as const;
export function f(t: number): number {
  return A * 0.5 + TABLE.list[5] + t ** 3 - 0.5 + 1 + 0 + 2;
}
`;

test('numbers of constants, tables and formulas are found; types, places, 0, 1 and 2 are not', () => {
  const found = findConstants('rules/x/f.ts', text);
  expect(found.map(({ line, text: written, within }) => [line, written, within])).toEqual([
    [3, '17.62', 'A'],
    [4, '4.5', 'TABLE'],
    [4, '60_000', 'TABLE'],
    [6, '0.5', 'f'],
    [6, '3', 'f'],
    [6, '0.5', 'f'],
  ]);
  expect(found[2]?.value).toBe(60_000);
  expect(labelOf(found[5] as (typeof found)[number])).toBe('rules/x/f.ts f 0.5 #2');
});

test('the file that reads its numbers from a list is the same file, and says the same', () => {
  const found = findConstants('f.ts', 'const y = 3 * 10 ** -4;');
  const changed = withNumbersFrom('list', 'const y = 3 * 10 ** -4;', found, 5);
  expect(changed).toBe('const y = list[5] * list[6] ** -list[7];');
});

test('explanations are read from their lines, and nothing else is', () => {
  const read = readExplanations('# 5\n\n- `rules/a/b.ts C 9`: never met in a garden\n- no label\n');
  expect([...read]).toEqual([['rules/a/b.ts C 9', 'never met in a garden']]);
});

test('tests gather in order, rows one by one, and an unknown way of testing is refused', () => {
  const { module, gathered, begin } = collectTests(expect);
  begin('one.test.ts');
  const seen: unknown[] = [];
  module.test('plain', () => seen.push('plain'));
  module.test('with options', { skip: false }, () => seen.push('options'));
  module.test.for([
    [1, 2],
    [3, 4],
  ])('%d', (row: never) => seen.push(row));
  module.describe('group', () => module.it('inside', () => seen.push('inside')));
  for (const { run } of gathered) run();
  expect(seen).toEqual(['plain', 'options', [1, 2], [3, 4], 'inside']);
  expect(gathered.every(({ file }) => file === 'one.test.ts')).toBe(true);
  expect(() => Reflect.get(module, 'vi')).toThrow(/^Expected test, .*, got vi$/);
});
