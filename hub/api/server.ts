import { existsSync } from 'node:fs';
import compress from '@fastify/compress';
import cookie from '@fastify/cookie';
import rateLimit from '@fastify/rate-limit';
import staticFiles from '@fastify/static';
import swagger from '@fastify/swagger';
import type { FastifyBaseLogger } from 'fastify';
import { jsonSchemaTransform } from 'fastify-type-provider-zod';
import { wallClock } from '../clock.ts';
import { guard } from './access.ts';
import { type App, type AppOptions, makeApp } from './app.ts';
import { heedCommandKeys } from './commandKeys.ts';
import { countRequests } from './counts.ts';
import { sendHeaders } from './headers.ts';
import { inlinedScripts } from './inlined.ts';
import { type ApiParts, Refused } from './parts.ts';
import { alarmSettingsRoutes } from './routes/alarmSettings.ts';
import { alarmRoutes } from './routes/alarms.ts';
import { batchRoutes } from './routes/batches.ts';
import { batchFileRoutes } from './routes/batchFile.ts';
import { calendarRoutes } from './routes/calendar.ts';
import { earningsRoutes } from './routes/earnings.ts';
import { eventRoutes } from './routes/events.ts';
import { farmRoutes } from './routes/farm.ts';
import { foodClockRoutes } from './routes/foodClocks.ts';
import { frostNightRoutes } from './routes/frostNight.ts';
import { growingRoutes } from './routes/growing.ts';
import { healthRoutes } from './routes/health.ts';
import { keepingRoutes } from './routes/keeping.ts';
import { lossRoutes } from './routes/losses.ts';
import { lotRoutes } from './routes/lots.ts';
import { methodRoutes } from './routes/methods.ts';
import { peopleRoutes } from './routes/people.ts';
import { photoRoutes } from './routes/photos.ts';
import { pickRoutes } from './routes/picks.ts';
import { placeRoutes } from './routes/places.ts';
import { placesComparedRoutes } from './routes/placesCompared.ts';
import { planningRoutes } from './routes/planning.ts';
import { probeCheckRoutes } from './routes/probeChecks.ts';
import { probeRoutes } from './routes/probes.ts';
import { recordRoutes } from './routes/record.ts';
import { reviewRoutes } from './routes/review.ts';
import { seasonRoutes } from './routes/season.ts';
import { signInRoutes } from './routes/signIn.ts';
import { starterRoutes } from './routes/starters.ts';
import { taskRoutes } from './routes/tasks.ts';
import { todayRoutes } from './routes/today.ts';
import { trialRoutes } from './routes/trials.ts';
import { ventRoutes } from './routes/vents.ts';
import { heedSpeaker } from './saidAt.ts';
import { sayFault } from './sayFault.ts';
import { makeSessions } from './sessions.ts';
import { SQUEEZED } from './squeezed.ts';
import { makeStreams } from './streams.ts';
import { makeWayIn, sourceOf } from './wayIn.ts';
import { wordsAhead } from './wordsAhead.ts';

export type ServerOptions = AppOptions & {
  /** Signs the session cookies. */
  readonly cookieSecret: string;
  /** The built dashboard; without it only the JSON is served. */
  readonly pages: string | null;
  readonly version: string;
  /** Told what broke, with the id of the request that broke it. */
  readonly onFault: (error: unknown, request?: string) => void;
  /** Told what happened: requests at its finest level, and who came in. */
  readonly log?: FastifyBaseLogger;
  /** Names the hub answers to beside its addresses. */
  readonly hosts?: readonly string[];
  /** The time that sessions and codes run by, ms since 1970. */
  readonly wall?: () => number;
};

