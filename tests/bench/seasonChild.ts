import { runSeason, type SeasonJob } from './seasonRun.ts';

// A process that lives through one made-up season after another, and hands back their books.

process.on('message', (job: SeasonJob) => {
  process.send?.(runSeason(job));
});
process.on('disconnect', () => process.exit(0));
