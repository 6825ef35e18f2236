import * as contract from '../../contract/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import type { FarmTaken } from '../farmDesk.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { iso } from '../present.ts';

/** A farm file may be as long; its JSON is little more. */
const MOST = 2 * 1024 * 1024; // bytes

/** The farm's description: looked at, tried, changed, and put back as it was. */
export function farmRoutes(app: App, parts: ApiParts) {
  const { clock } = parts;
  const desk = parts.farmDesk;

  const taken = (done: ReturnType<typeof desk.undo>): contract.FarmChanged => {
    if (done === 'changed meanwhile')
      throw new Refused(
        409,
        'Expected the farm as it stands in based, got an older one: somebody changed it meanwhile, look at it again',
      );
    if (done === 'no such change')
      throw new Refused(404, 'Expected the id of a change of the farm, got another one');
    if (done === 'nothing before it')
      throw new Refused(409, 'Expected a change with a farm before it, got the first one');
    if ('faults' in done)
      throw new Refused(400, done.faults[0]?.sentence ?? 'Expected another farm');
    const { version, changes }: FarmTaken = done;
    if (changes.length > 0) parts.look();
    return { version, changes: [...changes] };
  };

  app.get('/api/farm/text', (_, reply) => {
    const text = desk.text();
    if (text === undefined) throw new Refused(404, 'Expected a farm, got none yet');
    reply.type('application/yaml; charset=utf-8'); // RFC 9512
    return reply.send(text);
  });

  app.get(
    '/api/farm/description',
    { schema: { response: { 200: contract.farmDescription } } },
    () => ({
      ...desk.read(),
      settled: parts.farm().settled,
    }),
  );

  app.post(
    '/api/farm/preview',
    {
      bodyLimit: MOST,
      schema: { body: contract.tryFarm, response: { 200: contract.farmPreview } },
    },
    ({ body }) => {
      const { faults, changes, lost } = desk.preview(body.description);
      return { faults: [...faults], changes: [...changes], lost: [...lost] };
    },
  );

  app.post(
    '/api/farm',
    {
      bodyLimit: MOST,
      schema: { body: contract.changeFarm, response: { 200: contract.farmChanged } },
    },
    (request) =>
      taken(desk.change(request.body.based, request.body.description, whoIs(request), clock.now())),
  );

  app.get('/api/farm/changes', { schema: { response: { 200: contract.farmChange.array() } } }, () =>
    desk.changes().map(({ t, words, ...change }) => ({ ...change, words: [...words], t: iso(t) })),
  );

  app.post(
    '/api/farm/changes/:id/undo',
    {
      schema: {
        params: contract.farmChangeParam,
        body: contract.undoFarm,
        response: { 200: contract.farmChanged },
      },
    },
    (request) =>
      taken(desk.undo(request.params.id, request.body.based, whoIs(request), clock.now())),
  );
}
