import { z } from 'zod';
import * as contract from '../../contract/index.ts';
import { shown } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { nameOf, openTasks, shownTask } from '../present.ts';
import { saidAt } from '../saidAt.ts';

/** Ended tasks go back this far. Ours: what is older belongs to the season's review. */
const ENDED_FOR = 14 * 86_400_000; // ms

export function taskRoutes(app: App, parts: ApiParts) {
  const ended = () =>
    parts.tasks
      .endedSince(parts.clock.now() - ENDED_FOR)
      .map((task) => shownTask(task, nameOf(parts, task.place)));

  app.get(
    '/api/tasks',
    {
      schema: {
        querystring: z.object({ state: z.enum(['open', 'ended', 'all']).default('open') }),
        response: { 200: contract.task.array() },
      },
    },
    ({ query: { state } }) => [
      ...(state === 'ended' ? [] : openTasks(parts)),
      ...(state === 'open' ? [] : ended()),
    ],
  );

  app.post(
    '/api/tasks/:id/answer',
    {
      schema: {
        params: contract.idParam,
        body: contract.answerTask,
        response: { 200: contract.task },
      },
    },
    (request) => {
      const { id } = request.params;
      const { answer, until, note } = request.body;
      const now = saidAt(request, parts.clock);
      const later = until === undefined ? null : Date.parse(until);
      if (answer === 'later' && (later === null || later <= now))
        throw new Refused(400, `Expected a time to come in until, got ${until ?? 'nothing'}`);
      const given = { answer, until: later, note: note ?? null };
      const task = parts.answer(id, given, whoIs(request), now);
      if (task) return shownTask(task, nameOf(parts, task.place));
      const known = parts.tasks.get(id);
      // The same answer twice (a tap on a slow link) is not a mistake.
      if (known?.answer === answer) return shownTask(known, nameOf(parts, known.place));
      throw known
        ? new Refused(
            409,
            `Expected an open task, got one that ended (${known.answer ?? 'no longer needed'})`,
          )
        : new Refused(404, `Expected the id of a task, got ${shown(id)}`);
    },
  );
}
