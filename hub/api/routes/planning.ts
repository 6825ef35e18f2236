import * as contract from '../../contract/index.ts';
import { undoneIn } from '../../journal/index.ts';
import { MOST_WEEKS, wantId } from '../../planning/index.ts';
import { shown } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { saidAt } from '../saidAt.ts';
import { productsOf, shownPlan } from '../shownPlan.ts';
import { weekSheet } from '../weekSheet.ts';

const USUAL_WEEKS = 6;

/** What to sow when, what is wanted on one day, and the week on paper. */
export function planningRoutes(app: App, parts: ApiParts) {
  const { planning, clock } = parts;
  const { wants } = planning;

  app.get(
    '/api/sowing-plan',
    { schema: { querystring: contract.planWeeks, response: { 200: contract.sowingPlanShown } } },
    ({ query }) => shownPlan(parts, query.weeks),
  );

  app.post(
    '/api/wants',
    { schema: { body: contract.changeWant, response: { 200: contract.sowingPlanShown } } },
    (request) => {
      const { body } = request;
      const id = wantId(body.day, body.of);
      const who = whoIs(request);
      const now = saidAt(request, clock);
      if ('undo' in body) {
        const entries = wants.get(id)?.entries ?? [];
        const undone = undoneIn(entries);
        if (!entries.some((entry) => entry.id === body.undo && !undone.has(entry.id)))
          throw new Refused(
            409,
            `Expected an entry that holds for ${body.of} on ${body.day} in undo, got ${body.undo}`,
          );
        wants.add(id, null, { event: 'undone', entry: body.undo }, who, now);
      } else {
        const { day, of, kg } = body;
        checkWant(day, of);
        wants.add(id, null, { event: 'wanted', day, of, kg }, who, now);
      }
      parts.look();
      return shownPlan(parts, USUAL_WEEKS);
    },
  );

  function checkWant(day: string, of: string) {
    const products = productsOf(parts);
    if (!products.some(({ id }) => id === of)) {
      const ids = products.map(({ id }) => id).join(', ') || 'nothing: the farm has no crops';
      throw new Refused(400, `Expected one of ${ids} in of, got ${shown(of)}`);
    }
    const today = parts.calendar().dayOf(clock.now());
    const last = parts.calendar().add(today, 7 * MOST_WEEKS);
    if (day < today || day > last)
      throw new Refused(400, `Expected a day from ${today} to ${last} in day, got ${day}`);
  }

  app.get(
    '/api/week',
    { schema: { querystring: contract.weekFrom, response: { 200: contract.weekSheet } } },
    ({ query }) => weekSheet(parts, query.from),
  );
}
