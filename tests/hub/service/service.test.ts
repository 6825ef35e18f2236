import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readSettings } from '../../../hub/settings.ts';
import { executable } from '../../endToEnd/processes.ts';
import { tempFolder } from '../tempStore.ts';

const root = new URL('../../..', import.meta.url).pathname;
const folder = join(root, 'hub', 'service');
const unit = readFileSync(join(folder, 'dewpost.service'), 'utf8');
const recipe = readFileSync(join(folder, 'Containerfile'), 'utf8');
const analyze = executable('systemd-analyze');
const needsSystemd = analyze ? '' : ' (skipped: systemd-analyze is missing)';

/** The unit with this machine's Node in it, because the check asks whether the program is there. */
function unitHere(): string {
  const file = join(tempFolder(), 'dewpost.service');
  writeFileSync(file, unit.replaceAll('/usr/bin/node', process.execPath));
  return file;
}

test.skipIf(!analyze)(`systemd finds no fault in the unit${needsSystemd}`, () => {
  const { status, stdout, stderr } = spawnSync(analyze ?? '', ['verify', '--man=no', unitHere()], {
    encoding: 'utf8',
  });
  expect(`${stdout}${stderr}`).toBe('');
  expect(status).toBe(0);
});

// systemd-analyze(1): 0.0 is fully confined, 10.0 not at all; a unit without any such lines has 9.6.
// What is left open is what a hub on a network needs: addresses, and machine code that Node makes.
test.skipIf(!analyze)(`systemd finds the service well confined${needsSystemd}`, () => {
  const { status, stdout } = spawnSync(
    analyze ?? '',
    ['security', '--offline=yes', '--no-pager', '--threshold=20', unitHere()],
    { encoding: 'utf8' },
  );
  const level = Number(/exposure level for \S+: (\d+\.\d)/.exec(stdout)?.[1]);
  expect(level).toBeLessThanOrEqual(2);
  expect(status).toBe(0);
});

/** The words after a verb, checked as the command line would. */
const startsWith = (words: readonly string[]) =>
  readSettings('start', words.slice(words.indexOf('start') + 1)).settings;

test('the unit starts the hub with options that there are', () => {
  const command = /^ExecStart=(.*)$/m.exec(unit)?.[1]?.split(' ') ?? [];
  const data = `$${'{STATE_DIRECTORY}'}`; // systemd puts the folder there
  expect(startsWith(command)).toMatchObject({ data, open: false });
  expect(command).toContain('/opt/dewpost/dist/hub/dewpost.js');
});

test('the unit does not promise to tell systemd that the hub lives', () => {
  expect(unit).not.toMatch(/^WatchdogSec|^Type=notify/m);
});

// Containerfile(5). No container engine is asked: what can be read is checked.
const steps = recipe
  .replaceAll(/\\\n/g, ' ')
  .split('\n')
  .filter((line) => line.trim() !== '' && !line.startsWith('#'))
  .map((line) => {
    const [word = '', ...rest] = line.trim().split(/\s+/);
    return { word, rest };
  });

test('the container recipe has only instructions that there are, and copies what is there', () => {
  const known =
    'FROM RUN COPY WORKDIR ENV USER VOLUME EXPOSE STOPSIGNAL HEALTHCHECK ENTRYPOINT CMD';
  for (const { word } of steps) expect(known.split(' ')).toContain(word);
  const copied = steps.filter(({ word, rest }) => word === 'COPY' && !rest[0]?.startsWith('--'));
  const sources = copied.flatMap(({ rest }) => rest.slice(0, -1));
  expect(sources).toEqual(
    expect.arrayContaining(['package-lock.json', 'hub', 'rules', 'dashboard']),
  );
  for (const source of sources) expect(existsSync(join(root, source)), source).toBe(true);
});

test('the container runs without rights, for any machine that its base is made for', () => {
  const from = steps.filter(({ word }) => word === 'FROM').map(({ rest }) => rest[0]);
  expect(new Set(from)).toEqual(new Set(['node:20-bookworm-slim']));
  expect(recipe).not.toContain('--platform');
  const user = steps.findLastIndex(({ word }) => word === 'USER');
  expect(steps[user]?.rest).toEqual(['dewpost']);
  expect(steps.slice(user).map(({ word }) => word)).not.toContain('RUN');
});

test('the container starts the hub with options that there are, and asks it how it is', () => {
  const list = (word: string) =>
    JSON.parse(steps.find((step) => step.word === word)?.rest.join(' ') ?? '') as string[];
  const command = [...list('ENTRYPOINT'), ...list('CMD')];
  expect(startsWith(command)).toMatchObject({ data: '/data', http: { port: 8470 } });
  expect(command).toContain('dist/hub/dewpost.js');
  const health = steps.find(({ word }) => word === 'HEALTHCHECK')?.rest.join(' ') ?? '';
  expect(health).toContain('/api/health');
});
