import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { leavesOf, withLeaf } from '../../../dashboard/queue/leaves.ts';
import { kindOf } from '../../../dashboard/queue/mayWait.ts';
import { needed } from '../../../hub/api/roles.ts';

const filled = (route: string) => route.replaceAll(/:[a-z]+/g, 'x1');
const commands = Object.keys(needed)
  .map((route) => route.split(' ') as [string, string])
  .filter(([method]) => method !== 'GET');

/** What cannot wait, each for its reason: it needs the hub to show what it does, or begins at once. */
const NOW_OR_NEVER =
  /^(DELETE |POST \/api\/(claim|sign-in|join|sign-out|sign-out-everywhere|password|people|farm|food-clocks|probes\/:id\/(password|place)|photos|patches\/:id\/(backtest|terms)|alarms\/(silences|settings|test|rehearsal)|calendar|batches\/file|keeping|trials)\b)/;

test.for(commands)('%s %s may wait for the hub, or is known not to', ([method, route]) => {
  const waits = kindOf(method, filled(route)) !== null;
  expect(waits).toBe(!NOW_OR_NEVER.test(`${method} ${route}`));
});

test('a route that a command of this kind goes to takes the time it was said', () => {
  // Each hands `Dewpost-Said-At` on: none of them reads the clock for what was said.
  for (const name of [
    'tasks',
    'lots',
    'batches',
    'losses',
    'picks',
    'record',
    'probeChecks',
    'vents',
  ])
    expect(
      readFileSync(new URL(`../../../hub/api/routes/${name}.ts`, import.meta.url), 'utf8'),
    ).toMatch(/saidAt\(request, parts\.clock\)/);
});

test('one value is changed where it stands, and nothing else', () => {
  fc.assert(
    fc.property(fc.jsonValue({ maxDepth: 4 }), fc.nat(), (body, which) => {
      const leaves = leavesOf(body);
      if (leaves.length === 0) return;
      const leaf = leaves[which % leaves.length];
      if (leaf === undefined || leaf.where.includes('__proto__')) return;
      const before = JSON.stringify(body);
      const changed = withLeaf(body, leaf.where, 'mended');
      expect(JSON.stringify(body)).toBe(before);
      const after = leavesOf(changed);
      expect(after).toHaveLength(leaves.length);
      leaves.forEach((one, i) => {
        expect(after[i]?.value).toEqual(one === leaf ? 'mended' : one.value);
      });
    }),
  );
});
