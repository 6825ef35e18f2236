import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readFarmFile } from '../../../hub/farm/index.ts';
import { makeRandom, seedOfRun } from '../api/fuzz/random.ts';
import { farmText } from '../smallFarm.ts';

const faultsOf = (text: string) => readFarmFile(text).faults ?? [];

/** One line that says what was expected, where, and what was there. */
const sentence = /^Expected [^\n]+, got[^\n]*$/;

test.for([
  ['nothing at all', '', /^Expected object on line 1, got null$/],
  ['an empty document', '---\n', /^Expected object on line \d, got null$/],
  ['a word', 'farm', /^Expected object on line 1, got "farm"$/],
  ['a list', '- a\n- b\n', /^Expected object on line 1, got \["a","b"\]$/],
  ['a tab as indent', 'farm:\n\tname: x\n', /^Expected YAML on line 2, got: /],
  ['a bracket that is not closed', 'farm: { name: x', /^Expected YAML on line \d, got: /],
  [
    'the same key twice',
    'farm:\n  name: a\n  name: b\n',
    /^Expected YAML on line 3, got: .*unique/,
  ],
  ['two documents', 'farm: 1\n---\nfarm: 2\n', /^Expected YAML on line 2, got: /],
  ['an alias', 'a: &a [1]\nfarm: *a\n', /^Expected no alias on line 2, got \*a$/],
  ['an alias of nothing', 'farm: *nowhere\n', /^Expected (YAML|no alias) on line 1, got/],
  [
    'a merged map',
    'x: &x { name: y }\nfarm:\n  <<: *x\n',
    /^Expected no alias on line 3, got \*x$/,
  ],
  ['bytes of another kind', '\u0000\u0001\u0002', sentence],
  ['half a pair of UTF-16', 'farm: "\ud800"', sentence],
] as const)('%s is refused with its line', ([, text, wanted]) => {
  const faults = faultsOf(text);
  expect(faults.length).toBeGreaterThan(0);
  expect(faults[0]).toMatch(wanted);
});

test('anchors within anchors, that would make a billion words, take no time', () => {
  const lines = ['a0: &a0 [x, x, x, x, x, x, x, x, x, x]'];
  for (let i = 1; i < 12; i++)
    lines.push(
      `a${i}: &a${i} [${Array(10)
        .fill(`*a${i - 1}`)
        .join(', ')}]`,
    );
  expect(faultsOf(lines.join('\n'))).toEqual(['Expected no alias on line 2, got *a0']);
});

// The YAML reader follows what is nested by calling itself; at its end Node does not throw, it aborts.
test.for([
  ['lists', '['.repeat(10_000)],
  ['lists that end', `${'['.repeat(10_000)}${']'.repeat(10_000)}`],
  ['maps', `${'{a: '.repeat(10_000)}1`],
  ['dashes', `${'- '.repeat(100_000)}1`],
  ['dashes with names', `${'- &a '.repeat(100_000)}1`],
  ['keys of keys', `${'? '.repeat(100_000)}1`],
  ['mixed', `x: ${'[{a: '.repeat(5000)}`],
  ['steps to the right', Array.from({ length: 1400 }, (_, i) => `${' '.repeat(i)}a:`).join('\n')],
  ['steps with dashes', Array.from({ length: 700 }, (_, i) => `${' '.repeat(i)}- a:`).join('\n')],
])('%s nested without end are refused with their line, not followed', ([, text = '']) => {
  expect(faultsOf(text)).toEqual([
    expect.stringMatching(/^Expected a farm file nested a few levels deep, got more on line \d+$/),
  ]);
});

test('a file of more than a million characters is refused unread', () => {
  expect(faultsOf(`# ${'x'.repeat(2_000_000)}\n${farmText()}`)).toEqual([
    'Expected a farm file of at most 1048576 bytes, got 2000893'.replace(/\d+$/, () =>
      String(2_000_003 + farmText().length),
    ),
  ]);
});

test('of a thousand faults fifty are told, and how many more there are', () => {
  const odd = Array.from({ length: 1000 }, (_, i) => `  - { id: "B A D ${i}" }`).join('\n');
  const faults = faultsOf(`${farmText().replace(/probes:[\s\S]*/, '')}probes:\n${odd}\n`);
  expect(faults).toHaveLength(51);
  expect(faults.at(-1)).toMatch(/^Expected no more faults, got \d+ more$/);
  for (const fault of faults) expect(fault).toMatch(sentence);
});

test('a key that would reach every object reaches none', () => {
  const faults = faultsOf(`${farmText()}\n__proto__: { vents: true }\n`);
  expect(faults.join(' ')).not.toBe('undefined');
  expect(({} as { vents?: boolean }).vents).toBeUndefined();
});

/** What somebody may do to a good file by mistake. */
function spoil(text: string, random: ReturnType<typeof makeRandom>): string {
  const at = random.below(text.length);
  const odd = ['\t', '\u0000', '"', "'", '{', '}', '[', ']', ':', '- ', '&x ', '*x', '!!js ', '%'];
  const more = ['|', '>', '#', '\r', '\u2028', '\ud83c', '\u202e', '1e999', '.nan', '-.inf', '~'];
  const piece = random.pick([...odd, ...more, 'x'.repeat(500), '9'.repeat(30), '\n\n', '<<: ']);
  const how = random.below(4);
  if (how === 0) return text.slice(0, at) + piece + text.slice(at);
  if (how === 1) return text.slice(0, at) + text.slice(at + 1 + random.below(30));
  if (how === 2) return text.slice(0, at);
  const other = random.below(text.length);
  return text.slice(0, at) + text.slice(other, other + 40) + text.slice(at);
}

test('two thousand spoilt files are read or refused in sentences with a line, and never more', () => {
  const seed = seedOfRun();
  console.log(`DEWPOST_SEED=${seed}`);
  const random = makeRandom(seed);
  let refused = 0;
  for (let i = 0; i < 2000; i++) {
    let text = farmText();
    for (let times = 1 + random.below(3); times > 0; times--) text = spoil(text, random);
    const { farm, faults } = readFarmFile(text);
    if (farm) continue;
    refused++;
    for (const fault of faults ?? []) {
      expect(fault).toMatch(sentence);
      if (!fault.startsWith('Expected no more faults')) expect(fault).toMatch(/ on line \d+/);
      expect(fault.length).toBeLessThan(600);
    }
  }
  expect(refused).toBeGreaterThan(500);
});

test('any text at all is read or refused, and nothing is thrown', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
      const { farm, faults } = readFarmFile(text);
      return farm !== undefined || (faults ?? []).length > 0;
    }),
    { numRuns: 500 },
  );
});
