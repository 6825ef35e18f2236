import { createServer, type RequestListener, type Server, type ServerOptions } from 'node:http';
import { createServer as createSecureServer } from 'node:https';
import type { Socket } from 'node:net';
import Fastify, { type FastifyError, type FastifyReply, type FastifyRequest } from 'fastify';
import {
  serializerCompiler,
  validatorCompiler,
  type ZodTypeProvider,
} from 'fastify-type-provider-zod';

const SECOND = 1000; // ms
/** Bytes; ours: an answer or a placing is under 1 kB. */
export const MOST_BODY = 64 * 1024;

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

/** Characters of a name in an address. */
const LONGEST_NAME = 300;

/** What the router refuses, before any route is found. */
function refuseAddress(error: FastifyError, _request: FastifyRequest, reply: FastifyReply) {
  const long = error.code === 'FST_ERR_MAX_PARAM_LENGTH';
  const wanted = long ? `a name of at most ${LONGEST_NAME} characters` : 'an address to be read';
  reply
    .code(long ? 414 : 400)
    .send({ error: `Expected ${wanted} in the address, got ${long ? 'a longer' : 'another'} one` });
}

const UNREADABLE: Readonly<Record<string, readonly [string, string]>> = {
  ERR_HTTP_REQUEST_TIMEOUT: ['408 Request Timeout', 'Expected a whole request in time, got a part'],
  HPE_HEADER_OVERFLOW: [
    '431 Request Header Fields Too Large',
    `Expected at most ${LIMITS.maxHeaderSize} bytes of headers, got more`,
  ],
};

/** What cannot be read as HTTP is told so on the bare connection, which then ends. */
function refuseUnreadable({ code }: NodeJS.ErrnoException, socket: Socket) {
  if (code === 'ECONNRESET' || socket.destroyed || !socket.writable) return void socket.destroy();
  const [status, error] = UNREADABLE[code ?? ''] ?? [
    '400 Bad Request',
    'Expected a request by RFC 9112, got something else',
  ];
  const body = JSON.stringify({ error });
  socket.end(
    `HTTP/1.1 ${status}\r\nContent-Type: application/json; charset=utf-8\r\nContent-Length: ${body.length}\r\nConnection: close\r\n\r\n${body}`,
    () => socket.destroy(),
  );
}

/** A server whose routes are checked, typed and described by zod schemas. */
export type App = Awaited<ReturnType<typeof makeApp>>;
export async function makeApp({ certificate = null }: AppOptions = {}) {
  let begun = 0;
  const app = Fastify({
    genReqId: () => `r${(++begun).toString(36)}`,
    serverFactory: (handler) => makeServer(handler, certificate),
    clientErrorHandler: refuseUnreadable,
    frameworkErrors: refuseAddress,
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
    routerOptions: { maxParamLength: LONGEST_NAME },
  });
  // JSON only: what a form of another site can send without asking is not read at all.
  app.removeContentTypeParser('text/plain');
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  return app.withTypeProvider<ZodTypeProvider>();
}
