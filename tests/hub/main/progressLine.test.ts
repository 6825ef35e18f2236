import { expect, test } from 'vitest';
import { progressLine } from '../../../hub/main/imports/progressLine.ts';

function told(isTTY: boolean, quiet: boolean) {
  let text = '';
  let now = 0;
  const to = { isTTY, write: (more: string) => (text += more) };
  const line = progressLine(to, quiet, () => now);
  return { line, text: () => text, at: (t: number) => (now = t) };
}

test('a terminal has one line that is written over, and left empty at the end', () => {
  const { line, text, at } = told(true, false);
  line.tell({ share: 0.256, rows: 1000, refused: 2 });
  expect(text()).toBe('\r25 % read: 1000 rows, 2 refused so far\u001b[K');
  at(100);
  line.tell({ share: 0.3, rows: 1200, refused: 2 }); // too soon after the last to be read
  at(500);
  line.tell({ share: 1.01, rows: 4000, refused: 3 });
  expect(text().endsWith('so far\u001b[K\r100 % read: 4000 rows, 3 refused so far\u001b[K')).toBe(
    true,
  );
  expect(text()).not.toContain('1200');
  line.end();
  expect(text().endsWith('\r\u001b[K')).toBe(true);
});

test.for([
  ['nothing but a terminal', false, false],
  ['whoever wants it quiet', true, true],
] as const)('nothing is said to %s', ([, isTTY, quiet]) => {
  const { line, text } = told(isTTY, quiet);
  line.tell({ share: 0.5, rows: 10, refused: 0 });
  line.end();
  expect(text()).toBe('');
});
