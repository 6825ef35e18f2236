// What a day of 60 probes wears the card: bytes this process caused to be written (Linux:
// /proc/self/io; whole blocks of 4 kB, without the file system's journal and the card's insides) for
// each reading kept. The real intake and store; the day is stepped through second by second: each
// probe sends temperature and humidity once a minute, the probes evenly spread over it; what came in
// is committed every so many seconds, as `--gather` says; the hub looks every five minutes; readings
// go to their places when it is time, and the file is closed at the end.

import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { importFarm } from '../../hub/main/farm/farmKept.ts';
import { benchFarm, probeId, QUANTITIES, valueAt } from './benchFarm.ts';
import { END, folder, openCore, readingsOf } from './history.ts';
import { figure, middle, quantile, remark } from './report.ts';

const PROBES = 60;
const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;
const GATHERED = [1, 2, 5, 10, 60]; // s

const written = () => {
  try {
    return Number(/^write_bytes: (\d+)/m.exec(readFileSync('/proc/self/io', 'utf8'))?.[1]);
  } catch {
    return Number.NaN; // another system
  }
};

export async function writtenDay() {
  if (Number.isNaN(written())) {
    remark('what is written is not known on this system');
    return;
  }
  for (const gather of GATHERED) {
    const file = join(folder, `written-${gather}.db`);
    const hub = openCore(file, END - DAY);
    importFarm(hub.core.store, benchFarm(PROBES, '1m'), END - DAY);
    hub.core.refarmed();
    // The day before is there already, so that pages are as full as on any other day.
    for (let t = END - 2 * DAY; t < END - DAY; t += 60 * MINUTE) {
      const failed = (error?: Error | null) => {
        if (error) throw error;
      };
      hub.core.intake.receiveReadings(
        [...readingsOf(PROBES, t, t + 60 * MINUTE, MINUTE)],
        t + 60 * MINUTE,
        failed,
      );
      hub.core.intake.flush();
    }
    hub.core.snapshots.fold(true);
    hub.core.look();
    const before = written();
    const commits: number[] = [];
    let kept = 0;
    for (let second = 0; second < DAY / 1000; second++) {
      const t = END - DAY + second * 1000;
      hub.clock.set(t);
      const probe = second % PROBES;
      hub.core.intake.receiveReadings(
        QUANTITIES.map((quantity) => ({
          probe: probeId(probe),
          quantity,
          t,
          value: valueAt(probe, quantity, t),
        })),
        t,
        (error) => {
          if (error) throw error;
          kept += QUANTITIES.length;
        },
      );
      if ((second + 1) % gather === 0) {
        const begin = performance.now();
        hub.core.intake.flush();
        commits.push(performance.now() - begin);
      }
      if (second % 300 === 0) hub.core.look();
    }
    hub.core.close();
    figure(`written-a-day-${gather}-s`, (written() - before) / kept, 'bytes/reading');
    if (gather !== 2) continue;
    figure('commit-p50', middle(commits), 'ms');
    figure('commit-p99', quantile(commits, 0.99), 'ms');
    figure('stored-a-day', statSync(file).size / (2 * kept), 'bytes/reading');
  }
}
