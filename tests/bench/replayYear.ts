// `dewpost replay` of one place's year, a reading of temperature and humidity each hour: every look
// the hub would have had in that year, under a clock that follows the readings. A grower who asks
// "what would this limit have said last year?" waits this long. Once, because it takes seconds.

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { replay } from '../../hub/main/verbs/replay.ts';
import { END, folder, readingsOf } from './history.ts';
import { figure } from './report.ts';

const HOUR = 3_600_000;
const YEAR = 365 * 24 * HOUR;

const FARM = `farm: { name: Bench (invented), zone: Europe/Dublin, lat: 52, lon: -7, money: EUR, wage: 15 }
places:
  - { id: patch, name: Patch, kind: patch, cover: { minutes: 40, value: 200, damage: -1 } }
probes:
  - { id: bench-00, place: patch, spot: canopy, every: 1h }
`;

export async function replayYear() {
  const farm = join(folder, 'replay.yaml');
  const readings = join(folder, 'replay.ndjson');
  writeFileSync(farm, FARM);
  const lines = [...readingsOf(1, END - YEAR, END, HOUR)].map((reading) =>
    JSON.stringify({ ...reading, t: new Date(reading.t).toISOString() }),
  );
  writeFileSync(readings, `${lines.join('\n')}\n`);
  const begin = performance.now();
  const { days } = await replay({ farm, readings, json: true });
  figure('replay-year-hourly', (performance.now() - begin) / 1000, 's');
  const count = days.patch?.length ?? 0;
  if (count < 365) throw new Error(`Expected at least 365 days replayed, got ${count}`);
}
