import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { demoBatches } from '../../simulators/demoBatches.ts';
import { scenario } from '../../simulators/index.ts';
import { clockFrom, dewpost, type HubProcess, root, startHub } from './hubProcess.ts';
import { tempFolder } from './processes.ts';

/** A hub of the made-up farm with its year of batches, at the moment its story begins. */
export async function startBatchesHub(): Promise<HubProcess> {
  const data = tempFolder();
  const csv = join(data, 'batches.csv');
  writeFileSync(csv, demoBatches(scenario));
  const farm = join(root, 'simulators', 'farm.yaml');
  const clock = clockFrom(scenario.start, 1);
  const told = `${new Date(clock.start).toISOString()}/${clock.real}/1`;
  const taken = await dewpost('import', '--data', data, '--farm', farm, '--clock', told, csv);
  expect(taken).toMatchObject({ code: 0, err: '' });
  return startHub({ data, open: true, clock });
}
