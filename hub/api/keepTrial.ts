import type { KeptTrial } from '../contract/index.ts';
import { changedFarm, limitNow, type TrialState } from '../trial/index.ts';
import { trialWhy } from '../words/index.ts';
import { type ApiParts, Refused } from './parts.ts';
import { shownTrial } from './shownTrial.ts';

/** Longest reason that goes into the record; a trial of a whole farm has many lines. Ours. */
const LONGEST = 1500;

/** The limits that were tried become the farm's, with what the trial found as the reason. */
export function keepTrial(
  parts: ApiParts,
  trial: TrialState,
  why: string | null,
  who: string,
): KeptTrial {
  const { result, from, to } = shownTrial(parts, trial);
  if (result === null)
    throw new Refused(409, `Expected a trial that is done, got one that is ${trial.state}`);
  const { file } = parts.farm();
  for (const change of trial.changes)
    if (limitNow(file, change) !== limitNow(trial.job.before, change))
      throw new Refused(
        409,
        'Expected the limit as it stood in the trial, got another one: somebody changed it meanwhile, try it again',
      );
  const said = trialWhy({ why, from, to, words: result.words });
  const desk = parts.farmDesk;
  const done = desk.change(
    desk.read().version,
    changedFarm(file, trial.changes),
    who,
    parts.clock.now(),
    said.length > LONGEST ? `${said.slice(0, LONGEST)}…` : said,
  );
  if (done === 'changed meanwhile')
    throw new Refused(409, 'Expected the farm as it was read, got another one: try again');
  if ('faults' in done) throw new Refused(400, done.faults[0]?.sentence ?? 'Expected another farm');
  parts.look();
  return { changes: [...done.changes] };
}
