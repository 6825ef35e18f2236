// How fast a file of readings is taken in (`dewpost import`): lines read and checked, the real
// intake, commits of 5,000, roll-ups at the end. A season to be moved from elsewhere is millions.

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { importReadings } from '../../hub/main/imports/importReadings.ts';
import { benchFarm } from './benchFarm.ts';
import { END, folder, readingsOf, SERIES_PROBES } from './history.ts';
import { figure, middle } from './report.ts';

const STEP = 300_000; // ms
const READINGS = 60 * 288 * 7; // a week of 60 series
const ROUNDS = 3;

export async function importRate() {
  const lines = join(folder, 'import.ndjson');
  const farm = join(folder, 'import.yaml');
  const from = END - (READINGS / 60) * STEP;
  const text = [...readingsOf(SERIES_PROBES, from, END, STEP)].map((reading) =>
    JSON.stringify({ ...reading, t: new Date(reading.t).toISOString() }),
  );
  writeFileSync(lines, `${text.join('\n')}\n`);
  writeFileSync(farm, benchFarm(SERIES_PROBES));
  const rates: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const data = join(folder, `import-${round}`);
    mkdirSync(data);
    const begin = performance.now();
    const { readings, refused } = await importReadings(lines, { data, farm });
    rates.push((1000 * readings) / (performance.now() - begin));
    if (readings !== READINGS || refused !== 0)
      throw new Error(
        `Expected ${READINGS} readings taken in, got ${readings}, ${refused} refused`,
      );
  }
  figure('import', middle(rates), 'readings/s');
}