/** The pages and their JSON, ready to listen or to be asked without a port. */
export async function buildServer(parts: ApiParts, options: ServerOptions): Promise<App> {
  const app = await makeApp(options);
  const secure = options.certificate != null;
  await app.register(cookie, { secret: options.cookieSecret });
  await sendHeaders(app, secure, inlinedScripts(options.pages));
  await app.register(compress, SQUEEZED);
  await app.register(rateLimit, {
    global: false,
    keyGenerator: ({ ip }) => sourceOf(ip),
    errorResponseBuilder: (_request, { max, after }) =>
      new Refused(429, `Expected at most ${max} tries a minute, got more: try again in ${after}`),
  });
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Dewpost',
        version: options.version,
        description:
          'What the hub knows and asks for. Times are ISO 8601; null means unknown. Commands understand Idempotency-Key (16 to 100 characters, known for 30 days: the same again gets the same answer and enters nothing), Dewpost-Said-At (when it was said, at most 14 days ago) and Dewpost-Said-By (percent-encoded name; refused with 412 for somebody else).',
      },
    },
    transform: jsonSchemaTransform,
  });

  app.setErrorHandler(sayFault(options.onFault));

  const streams = makeStreams();
  const wall = options.wall ?? wallClock.now;
  const sessions = makeSessions(parts.store, secure, wall, ({ key, name }) =>
    streams.endIf((one) => one.key === key || one.name === name),
  );
  const log = options.log ?? app.log; // without one, a log that writes nothing
  const signIn = { sessions, wayIn: makeWayIn(), wall, log };
  const { version } = options;
  const counts = countRequests(app, { streams, wayIn: signIn.wayIn, version, log });

  guard(app, parts, { sessions, hosts: options.hosts ?? [] });
  heedSpeaker(app);
  heedCommandKeys(app, parts, wall);
  signInRoutes(app, parts, signIn);
  peopleRoutes(app, parts, signIn);
  healthRoutes(app, parts, counts);
  farmRoutes(app, parts);
  starterRoutes(app, parts);
  keepingRoutes(app, parts);
  todayRoutes(app, parts);
  frostNightRoutes(app, parts);
  taskRoutes(app, parts);
  placeRoutes(app, parts);
  ventRoutes(app, parts);
  probeRoutes(app, parts);
  alarmRoutes(app, parts);
  alarmSettingsRoutes(app, parts);
  lotRoutes(app, parts);
  pickRoutes(app, parts);
  earningsRoutes(app, parts);
  batchRoutes(app, parts);
  batchFileRoutes(app, parts);
  lossRoutes(app, parts);
  await photoRoutes(app, parts);
  growingRoutes(app, parts);
  foodClockRoutes(app, parts);
  recordRoutes(app, parts);
  probeCheckRoutes(app, parts);
  seasonRoutes(app, parts);
  planningRoutes(app, parts);
  calendarRoutes(app, parts);
  placesComparedRoutes(app, parts);
  reviewRoutes(app, parts);
  trialRoutes(app, parts);
  eventRoutes(app, parts, { streams, sessions });
  methodRoutes(app);
  app.get('/api/openapi.json', { schema: { hide: true } }, () => app.swagger());

  const { pages } = options;
  if (pages !== null && existsSync(pages)) {
    const ahead = wordsAhead(pages);
    await app.register(staticFiles, {
      root: pages,
      wildcard: false,
      cacheControl: false,
      preCompressed: true, // the build leaves a .br and a .gz beside each file
      setHeaders: (reply, path) => {
        reply.setHeader('cache-control', cachedFor(path));
        if (!path.includes('index.html')) return;
        const words = ahead(parts.farm().file.farm.language ?? 'en'); // no secret, unlike its name
        if (words !== null) reply.setHeader('link', words);
      },
    });
    // An address of a page: the page finds its own way from there.
    app.setNotFoundHandler((request, reply) => {
      if (request.method !== 'GET' || request.url.startsWith('/api/'))
        return notFound(request.url, reply);
      return reply.header('cache-control', 'no-cache').sendFile('index.html');
    });
  } else app.setNotFoundHandler((request, reply) => notFound(request.url, reply));
  return app;
}

function cachedFor(path: string): string {
  // Built files carry their content's hash in their name; the page itself is asked for anew.
  const named = /[/\\]assets[/\\]/.test(path);
  return named ? 'public, max-age=31536000, immutable' : 'no-cache';
}

/** Characters of an address that is shown back. */
const LONGEST = 100;
const notFound = (url: string, reply: { code(status: number): { send(body: unknown): unknown } }) =>
  reply
    .code(404)
    .send({ error: `Expected an address of the hub, got ${url.split('?')[0]?.slice(0, LONGEST)}` });
