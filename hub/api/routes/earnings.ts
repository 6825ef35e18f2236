import { z } from 'zod';
import * as contract from '../../contract/index.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { shownEarnings } from '../shownEarnings.ts';

/** What crops, places, seasons and pickings earn. */
export function earningsRoutes(app: App, parts: ApiParts) {
  app.get(
    '/api/learn/crops',
    {
      schema: {
        querystring: z.object({
          /** Days of the farm, the last one with it: of the end of a batch, or of a picking. */
          from: contract.calendarDay.optional(),
          to: contract.calendarDay.optional(),
        }),
        response: { 200: contract.cropsLearned },
      },
    },
    ({ query: { from, to } }) => {
      if (from !== undefined && to !== undefined && from > to)
        throw new Refused(400, `Expected a day up to ${to} in from, got ${from}`);
      return shownEarnings(parts, from, to);
    },
  );
}
