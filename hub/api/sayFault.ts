import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify';
import {
  hasZodFastifySchemaValidationErrors,
  isResponseSerializationError,
} from 'fastify-type-provider-zod';
import { TooManyPasswords } from '../passwords.ts';
import { troubleOf } from '../store/index.ts';
import { type Complaint, refusal, shown, storeRefuses } from '../words/index.ts';
import { MOST_BODY } from './app.ts';
import { Refused } from './parts.ts';

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Its body holds a password or a code. */
    secret?: boolean;
  }
}

/** What the body parser of the server refuses before any schema sees it. */
const unreadable = new Set([
  'FST_ERR_CTP_INVALID_JSON_BODY',
  'FST_ERR_CTP_EMPTY_JSON_BODY',
  'FST_ERR_CTP_INVALID_MEDIA_TYPE',
]);

/** What else the server itself refuses, in our words. */
const sentences: Readonly<Record<string, string>> = {
  FST_ERR_CTP_INVALID_CONTENT_LENGTH:
    'Expected a body as long as Content-Length says, got another length',
  FST_ERR_BAD_URL: 'Expected an address that can be read, got another one',
};

function invalid(error: FastifyError, request: FastifyRequest): string {
  if (!hasZodFastifySchemaValidationErrors(error)) return error.message;
  const given = {
    body: request.body,
    querystring: request.query,
    params: request.params,
    headers: {},
  }[error.validationContext ?? 'body'];
  const first = error.validation[0];
  const complaint: Complaint = {
    path: (first?.instancePath ?? '').split('/').filter(Boolean),
    message: first?.message ?? '',
    code: first?.keyword,
    keys: first?.params.keys as string[] | undefined,
  };
  // Of a form with a password in it nothing is shown back: it may stand in the wrong field.
  return refusal(complaint, given, '', request.routeOptions.config.secret === true);
}

/** Every refusal is one sentence for the person who asked; what broke inside is for the log only. */
export const sayFault =
  (onFault: (error: unknown, request?: string) => void) =>
  (error: FastifyError | Refused, request: FastifyRequest, reply: FastifyReply) => {
    const status = error.statusCode ?? 500;
    if (error instanceof Refused)
      return reply.code(status).headers(error.headers).send({ error: error.message });
    if (error instanceof TooManyPasswords) return reply.code(503).send({ error: error.message });
    if (hasZodFastifySchemaValidationErrors(error))
      return reply.code(400).send({ error: invalid(error, request) });
    if (unreadable.has(error.code)) {
      const type = request.headers['content-type'];
      return reply
        .code(status)
        .send({ error: `Expected JSON in the body, got ${shown(type)} that is none` });
    }
    if (troubleOf(error) !== null) {
      onFault(error);
      return reply.code(503).send({ error: storeRefuses });
    }
    if (status >= 500 || isResponseSerializationError(error)) {
      onFault(error, request.id);
      return reply
        .code(Math.max(status, 500))
        .send({ error: `The hub failed to answer; its log says why, at request ${request.id}` });
    }
    if (error.code === 'FST_ERR_CTP_BODY_TOO_LARGE') {
      const most = request.routeOptions.bodyLimit ?? MOST_BODY;
      return reply
        .code(status)
        .send({ error: `Expected at most ${most} bytes in the body, got more` });
    }
    const own =
      sentences[error.code] ?? `Expected another request, got one refused: ${error.message}`;
    return reply.code(status).send({ error: own });
  };
