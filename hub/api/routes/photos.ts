import { z } from 'zod';
import * as contract from '../../contract/index.ts';
import { MOST_PHOTO, mediaTypes, PhotoRefused } from '../../photos/index.ts';
import { shown } from '../../words/index.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';

/** What the route lets through to be judged; JSON is refused there, as no picture. What is inside a
 *  picture is told by its first bytes. */
const PICTURE = /^(?:image\/(?:jpeg|png|webp)$|application\/json\s*(?:;|$))/i;

/**
 * Photos of entries. Sent first, as the bytes of one picture; the entry then refers to it by name.
 * A scope of its own: nowhere else are such bodies read, or as large ones.
 */
export async function photoRoutes(app: App, { photos }: ApiParts) {
  await app.register(async (plain) => {
    const scope = plain as unknown as App;
    scope.addContentTypeParser(
      Object.values(mediaTypes),
      { parseAs: 'buffer', bodyLimit: MOST_PHOTO },
      (_request, body, done) => done(null, body),
    );
    scope.post(
      '/api/photos',
      {
        bodyLimit: MOST_PHOTO,
        config: { takes: PICTURE },
        schema: { response: { 200: contract.photoKept } },
      },
      ({ body }) => {
        if (!photos) throw new Refused(503, 'Expected a hub that keeps photos, got one without');
        if (!Buffer.isBuffer(body))
          throw new Refused(
            415,
            'Expected image/jpeg, image/png or image/webp in Content-Type, got another type',
          );
        try {
          photos.sweep();
          return { photo: photos.put(body), bytes: body.length };
        } catch (error) {
          if (error instanceof PhotoRefused) throw new Refused(error.status, error.message);
          throw error;
        }
      },
    );
  });

  app.get(
    '/api/photos/:name',
    { schema: { params: z.object({ name: z.string().max(100) }) } },
    ({ params: { name }, headers }, reply) => {
      const found = photos?.get(name);
      if (!found) throw new Refused(404, `Expected the name of a photo, got ${shown(name)}`);
      const tag = `"${name}"`;
      // Asked for each time, so that one that was withdrawn is gone from every page as well.
      reply.header('cache-control', 'private, no-cache').header('etag', tag);
      if (headers['if-none-match'] === tag) return reply.code(304).send();
      // A picture and nothing else, whatever its bytes might be taken for.
      return reply
        .header('content-security-policy', "default-src 'none'; sandbox")
        .header('x-content-type-options', 'nosniff')
        .header('content-disposition', `inline; filename="${name}"`)
        .type(found.type)
        .send(found.bytes);
    },
  );
}
