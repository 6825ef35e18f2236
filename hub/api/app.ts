import { createServer, type RequestListener, type Server, type ServerOptions } from 'node:http';
import { createServer as createSecureServer } from 'node:https';
import Fastify from 'fastify';
import {
  serializerCompiler,
  validatorCompiler,
  type ZodTypeProvider,
} from 'fastify-type-provider-zod';

const SECOND = 1000; // ms
const MOST_BODY = 64 * 1024; // bytes; ours: an answer or a placing is under 1 kB

// Limits on what one connection may hold, ours: a page sends a few hundred bytes at once.
const LIMITS: ServerOptions = {
  maxHeaderSize: 16 * 1024, // bytes
  headersTimeout: 10 * SECOND,
  requestTimeout: 20 * SECOND, // a body that trickles in
  keepAliveTimeout: 30 * SECOND,
  connectionsCheckingInterval: 2 * SECOND,
};
/** A connection on which nothing moves; an open page hears something every ten seconds. Ours. */
const LONGEST_SILENCE = 60 * SECOND;
/** Connections at the same time. Ours: a browser opens six. */
const MOST_CONNECTIONS = 500;

export type Certificate = { readonly cert: string; readonly key: string };
export type AppOptions = {
  /** Serve over TLS with this. */
  readonly certificate?: Certificate | null;
};

function makeServer(handler: RequestListener, certificate: Certificate | null): Server {
  const server = certificate
    ? // To its user the same: it hears requests. RFC 9325, section 3.1.1: TLS 1.2 or newer.
      (createSecureServer(
        { ...LIMITS, ...certificate, minVersion: 'TLSv1.2', handshakeTimeout: 10 * SECOND },
        handler,
      ) as unknown as Server)
    : createServer(LIMITS, handler);
  server.maxConnections = MOST_CONNECTIONS;
  server.setTimeout(LONGEST_SILENCE);
  return server;
}

/** A server whose routes are checked, typed and described by zod schemas. */
export type App = Awaited<ReturnType<typeof makeApp>>;
export async function makeApp({ certificate = null }: AppOptions = {}) {
  let begun = 0;
  const app = Fastify({
    genReqId: () => `r${(++begun).toString(36)}`,
    serverFactory: (handler) => makeServer(handler, certificate),
    bodyLimit: MOST_BODY,
    forceCloseConnections: true,
    // A lone % is no address: it is taken for one that leads nowhere, and the page says so.
    rewriteUrl: ({ url = '/' }) => {
      try {
        decodeURI(url);
        return url;
      } catch {
        return url.startsWith('/api/') ? '/api/nowhere' : '/nowhere';
      }
    },
    routerOptions: { maxParamLength: 300 },
  });
  // JSON only: what a form of another site can send without asking is not read at all.
  app.removeContentTypeParser('text/plain');
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  return app.withTypeProvider<ZodTypeProvider>();
}
