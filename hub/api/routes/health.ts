import * as contract from '../../contract/index.ts';
import type { App } from '../app.ts';
import { metricsText } from '../metrics.ts';
import type { ApiParts } from '../parts.ts';
import { isoOrNull } from '../present.ts';

const MINUTE = 60_000;
/** A look is due every five minutes; this much without one is late. Ours. */
const LOOK_LATE = 12 * MINUTE;
/** No reading from any probe in this time: something is wrong with the wires. Ours. */
const READINGS_LATE = 60 * MINUTE;

export function healthOf(parts: ApiParts): contract.Health {
  const now = parts.clock.now();
  const looked = parts.lastLook();
  const lastReadingAt = parts.lastReadingAt();
  const trouble = parts.store.trouble();
  const backup = parts.keeping?.().backup;
  // The first look is taken before the pages are there: none means that it failed.
  const late = looked === null ? parts.clock.isSet() : now - looked.at > LOOK_LATE;
  const failing = late || looked?.failure != null || !parts.brokerConnected() || trouble !== null;
  const status = failing
    ? 'failing'
    : lastReadingAt === null
      ? 'no-readings'
      : now - lastReadingAt > READINGS_LATE
        ? 'late'
        : 'ok';
  return {
    status,
    lastReadingAt: isoOrNull(lastReadingAt),
    evaluatedAt: isoOrNull(looked?.at ?? null),
    clock: parts.clock.isSet() ? 'ok' : 'unset',
    store: { ...parts.store.size(), trouble },
    backupAt: isoOrNull(backup?.at ?? null),
    backupFault: backup?.fault ?? null,
  };
}

export function healthRoutes(app: App, parts: ApiParts) {
  app.get('/api/health', { schema: { response: { 200: contract.health } } }, () => healthOf(parts));

  app.get('/api/farm', { schema: { response: { 200: contract.farmFacts } } }, () => {
    const { name, zone, money, lat, lon } = parts.farm().file.farm;
    return {
      name,
      zone,
      money,
      lat,
      lon,
      invented: /\(invented\)/i.test(name),
      now: new Date(parts.clock.now()).toISOString(),
      speed: parts.clock.speed,
    };
  });

  app.get('/metrics', (_request, reply) => {
    reply.type('text/plain; version=0.0.4; charset=utf-8');
    return metricsText(parts, healthOf(parts));
  });
}
