import type { Role } from '../contract/index.ts';

/** Least right that a route asks for: none, a helper's, a grower's. */
export type Needed = 'nobody' | Role;

/**
 * Who may use each route, in one place. A route that is missing here is for growers only, and a test
 * fails until it is named.
 */
export const needed: Readonly<Record<string, Needed>> = {
  // Whether the hub lives, and the way in.
  'GET /api/health': 'nobody',
  'GET /metrics': 'nobody',
  'GET /api/openapi.json': 'nobody',
  'GET /api/who': 'nobody',
  'POST /api/claim': 'nobody',
  'POST /api/sign-in': 'nobody',
  'POST /api/join': 'nobody',

  // What the pages show.
  'GET /api/today': 'helper',
  'GET /api/strips': 'helper',
  'GET /api/tasks': 'helper',
  'GET /api/places': 'helper',
  'GET /api/places/:id': 'helper',
  'GET /api/places/:id/days': 'helper',
  'GET /api/series': 'helper',
  'GET /api/frost/tonight': 'helper',
  'GET /api/cool-rooms/:id': 'helper',
  'GET /api/probes': 'helper',
  'GET /api/refused': 'helper',
  'GET /api/farm': 'helper',
  'GET /api/methods/:name': 'helper',
  'GET /api/events': 'helper',

  'GET /api/alarms': 'helper',
  'GET /api/alarms/log': 'helper',
  'GET /api/alarms/log.csv': 'helper',
  'GET /api/keeping': 'helper',
  'GET /api/lots': 'helper',
  'GET /api/lots/offers': 'helper',
  'GET /api/lots/:id': 'helper',
  'GET /api/batches': 'helper',
  'GET /api/batches.csv': 'helper',
  'GET /api/batches/offers': 'helper',
  'GET /api/batches/:id': 'helper',
  'GET /api/batches/ready': 'helper',
  'GET /api/batches/:id/ready': 'helper',
  'GET /api/crops/:id/growing': 'helper',
  'GET /api/food-clocks': 'helper',
  'GET /api/probes/:id/checks': 'helper',
  'GET /api/cool-rooms/:id/day': 'helper',
  'GET /api/cool-rooms/:id/log': 'helper',
  'GET /api/cool-rooms/:id/log.csv': 'helper',
  'GET /api/learn/scorecard': 'helper',
  'GET /api/frost/curves': 'helper',
  'GET /api/frost/outlook': 'helper',
  'GET /api/frost/cut-back': 'helper',
  'GET /api/patches/:id/backtest': 'helper',
  'GET /api/stations': 'helper',

  // What was done, and one's own sign-in.
  'POST /api/lots': 'helper',
  'PATCH /api/lots/:id': 'helper',
  'POST /api/batches': 'helper',
  'POST /api/batches/repeat': 'helper',
  'PATCH /api/batches/:id': 'helper',
  'POST /api/cool-rooms/:id/actions': 'helper',
  'POST /api/patches/:id/fruit': 'helper',
  'POST /api/patches/:id/backtest': 'helper',
  'DELETE /api/patches/:id/backtest': 'helper',
  'POST /api/alarms/:id/seen': 'helper',
  'POST /api/alarms/silences': 'helper',
  'POST /api/alarms/silences/:id/end': 'helper',
  'POST /api/tasks/:id/answer': 'helper',
  'POST /api/sign-out': 'helper',
  'POST /api/sign-out-everywhere': 'helper',
  'POST /api/password': 'helper',

  // Farm, places, probes, people, limits, alarms.
  'POST /api/probes/:id/place': 'grower',
  'POST /api/food-clocks/:class': 'grower',
  'POST /api/batches/file': 'grower',
  'POST /api/patches/:id/terms': 'grower',
  'DELETE /api/stations/:id': 'grower',
  'POST /api/probes/:id/checks': 'grower',
  'GET /api/alarms/settings': 'grower',
  'POST /api/alarms/settings': 'grower',
  'POST /api/alarms/test': 'grower',
  'POST /api/alarms/rehearsal': 'grower',
  'GET /api/people': 'grower',
  'POST /api/people/codes': 'grower',
  'POST /api/people/codes/:id/drop': 'grower',
  'POST /api/people/:name/code': 'grower',
  'POST /api/people/:name/remove': 'grower',
};

/** What a request needs, by its method and the route that was found for it. */
export const neededFor = (method: string, route: string): Needed =>
  needed[`${method === 'HEAD' ? 'GET' : method} ${route}`] ?? 'grower';
