import { z } from 'zod';
import * as contract from '../../contract/index.ts';
import { shown } from '../../words/index.ts';
import type { App } from '../app.ts';
import { newest } from '../newest.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { shownPlace, shownPlaces } from '../present.ts';
import { readSeries } from '../readSeries.ts';

const DAY = 86_400_000; // ms
const DAYS_SHOWN = 30;
const MOST_DAYS = 3660; // ten years
const MOST_POINTS = 5000;

export function placeRoutes(app: App, parts: ApiParts) {
  const known = (id: string, field = 'place') => {
    const place = parts.farm().place(id);
    if (place) return place;
    const ids = parts.farm().places.map((one) => one.id);
    throw new Refused(404, `Expected one of ${ids.join(', ')} in ${field}, got ${shown(id)}`);
  };

  app.get('/api/places', { schema: { response: { 200: contract.placeNow.array() } } }, () =>
    shownPlaces(parts, newest(parts)),
  );

  app.get(
    '/api/places/:id',
    { schema: { params: contract.idParam, response: { 200: contract.placeNow } } },
    ({ params }) => {
      const place = known(params.id, 'id');
      const shown = shownPlace(parts, newest(parts), place.id);
      if (!shown)
        throw new Refused(503, 'Expected a look since this place was added, got none yet');
      return shown;
    },
  );

  app.get(
    '/api/places/:id/days',
    {
      schema: {
        params: contract.idParam,
        querystring: z.object({
          from: contract.calendarDay.optional(),
          to: contract.calendarDay.optional(),
        }),
        response: { 200: contract.day.array() },
      },
    },
    ({ params, query }) => {
      const { id } = known(params.id, 'id');
      const now = parts.clock.now();
      const calendar = parts.calendar();
      const to = query.to ?? calendar.dayOf(now);
      const from = query.from ?? calendar.add(to, 1 - DAYS_SHOWN);
      if (from > to) throw new Refused(400, `Expected from at most ${to}, got ${from}`);
      if (calendar.add(from, MOST_DAYS) < to)
        throw new Refused(400, `Expected at most ${MOST_DAYS} days, got from ${from} to ${to}`);
      return parts.snapshots.days.between(id, from, to, now);
    },
  );

  app.get(
    '/api/series',
    {
      schema: {
        querystring: z.object({
          place: z.string(),
          quantity: contract.quantity,
          spot: contract.spot.optional(),
          from: contract.time,
          to: contract.time,
          points: z.coerce.number().int().min(1).max(MOST_POINTS).default(500),
        }),
        response: { 200: contract.series },
      },
    },
    ({ query }) => {
      const { id } = known(query.place);
      const from = Date.parse(query.from);
      const to = Date.parse(query.to);
      if (from >= to) throw new Refused(400, `Expected from before ${query.to}, got ${query.from}`);
      if (to - from > MOST_DAYS * DAY)
        throw new Refused(
          400,
          `Expected at most ${MOST_DAYS} days, got from ${query.from} to ${query.to}`,
        );
      return readSeries(parts, { ...query, place: id, spot: query.spot ?? null, from, to });
    },
  );
}
