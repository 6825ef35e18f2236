import { batchesCsv, enterPlan, type FilePlan, planFile } from '../../batchFile/index.ts';
import * as contract from '../../contract/index.ts';
import { cropName } from '../../lots/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { iso, nameOf } from '../present.ts';

/** Bytes of a request with a file in it: JSON may take two for a character of ASCII, others more. */
const MOST_BODY = 4 * contract.MOST_BATCH_FILE;

/** Batches as a file: out, and in after it was looked at. */
export function batchFileRoutes(app: App, parts: ApiParts) {
  app.get('/api/batches.csv', (_request, reply) => {
    reply.type('text/csv; charset=utf-8');
    const day = parts.calendar().dayOf(parts.clock.now());
    reply.header('content-disposition', `attachment; filename="batches-${day}.csv"`);
    return batchesCsv(parts.batches.all());
  });

  app.post(
    '/api/batches/file',
    {
      bodyLimit: MOST_BODY,
      schema: { body: contract.batchFile, response: { 200: contract.batchFileResult } },
    },
    (request) => {
      const now = parts.clock.now();
      const { csv, enter } = request.body;
      const about = { farm: parts.farm(), calendar: parts.calendar(), now, batches: parts.batches };
      let plan: FilePlan;
      try {
        plan = planFile(csv, about);
      } catch (error) {
        throw new Refused(400, (error as Error).message);
      }
      if (enter) {
        enterPlan(plan, parts.batches, whoIs(request), now);
        parts.look();
      }
      return shownPlan(parts, plan, enter);
    },
  );
}

const shownPlan = (
  parts: ApiParts,
  { batches, known, refused, ignored }: FilePlan,
  entered: boolean,
): contract.BatchFileResult => ({
  entered,
  known,
  refused: [...refused],
  ignored: [...ignored],
  entries: batches.reduce((sum, { events }) => sum + events.length, 0),
  batches: batches.map(({ line, id, facts, fresh, events }) => ({
    ...{ line, id, fresh, entries: events.length },
    name: cropName(parts.farm(), facts.crop),
    trays: facts.trays,
    sownAt: iso(facts.sownAt),
    placeName: nameOf(parts, facts.place),
  })),
});
