import type { FastifyRequest } from 'fastify';
import type { Clock } from '../clock.ts';
import { shown } from '../words/index.ts';
import { whoIs } from './access.ts';
import type { App } from './app.ts';
import { Refused } from './parts.ts';

// What was said while the hub was out of reach is sent later, with two headers of our own: when it was
// said, and by whom.

const DAY = 86_400_000; // ms
/** What was said longer ago is not entered by itself. Ours: less than the time keys of commands are
 *  known for, so that nothing that was entered already can come again unknown. */
export const OLDEST_SAID = 14 * DAY;
/** A browser's clock may be so much ahead of the hub's. Ours. */
const AHEAD = 300_000; // ms

/**
 * When the person said it, ms since 1970: `Dewpost-Said-At` of the request (RFC 3339, by the farm's
 * clock), else now. @throws Refused 400 for a time that is ahead or too long ago.
 */
export function saidAt({ headers }: FastifyRequest, clock: Clock): number {
  const header = headers['dewpost-said-at'];
  const now = clock.now();
  if (header === undefined) return now;
  const said = ISO.test(String(header)) ? Date.parse(String(header)) : Number.NaN;
  if (Number.isNaN(said))
    throw new Refused(
      400,
      `Expected a time with its zone in Dewpost-Said-At, got ${shown(String(header))}`,
    );
  if (said > now + AHEAD)
    throw new Refused(400, `Expected a time that is past in Dewpost-Said-At, got ${header}`);
  if (said < now - OLDEST_SAID)
    throw new Refused(
      400,
      `Expected a time at most ${OLDEST_SAID / DAY} days ago in Dewpost-Said-At, got ${header}`,
    );
  return Math.min(said, now);
}

const ISO = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d{1,3})?(?:Z|[+-]\d\d:\d\d)$/;

/** Nothing that one person said is entered under another's name. */
export function heedSpeaker(app: App) {
  app.addHook('preHandler', async (request) => {
    const header = request.headers['dewpost-said-by'];
    if (header === undefined) return;
    const by = plain(String(header));
    if (by !== whoIs(request))
      throw new Refused(
        412,
        `Expected ${shown(by)}, who said this, to send it, got ${whoIs(request)}`,
      );
  });
}

/** Names can have letters that a header cannot: they are sent percent-encoded (RFC 3986, 2.1). */
function plain(header: string): string {
  try {
    return decodeURIComponent(header);
  } catch {
    return header;
  }
}
