import type { FastifyBaseLogger } from 'fastify';
import type { App } from './app.ts';
import type { Streams } from './streams.ts';
import type { WayIn } from './wayIn.ts';

export type Counts = {
  /** Requests answered, by method and status: `GET 200`. */
  readonly requests: ReadonlyMap<string, number>;
  /** Their durations, seconds. */
  readonly seconds: () => number;
  readonly openPages: () => number;
  readonly failedSignIns: () => number;
  readonly version: string;
};

type CountedParts = {
  readonly streams: Streams;
  readonly wayIn: WayIn;
  readonly version: string;
  readonly log: FastifyBaseLogger;
};

/** HTTP methods that a page or a program uses here; any other is counted as `other`. */
const METHODS = new Set(['GET', 'HEAD', 'POST', 'PATCH', 'PUT', 'DELETE', 'OPTIONS']);

/** Counts what is answered, and writes each request to the log at its finest level. */
export function countRequests(app: App, { streams, wayIn, version, log }: CountedParts): Counts {
  const requests = new Map<string, number>();
  let seconds = 0;
  app.addHook('onResponse', async (request, reply) => {
    const method = METHODS.has(request.method) ? request.method : 'other';
    const key = `${method} ${reply.statusCode}`;
    requests.set(key, (requests.get(key) ?? 0) + 1);
    seconds += reply.elapsedTime / 1000;
    // The route, not the address as written: nothing that somebody typed gets into the log.
    const { url: route = 'none' } = request.routeOptions;
    const { statusCode: status, elapsedTime: ms } = reply;
    log.debug({ request: request.id, method, route, status, ms }, 'asked');
  });
  return {
    requests,
    seconds: () => seconds,
    openPages: streams.count,
    failedSignIns: wayIn.failed,
    version,
  };
}
