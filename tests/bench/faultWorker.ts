import { parentPort } from 'node:worker_threads';
import { runJob } from './faultJobs.ts';

// One thread that runs the trials it is given, one after another.

parentPort?.on('message', (job) => parentPort?.postMessage(runJob(job)));
