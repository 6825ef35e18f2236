// Bytes of the store's file for each reading in it, everything counted: readings, roll-ups, days
// and nights. A day of 60 probes with two values a minute, kept minute by minute as live readings
// are, so that the pages are as full as they would be; the file is measured when it is closed.

import { statSync } from 'node:fs';
import { join } from 'node:path';
import { importFarm } from '../../hub/main/farm/farmKept.ts';
import { benchFarm, QUANTITIES } from './benchFarm.ts';
import { END, feed, folder, openCore, readingsOf } from './history.ts';
import { figure } from './report.ts';

const PROBES = 60;
const MINUTE = 60_000;
const MINUTES = 24 * 60;

export async function fileSize() {
  const file = join(folder, 'size.db');
  const hub = openCore(file, END);
  importFarm(hub.core.store, benchFarm(PROBES, '1m'), END);
  hub.core.refarmed();
  const from = END - MINUTES * MINUTE;
  for (let minute = 0; minute < MINUTES; minute++) {
    const t = from + minute * MINUTE;
    hub.clock.set(t);
    feed(hub, [...readingsOf(PROBES, t, t + 1, MINUTE)], t);
    if (minute % 60 === 59) hub.core.snapshots.fold();
  }
  hub.core.close();
  const readings = PROBES * QUANTITIES.length * MINUTES;
  figure('bytes-per-reading', statSync(file).size / readings, 'bytes');
}
