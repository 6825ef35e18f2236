import Fastify from 'fastify';
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
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  return app.withTypeProvider<ZodTypeProvider>();
}
