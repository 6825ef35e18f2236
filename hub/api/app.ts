import Fastify, { type FastifyReply } from 'fastify';
import {
  serializerCompiler,
  validatorCompiler,
  type ZodTypeProvider,
} from 'fastify-type-provider-zod';

const MOST_BODY = 64 * 1024; // bytes; ours: an answer or a placing is under 1 kB

/** A server whose routes are checked, typed and described by zod schemas. */
export type App = Awaited<ReturnType<typeof makeApp>>;
export async function makeApp() {
  const app = Fastify({
    bodyLimit: MOST_BODY,
    forceCloseConnections: true,
    // An address that is none (a lone %), before any route is looked for.
    frameworkErrors: (_error, request, reply: FastifyReply) => {
      reply.code(400).send({ error: `Expected an address of the hub, got ${request.url}` });
    },
    routerOptions: { maxParamLength: 300 },
  });
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  return app.withTypeProvider<ZodTypeProvider>();
}
