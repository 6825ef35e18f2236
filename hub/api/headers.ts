import helmet from '@fastify/helmet';
import type { App } from './app.ts';

/** Says to browsers what the pages may do: load from the hub and nothing else, inside no other page. */
export async function sendHeaders(app: App, secure: boolean, inlined: readonly string[]) {
  await app.register(helmet, {
    hsts: false, // reached by address, mostly over plain HTTP; a certificate of its own may go again
    crossOriginOpenerPolicy: secure, // browsers complain of it over plain HTTP
    originAgentCluster: secure,
    xFrameOptions: { action: 'deny' },
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'", ...inlined],
        imgSrc: ["'self'", 'data:'],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
  });
  app.addHook('onSend', async (request, reply) => {
    reply.header('x-request-id', request.id);
    reply.header('permissions-policy', 'camera=(), geolocation=(), microphone=(), payment=()');
    // What the farm's answers hold is for who asked, not for a cache on the way.
    if (request.url.startsWith('/api/') && !reply.hasHeader('cache-control'))
      reply.header('cache-control', 'no-store');
  });
}
