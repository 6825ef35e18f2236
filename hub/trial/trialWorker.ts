// A trial on a thread of its own, so that the hub goes on meanwhile.

import { parentPort, workerData } from 'node:worker_threads';
import { openPast } from '../store/index.ts';
import { type TrialJob, walkPast } from './walkPast.ts';

const { path, job } = workerData as { readonly path: string; readonly job: TrialJob };
const past = openPast(path);
try {
  const walk = walkPast(past, job);
  for (let step = walk.next(); ; step = walk.next()) {
    if (step.done) {
      parentPort?.postMessage({ places: step.value });
      break;
    }
    parentPort?.postMessage({ progress: step.value });
  }
} finally {
  past.close();
}
