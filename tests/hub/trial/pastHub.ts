import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pino } from 'pino';
import { parse, stringify } from 'yaml';
import { steppedClock } from '../../../hub/clock.ts';
import type { FarmFile, TrialChange } from '../../../hub/contract/index.ts';
import { readFarmFile } from '../../../hub/farm/index.ts';
import { joinCore } from '../../../hub/main/core.ts';
import { importReadings } from '../../../hub/main/imports/importReadings.ts';
import { openStore } from '../../../hub/store/index.ts';
import { changedFarm } from '../../../hub/trial/index.ts';
import { scenario, writeHistory } from '../../../simulators/index.ts';

export const DAY = 86_400_000; // ms

/** The made-up farm's readings of some days up to its story, in a file and in a store. */
export async function pastHub(folder: string, days: number, stored = true) {
  const readings = join(folder, 'readings.ndjson');
  const span = { from: scenario.start - days * DAY, to: scenario.start };
  writeHistory(scenario, { ...span, seed: scenario.seed, every: 10, fineHours: 0 }, readings);
  // Without its cool room, whose probes report each minute and have no part in these limits.
  const demo = parse(
    readFileSync(join(import.meta.dirname, '../../../simulators/farm.yaml'), 'utf8'),
  ) as FarmFile;
  const places = demo.places.filter(({ kind }) => kind !== 'cool-room');
  const probes = demo.probes.filter(({ place }) => places.some(({ id }) => id === place));
  const text = stringify({ ...demo, places, probes });
  const farm = join(folder, 'farm.yaml');
  writeFileSync(farm, text);
  const kept = new Set(probes.map(({ id }) => id));
  const lines = readFileSync(readings, 'utf8').split('\n');
  writeFileSync(
    readings,
    lines.filter((line) => line !== '' && kept.has(JSON.parse(line).probe)).join('\n'),
  );
  const { farm: file } = readFarmFile(text);
  if (!file) throw new Error('Expected the farm of the demonstration, got faults');
  const clock = { start: span.to, real: Date.now(), speed: 1 };
  if (stored) await importReadings(readings, { data: folder, farm, clock, readings } as never);
  const path = join(folder, 'dewpost.db');
  return {
    ...{ folder, readings, farm, file, ...span, path },
    /** Puts away what waits, as a hub does before a trial. */
    fold(file: string) {
      const core = joinCore({
        store: openStore(file),
        clock: steppedClock(span.to),
        log: pino({ level: 'silent' }),
      });
      core.snapshots.fold(true);
      core.close();
    },
    /** A farm file with other limits. */
    limits(changes: readonly TrialChange[]) {
      const other = join(folder, 'limits.yaml');
      writeFileSync(other, stringify(changedFarm(file, changes)));
      return other;
    },
  };
}
