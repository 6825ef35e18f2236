import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify';
import {
  hasZodFastifySchemaValidationErrors,
  isResponseSerializationError,
} from 'fastify-type-provider-zod';
import { troubleOf } from '../store/index.ts';
import { type Complaint, refusal, shown, storeRefuses } from '../words/index.ts';
import { Refused } from './parts.ts';

/** What the body parser of the server refuses before any schema sees it. */
const unreadable = new Set([
  'FST_ERR_CTP_INVALID_JSON_BODY',
  'FST_ERR_CTP_EMPTY_JSON_BODY',
  'FST_ERR_CTP_INVALID_MEDIA_TYPE',
]);

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
  return refusal(complaint, given);
}

/** Every refusal is one sentence for the person who asked; what broke inside is for the log only. */
export const sayFault =
  (onFault: (error: unknown) => void) =>
  (error: FastifyError | Refused, request: FastifyRequest, reply: FastifyReply) => {
    const status = error.statusCode ?? 500;
    if (error instanceof Refused) return reply.code(status).send({ error: error.message });
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
      onFault(error);
      return reply
        .code(Math.max(status, 500))
        .send({ error: 'The hub failed to answer; its log says why' });
    }
    return reply.code(status).send({ error: `Expected another request, got: ${error.message}` });
  };
