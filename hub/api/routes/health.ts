import { channelsOf } from '../../alarms/index.ts';
import * as contract from '../../contract/index.ts';
import type { App } from '../app.ts';
import type { Counts } from '../counts.ts';
import { metricsText } from '../metrics.ts';
import type { ApiParts } from '../parts.ts';
import { isoOrNull } from '../present.ts';
import { shownFarm } from '../shownFarm.ts';

const MINUTE = 60_000;
/** A look is due every five minutes; this much without one, and the hub does not work. Ours. */
const LOOK_LATE = 15 * MINUTE;
/** The same by a wall clock, for demonstrations that hurry. Ours. */
const LOOK_LATE_REAL = MINUTE / 2;
/** No reading from any probe in this time: something is wrong with the wires. Ours. */
const READINGS_LATE = 60 * MINUTE;
/** Less room than this is soon filled. Bytes, ours: some weeks of readings and a log. */
const LITTLE_ROOM = 50 * 1024 * 1024;

const UNKNOWN = { bytes: null, freeBytes: null };

/** How large the store is; unknown when it cannot be read, or is not there any more. */
function storeSize({ store }: ApiParts): Omit<contract.Health['store'], 'trouble'> {
  try {
    store.people.claimed(); // a real query
    return store.size();
  } catch {
    return UNKNOWN;
  }
}

export function healthOf(parts: ApiParts): contract.Health {
  const now = parts.clock.now();
  const looked = parts.lastLook();
  const lastReadingAt = parts.lastReadingAt();
  const store = storeSize(parts);
  parts.store.isThere();
  const trouble = parts.store.trouble();
  const { settled } = parts.farm();
  // The first look is taken before the pages are there: none means that it failed.
  const clock = parts.clockState();
  const late =
    clock === 'ok' &&
    settled &&
    (looked === null || now - looked.at > Math.max(LOOK_LATE, LOOK_LATE_REAL * parts.clock.speed));
  const full = store.bytes !== 0 && store.freeBytes !== null && store.freeBytes < LITTLE_ROOM;
  const state = (): contract.Health['status'] => {
    if (late || looked?.failure != null || store.bytes === null || trouble !== null)
      return 'failing';
    if (!settled) return 'no-farm';
    if (!parts.brokerConnected() || full) return 'degraded';
    if (lastReadingAt === null) return 'no-readings';
    return clock === 'ok' && now - lastReadingAt > READINGS_LATE ? 'late' : 'ok';
  };
  return {
    status: state(),
    lastReadingAt: isoOrNull(lastReadingAt),
    evaluatedAt: isoOrNull(looked?.at ?? null),
    clock,
    held: parts.held(),
    store: { ...store, trouble },
    backupAt: isoOrNull(parts.keeping?.().backup.at ?? null),
    alarmsOut: alarmsOutOf(parts),
  };
}

function alarmsOutOf({ alarms }: ApiParts): contract.Health['alarmsOut'] {
  try {
    if (alarms.troubles().length > 0) return 'failing';
    return alarms.settings().people.some((person) => channelsOf(person).length > 0) ? 'ok' : 'off';
  } catch {
    return 'failing'; // who is to be told stands in a store that cannot be read
  }
}

export function healthRoutes(app: App, parts: ApiParts, counts: Counts) {
  app.get(
    '/api/health',
    { schema: { response: { 200: contract.health, 503: contract.health } } },
    (_request, reply) => {
      const health = healthOf(parts);
      // For programs that only look at the status: 503 where starting it anew may help.
      reply.code(health.status === 'failing' ? 503 : 200);
      return health;
    },
  );

  app.get('/api/farm', { schema: { response: { 200: contract.farmFacts } } }, () =>
    shownFarm(parts),
  );

  app.get('/metrics', (_request, reply) => {
    reply.type('text/plain; version=0.0.4; charset=utf-8');
    return metricsText(parts, healthOf(parts), counts);
  });
}
