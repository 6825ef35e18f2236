import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import * as contract from '../../contract/index.ts';
import { calendarAddress, calendarEvents, iCalendar } from '../../planning/index.ts';
import { calendarWords } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';

/** A calendar program comes back after hours; ten tries a minute leave nothing to guess with. Ours. */
const few = { rateLimit: { max: 10, timeWindow: 60_000 } };
const REFRESH = 6; // h, as often as the plan is made anew
const ENDS = '.ics';

/** Sowing and harvest for calendar programs, and the secret address they read it at. */
export function calendarRoutes(app: App, parts: ApiParts) {
  const address = calendarAddress(parts.store);
  const events = calendarEvents(address.name);

  const feed = (reply: FastifyReply) => {
    const now = parts.clock.now();
    const farm = parts.farm();
    const planned = parts.planning.planned(now);
    reply.type('text/calendar; charset=utf-8');
    reply.header('cache-control', 'private, no-cache');
    return iCalendar({
      name: calendarWords.name(farm.file.farm.name),
      description: calendarWords.about,
      events: events(planned, farm, parts.calendar(), now),
      at: now,
      refreshHours: REFRESH,
    });
  };
  const shown = ({ protocol }: FastifyRequest, token: string | null): contract.CalendarFeed => {
    const open = address.exists();
    const said = [open ? calendarWords.open : calendarWords.closed];
    if (open && protocol !== 'https') said.push(calendarWords.plain);
    return {
      open,
      path: token === null ? null : `/api/calendar/${token}${ENDS}`,
      words: said.join(' '),
    };
  };
  const entry = (request: FastifyRequest, what: string) =>
    parts.store.journal.add({
      ...{ t: parts.clock.now(), who: whoIs(request), what },
      ...{ place: null, subject: null, body: {} },
    });

  app.get('/api/calendar.ics', {}, (_request, reply) => feed(reply));

  app.get(
    '/api/calendar/:name',
    { config: few, schema: { params: z.object({ name: z.string() }) } },
    ({ params: { name } }, reply) => {
      // The sentence tells nothing of what was asked for: it may be nearly right.
      if (!name.endsWith(ENDS) || !address.opens(name.slice(0, -ENDS.length)))
        throw new Refused(404, 'Expected the address of a calendar, got one that leads nowhere');
      return feed(reply);
    },
  );

  app.get('/api/calendar', { schema: { response: { 200: contract.calendarFeed } } }, (request) =>
    shown(request, null),
  );

  app.post(
    '/api/calendar',
    {
      schema: {
        body: z.strictObject({ to: z.enum(['renew', 'stop']) }),
        response: { 200: contract.calendarFeed },
      },
    },
    (request) => {
      if (request.body.to === 'stop') {
        address.stop();
        entry(request, 'calendar-stopped');
        return shown(request, null);
      }
      const token = address.renew();
      entry(request, 'calendar-renewed');
      return shown(request, token);
    },
  );
}
