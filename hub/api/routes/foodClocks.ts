import { z } from 'zod';
import { foodLimits } from '../../../rules/cooler/index.ts';
import * as contract from '../../contract/index.ts';
import { clocksWhy, printedLimit } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { isoOrNull } from '../present.ts';

/** Limits and clocks as they were agreed with the food-safety officer, one for each class of lots. */
export function foodClockRoutes(app: App, parts: ApiParts) {
  const { clocks } = parts.snapshots.lots;
  const shown = (): contract.FoodClocks => ({
    clocks: clocks.all().map((clock) => ({ ...clock, setAt: isoOrNull(clock.setAt) })),
    why: clocksWhy,
    printed: foodLimits.map(printedLimit),
  });

  app.get('/api/food-clocks', { schema: { response: { 200: contract.foodClocks } } }, shown);

  app.post(
    '/api/food-clocks/:class',
    {
      schema: {
        params: z.object({ class: contract.lotClass }),
        body: contract.setFoodClock,
        response: { 200: contract.foodClocks },
      },
    },
    (request) => {
      const { by: told, ...set } = request.body;
      const by = told ?? request.session?.name ?? null;
      if (by === null)
        throw new Refused(400, 'Expected the name of who agreed on it in by, got nothing');
      clocks.set(request.params.class, { ...set, by }, whoIs(request), parts.clock.now());
      parts.look();
      return shown();
    },
  );
}
