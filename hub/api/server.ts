import { existsSync } from 'node:fs';
import cookie from '@fastify/cookie';
import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import staticFiles from '@fastify/static';
import swagger from '@fastify/swagger';
import { jsonSchemaTransform } from 'fastify-type-provider-zod';
import { accessRoutes, guard } from './access.ts';
import { type App, makeApp } from './app.ts';
import type { ApiParts } from './parts.ts';
import { eventRoutes } from './routes/events.ts';
import { healthRoutes } from './routes/health.ts';
import { keepingRoutes } from './routes/keeping.ts';
import { methodRoutes } from './routes/methods.ts';
import { placeRoutes } from './routes/places.ts';
import { probeRoutes } from './routes/probes.ts';
import { taskRoutes } from './routes/tasks.ts';
import { todayRoutes } from './routes/today.ts';
import { sayFault } from './sayFault.ts';

export type ServerOptions = {
  /** Signs the session cookies. */
  readonly cookieSecret: string;
  /** The built dashboard; without it only the JSON is served. */
  readonly pages: string | null;
  readonly version: string;
  readonly onFault: (error: unknown) => void;
};

/** The pages and their JSON, ready to listen or to be asked without a port. */
export async function buildServer(parts: ApiParts, options: ServerOptions): Promise<App> {
  const app = await makeApp();
  await app.register(cookie, { secret: options.cookieSecret });
  await app.register(helmet, {
    hsts: false, // served over plain HTTP by address on the farm's own network
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        imgSrc: ["'self'", 'data:'],
        styleSrc: ["'self'"],
        styleSrcAttr: ["'unsafe-inline'"], // positions that the charts set on their own elements
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
  });
  await app.register(rateLimit, { global: false });
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Dewpost',
        version: options.version,
        description: 'What the hub knows and asks for. Times are ISO 8601; null means unknown.',
      },
    },
    transform: jsonSchemaTransform,
  });

  app.setErrorHandler(sayFault(options.onFault));

  guard(app, parts);
  accessRoutes(app, parts);
  healthRoutes(app, parts);
  keepingRoutes(app, parts);
  todayRoutes(app, parts);
  taskRoutes(app, parts);
  placeRoutes(app, parts);
  probeRoutes(app, parts);
  eventRoutes(app, parts);
  methodRoutes(app);
  app.get('/api/openapi.json', { schema: { hide: true } }, () => app.swagger());

  const { pages } = options;
  if (pages !== null && existsSync(pages)) {
    await app.register(staticFiles, {
      root: pages,
      wildcard: false,
      cacheControl: false,
      setHeaders,
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

function setHeaders(reply: { setHeader(name: string, value: string): unknown }, path: string) {
  // Built files carry their content's hash in their name; the page itself is asked for anew.
  const named = /[/\\]assets[/\\]/.test(path);
  reply.setHeader('cache-control', named ? 'public, max-age=31536000, immutable' : 'no-cache');
}

const notFound = (url: string, reply: { code(status: number): { send(body: unknown): unknown } }) =>
  reply.code(404).send({ error: `Expected an address of the hub, got ${url.split('?')[0]}` });
