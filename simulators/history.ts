import { readInstant, readMinutes, readNumber, readOptions, runCommand } from './options.ts';
import { scenario } from './scenario.ts';
import { writeHistory } from './writeHistory.ts';

// node dist/simulators/history.js --from T --to T [--seed N] [--every 10m] [--out FILE] > readings.ndjson

await runCommand(() => {
  const names = ['from', 'to', 'seed', 'every', 'fine', 'out'] as const;
  const given = readOptions(names, process.argv.slice(2));
  const from = given.from ? readInstant('from', given.from) : scenario.historyFrom;
  const to = given.to ? readInstant('to', given.to) : scenario.start;
  if (from < scenario.plan.epoch || to <= from) {
    const epoch = new Date(scenario.plan.epoch).toISOString();
    throw new Error(`Expected --from not before ${epoch} and before --to, got ${given.from}`);
  }
  const seed = given.seed ? readNumber('seed', given.seed, 0, 2 ** 32 - 1) : scenario.seed;
  const every = readMinutes('every', given.every ?? '10m');
  const fineHours = given.fine ? readMinutes('fine', given.fine) / 60 : 48;
  writeHistory(scenario, { from, to, seed, every, fineHours }, given.out);
});
