import { expect, test } from 'vitest';
import { needed, neededFor } from '../../../hub/api/roles.ts';
import { servedHub } from '../smallFarm.ts';
import { peopledHub } from './lockedHub.ts';

/** Every route of the described interface, and the one that describes it. */
async function routes() {
  const { app } = await servedHub();
  const document = (await app.inject({ url: '/api/openapi.json' })).json();
  const described = Object.entries(document.paths as Record<string, object>).flatMap(
    ([path, item]) =>
      Object.keys(item).map(
        (method) => `${method.toUpperCase()} ${path.replaceAll(/\{(\w+)\}/g, ':$1')}`,
      ),
  );
  return [...described, 'GET /api/openapi.json'];
}

const all = Object.keys(needed);

test('every route has a stated role, and every stated role a route', async () => {
  const there = await routes();
  expect(there.filter((route) => !Object.hasOwn(needed, route))).toEqual([]);
  expect(all.filter((route) => !there.includes(route))).toEqual([]);
});

/** An address of the route; what it names need not exist, so that nothing is changed on the way. */
const addressOf = (path: string) => path.replaceAll(':name', 'Zoe').replaceAll(':id', 'nowhere');
const ORDER = ['nobody', 'helper', 'grower'];

test.for(all)('%s lets in who it says, and nobody else', async (route) => {
  const [method = '', path = ''] = route.split(' ');
  const least = ORDER.indexOf(needed[route] ?? '');
  const { app, ann, hal, faults } = await peopledHub();
  for (const [rank, who] of ORDER.entries()) {
    if (path === '/api/events' && rank >= least) continue; // answers for as long as it is heard
    const cookie = [undefined, hal, ann][rank];
    const reply = await app.inject({
      method: method as 'GET' | 'POST',
      url: addressOf(path),
      headers: cookie ? { cookie } : {},
      ...(method === 'GET' ? {} : { payload: {} }),
    });
    const refused = who === 'nobody' ? 401 : 403;
    if (rank < least) expect(reply.statusCode, `${route} for ${who}`).toBe(refused);
    else expect([401, 403, 405, 500], `${route} for ${who}`).not.toContain(reply.statusCode);
    expect(faults).toEqual([]);
  }
});

test('a route that nobody gave a role is for growers only', async () => {
  const { app, ann, hal } = await peopledHub();
  const ask = async (cookie?: string) =>
    (await app.inject({ url: '/api/attic', headers: cookie ? { cookie } : {} })).statusCode;
  // No such route: told to be missing to all alike, because no route was found to be guarded.
  expect([await ask(), await ask(hal), await ask(ann)]).toEqual([404, 404, 404]);
  expect(neededFor('GET', '/api/attic')).toBe('grower');
  expect(neededFor('HEAD', '/api/today')).toBe('helper');
  expect(neededFor('DELETE', '/api/today')).toBe('grower');
});

test('a helper answers tasks, and may not move a probe', async () => {
  const { post, hal, ann, send, core, journal, clock } = await peopledHub();
  send('p1', 'temperature', clock.now(), 20);
  const place = { place: 'outside', spot: 'air' };
  const asHelper = await post('/api/probes/p1/place', place, { cookie: hal });
  expect([asHelper.statusCode, asHelper.json()]).toEqual([
    403,
    { error: 'Expected a grower, got Hal, a helper' },
  ]);
  expect((await post('/api/probes/p1/place', place, { cookie: ann })).statusCode).toBe(200);
  expect(journal('placing').map(({ who }) => who)).toEqual(['Ann']);

  clock.set(clock.now() + 3 * 3_600_000);
  core.look();
  const [task] = core.tasks.open();
  const answered = await post(`/api/tasks/${task?.id}/answer`, { answer: 'done' }, { cookie: hal });
  expect(answered.statusCode).toBe(200);
});
