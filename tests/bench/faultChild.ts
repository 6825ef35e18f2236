import { runJob } from './faultJobs.ts';
import type { TrialJob } from './faultTrial.ts';

// A process that runs trials for faultCrew.ts, one at a time, and hands back what they gave.

process.on('message', (job: TrialJob) => {
  process.send?.(runJob(job));
});
process.on('disconnect', () => process.exit(0));
