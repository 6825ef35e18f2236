import { startingBase } from '../../../rules/heat/index.ts';
import * as contract from '../../contract/index.ts';
import { shown as quoted } from '../../words/index.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { shownCourse, shownCrop, shownReady } from '../shownReady.ts';

/** When batches are ready, and what was learned of each crop. */
export function growingRoutes(app: App, parts: ApiParts) {
  const { batches, clock } = parts;

  app.get(
    '/api/batches/ready',
    {
      schema: {
        querystring: contract.readyQuery,
        response: { 200: contract.batchCourse.partial({ lived: true }).array() },
      },
    },
    ({ query: { courses } }) =>
      batches
        .all()
        .filter(({ state }) => state === 'growing')
        .map((batch) => (courses ? shownCourse : shownReady)(parts, batch, clock.now())),
  );

  app.get(
    '/api/batches/:id/ready',
    { schema: { params: contract.idParam, response: { 200: contract.batchCourse } } },
    ({ params: { id } }) => {
      const batch = batches.get(id);
      if (!batch) throw new Refused(404, `Expected the id of a batch, got ${quoted(id)}`);
      return shownCourse(parts, batch, clock.now());
    },
  );

  app.get(
    '/api/crops/:id/growing',
    { schema: { params: contract.idParam, response: { 200: contract.cropGrowing } } },
    ({ params: { id } }) => {
      const known =
        parts.farm().crop(id) !== undefined ||
        startingBase(id) !== null ||
        batches.all().some(({ crop }) => crop === id);
      if (!known) throw new Refused(404, `Expected the id of a crop, got ${quoted(id)}`);
      return shownCrop(parts, id);
    },
  );
}
