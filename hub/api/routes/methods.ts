import * as contract from '../../contract/index.ts';
import { loadMethods, type Methods } from '../../methods/index.ts';
import { shown } from '../../words/index.ts';
import type { App } from '../app.ts';
import { Refused } from '../parts.ts';

/** How a number was worked out. Read when first asked for: most days nobody asks. */
export function methodRoutes(app: App, load: () => Methods = loadMethods) {
  let kept: Methods | undefined;
  const methods = () => {
    try {
      kept ??= load();
      return kept;
    } catch (error) {
      throw new Refused(503, error instanceof Error ? error.message : String(error));
    }
  };

  app.get(
    '/api/methods/:name',
    { schema: { params: contract.methodName, response: { 200: contract.method } } },
    ({ params: { name } }) => {
      const method = methods().of(name);
      if (method) return method;
      throw new Refused(404, `Expected the name of a formula, got ${shown(name)}`);
    },
  );
}
