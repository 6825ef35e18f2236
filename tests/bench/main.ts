// `npm run bench`: runs every benchmark, or those named on the command line
// (`npm run bench -- publish evaluate`). One `name value unit` line per figure on stdout. Figures of
// two machines cannot be compared; the ratios (x) are made for that: both sides of a ratio were
// measured in one run, taking turns, and the median of the rounds is told.

import { dashboardBytes } from './dashboardBytes.ts';
import { evaluate } from './evaluate.ts';
import { faultsFound } from './faults.ts';
import { fileSize } from './fileSize.ts';
import { flood } from './flood.ts';
import { growingBench } from './growingBench.ts';
import { importRate } from './importRate.ts';
import { lotsAndLooks } from './lots.ts';
import { newcomer } from './newcomer.ts';
import { publish } from './publish.ts';
import { readyWhen } from './readyWhen.ts';
import { replayYear } from './replayYear.ts';
import { remark } from './report.ts';
import { roomRules } from './roomRules.ts';
import { rulesAlone } from './rulesAlone.ts';
import { slowPhone } from './slowPhone.ts';
import { start } from './start.ts';
import { trialYear } from './trial.ts';
import { writtenDay } from './writtenDay.ts';
import { yearChart } from './yearChart.ts';

const benchmarks: Readonly<Record<string, () => Promise<void>>> = {
  dashboard: dashboardBytes,
  publish,
  flood,
  import: importRate,
  replay: replayYear,
  size: fileSize,
  written: writtenDay,
  evaluate,
  lots: lotsAndLooks,
  rules: rulesAlone,
  chart: yearChart,
  slowPhone,
  start,
  faults: faultsFound,
  roomRules,
  readyWhen,
  growing: growingBench,
  trial: trialYear,
  newcomer,
};

const named = process.argv.slice(2);
const unknown = named.filter((name) => !(name in benchmarks));
if (unknown.length > 0) {
  remark(`Expected ${Object.keys(benchmarks).join(', ')}, got ${unknown.join(' ')}`);
  process.exit(2);
}
for (const name of named.length > 0 ? named : Object.keys(benchmarks)) {
  globalThis.gc?.(); // what one benchmark left behind is not collected in the next one's time
  const begin = performance.now();
  await benchmarks[name]?.();
  remark(`${name} took ${((performance.now() - begin) / 1000).toFixed(1)} s`);
}
process.exit(0); // MQTT clients and brokers may still hold timers
