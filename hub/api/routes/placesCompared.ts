import { z } from 'zod';
import * as contract from '../../contract/index.ts';
import { USUAL_DAYS, undoMove } from '../../placesCompared/index.ts';
import { shown } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { noPlaces, placesFacts } from '../placesFacts.ts';
import { nameOf, shownTask } from '../present.ts';
import { saidAt } from '../saidAt.ts';

/** Where a crop does best, and taking back a move that an answer entered. */
export function placesComparedRoutes(app: App, parts: ApiParts) {
  const querystring = z.object({
    crop: z.string().optional(),
    days: z.coerce.number().int().min(5).max(60).default(USUAL_DAYS),
  });

  app.get(
    '/api/learn/places',
    { schema: { querystring, response: { 200: contract.placesCompared } } },
    ({ query }) => {
      const id = query.crop ?? parts.placesCompared.crops(parts.clock.now())[0];
      const crop = parts.farm().crop(id);
      if (query.crop !== undefined && crop === undefined) {
        const ids = parts.farm().file.crops.map((one) => one.id);
        const wanted = ids.length === 0 ? 'a crop of the farm file' : `one of ${ids.join(', ')}`;
        throw new Refused(404, `Expected ${wanted} in crop, got ${shown(query.crop)}`);
      }
      return crop?.band === undefined
        ? noPlaces(parts, crop, query.days)
        : placesFacts(parts, crop, query.days);
    },
  );

  app.post(
    '/api/tasks/:id/undo-move',
    { schema: { params: contract.idParam, response: { 200: contract.task } } },
    (request) => {
      const { id } = request.params;
      const task = parts.tasks.get(id);
      if (!task) throw new Refused(404, `Expected the id of a task, got ${shown(id)}`);
      if (!undoMove(parts, task, whoIs(request), saidAt(request, parts.clock)))
        throw new Refused(409, 'Expected a move that stands as its task entered it, got none');
      parts.look();
      return shownTask(task, nameOf(parts, task.place));
    },
  );
}
