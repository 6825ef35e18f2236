import { join } from 'node:path';
import { expect } from 'vitest';
import { scenario } from '../../simulators/index.ts';
import { clockFrom, dewpost, type HubOptions, root, startHub } from './hubProcess.ts';
import { begin, freePort, tempFolder } from './processes.ts';

const DAY = 86_400_000; // ms
const DAYS = 25; // enough for nights to learn from and for the probe that nobody placed

export type SeasonHub = Awaited<ReturnType<typeof startSeasonHub>>;

/**
 * A hub with the weeks of the made-up farm behind it, at the moment its story begins: tasks and an
 * alarm stand, a probe waits to be placed, another is silent.
 */
export async function startSeasonHub({ speed = 1 } = {}) {
  const data = tempFolder();
  const file = join(data, 'history.ndjson');
  const span = [scenario.start - DAYS * DAY, scenario.start].map((t) => new Date(t).toISOString());
  const made = await begin(process.execPath, [
    join(root, 'dist', 'simulators', 'history.js'),
    ...['--from', span[0] ?? '', '--to', span[1] ?? '', '--out', file],
  ]).ended;
  expect(made).toMatchObject({ code: 0, err: '' });
  const farm = join(root, 'simulators', 'farm.yaml');
  const imported = await dewpost('import', '--data', data, '--farm', farm, file);
  expect(imported).toMatchObject({ code: 0 });
  const [http, mqtt] = [await freePort(), await freePort()];
  const options: HubOptions = {
    ...{ data, http, mqtt, open: true },
    clock: clockFrom(scenario.start, speed),
  };
  let hub = await startHub(options);
  return {
    hub: () => hub,
    page: hub.page,
    mqtt,
    clock: options.clock,
    kill: () => hub.kill(),
    /** Again on the same store, addresses and clock. */
    async restart() {
      hub = await startHub(options);
    },
  };
}
