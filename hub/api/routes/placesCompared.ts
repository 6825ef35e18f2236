import { z } from 'zod';
import * as contract from '../../contract/index.ts';
import { USUAL_DAYS, undoMove } from '../../placesCompared/index.ts';
import { shown } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { placesFacts } from '../placesFacts.ts';
import { nameOf, shownTask } from '../present.ts';

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
      const known = parts.placesCompared.crops(parts.clock.now());
      const id = query.crop ?? known[0];
      const crop = parts.farm().crop(id);
      if (crop === undefined || !known.includes(crop.id)) {
        const wanted =
          known.length === 0 ? 'a crop with a band in the farm file' : `one of ${known.join(', ')}`;
        throw new Refused(
          404,
          `Expected ${wanted} in crop, got ${id === undefined ? 'none' : shown(id)}`,
        );
      }
      return placesFacts(parts, crop, query.days);
    },
  );

  app.post(
    '/api/tasks/:id/undo-move',
    { schema: { params: contract.idParam, response: { 200: contract.task } } },
    (request) => {
      const { id } = request.params;
      const task = parts.tasks.get(id);
      if (!task) throw new Refused(404, `Expected the id of a task, got ${shown(id)}`);
      if (!undoMove(parts, task, whoIs(request), parts.clock.now()))
        throw new Refused(409, 'Expected a move that stands as its task entered it, got none');
      parts.look();
      return shownTask(task, nameOf(parts, task.place));
    },
  );
}
