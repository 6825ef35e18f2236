import * as contract from '../../contract/index.ts';
import { changedFarm, limitNow, type TrialState } from '../../trial/index.ts';
import { shown } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { keepTrial } from '../keepTrial.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { shownTrial } from '../shownTrial.ts';
import { readingDays, trialStart } from '../trialStart.ts';

const YEAR = 365; // days
const LONGEST = 3 * YEAR;

/** A limit tried on the past; nothing of the farm is changed by it. */
export function trialRoutes(app: App, parts: ApiParts) {
  const trials = () => {
    if (parts.trials) return parts.trials;
    throw new Refused(503, 'Expected a hub with a store of its own, got one in memory');
  };
  const known = (id: string): TrialState => {
    const trial = trials().get(id);
    if (trial) return trial;
    throw new Refused(404, `Expected the id of a trial, got ${shown(id)}`);
  };

  app.get('/api/trials', { schema: { response: { 200: contract.trialStart } } }, (request) =>
    trialStart(parts, trials().newestOf(whoIs(request))?.id ?? null),
  );

  app.post(
    '/api/trials',
    { schema: { body: contract.startTrial, response: { 200: contract.trial } } },
    (request) => {
      const who = whoIs(request);
      const { changes } = request.body;
      const calendar = parts.calendar();
      const now = parts.clock.now();
      const to = request.body.to ?? calendar.dayOf(now);
      const from = request.body.from ?? calendar.add(to, -YEAR);
      if (from > to) throw new Refused(400, `Expected from at or before to (${to}), got ${from}`);
      if (calendar.add(from, LONGEST) < to)
        throw new Refused(
          400,
          `Expected at most three years from from to to, got ${from} to ${to}`,
        );
      const { file } = parts.farm();
      if (readingDays(parts) === null)
        throw new Refused(409, 'Expected readings to try a limit on, got none yet');
      for (const [i, change] of changes.entries()) {
        const limit = limitNow(file, change);
        if (limit === null)
          throw new Refused(
            400,
            `Expected whose limit ${change.what} is in changes[${i}].of, got ${shown(change.of)}`,
          );
      }
      const after = contract.farmFile.safeParse(changedFarm(file, changes));
      if (!after.success) {
        const [issue] = after.error.issues;
        throw new Refused(
          400,
          `Expected a limit that a farm file may hold, got ${issue?.path.join('.')}: ${issue?.message}`,
        );
      }
      if (trials().runningOf(who))
        throw new Refused(409, 'Expected one trial at a time, got another that still runs');
      parts.snapshots.fold(true); // what waits is put where the trial reads it
      const job = {
        ...{ before: file, after: after.data },
        from: calendar.bounds(from).begins,
        to: Math.min(now, calendar.bounds(to).ends),
      };
      return shownTrial(parts, trials().start(who, changes, job));
    },
  );

  app.get(
    '/api/trials/:id',
    { schema: { params: contract.idParam, response: { 200: contract.trial } } },
    ({ params }) => shownTrial(parts, known(params.id)),
  );

  app.delete(
    '/api/trials/:id',
    { schema: { params: contract.idParam, response: { 200: contract.trial } } },
    (request) => {
      const trial = known(request.params.id);
      return shownTrial(parts, trials().cancel(trial.id) ?? trial);
    },
  );

  app.post(
    '/api/trials/:id/keep',
    {
      schema: {
        params: contract.idParam,
        body: contract.keepTrial,
        response: { 200: contract.keptTrial },
      },
    },
    (request) =>
      keepTrial(parts, known(request.params.id), request.body.why || null, whoIs(request)),
  );
}
