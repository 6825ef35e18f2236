import { z } from 'zod';
import * as contract from '../../contract/index.ts';
import { distanceFrom } from '../../season/index.ts';
import { shown } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { newest } from '../newest.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { iso } from '../present.ts';
import { saidAt } from '../saidAt.ts';

const removed = z.object({ removed: z.string() });

/** Stations, odds of frost by date, and the planner of a patch. */
export function seasonRoutes(app: App, parts: ApiParts) {
  const { store, season, clock } = parts;
  const placeIn = (among: ReturnType<typeof season.planned>, id: string, field: string) => {
    const place = among.find((one) => one.id === id);
    if (place) return place;
    const ids = among.map((one) => one.id).join(', ') || 'no place';
    throw new Refused(404, `Expected one of ${ids} in ${field}, got ${shown(id)}`);
  };
  const chosen = (among: ReturnType<typeof season.planned>, id: string | undefined) =>
    id === undefined ? among : [placeIn(among, id, 'place')];
  const ofPlace = z.object({ place: z.string().optional() });
  const today = () => parts.calendar().dayOf(clock.now());
  const params = contract.idParam;

  app.get('/api/stations', { schema: { response: { 200: contract.station.array() } } }, () =>
    store.stations.all().map(({ importedAt, form, ...row }) => ({
      ...row,
      form: form as contract.Station['form'],
      distance: Math.round(10 * distanceFrom(parts.farm(), row)) / 10,
      ...store.stations.extent(row.id),
      importedAt: iso(importedAt),
    })),
  );

  app.delete('/api/stations/:id', { schema: { params, response: { 200: removed } } }, (request) => {
    const { id } = request.params;
    const gone = store.transaction(() => {
      const done = store.stations.remove(id);
      if (done)
        store.journal.add({
          ...{ t: clock.now(), who: whoIs(request), what: 'station-removed' },
          ...{ place: null, subject: id, body: {} },
        });
      return done;
    });
    if (!gone) throw new Refused(404, `Expected the id of a station, got ${shown(id)}`);
    parts.look();
    return { removed: id };
  });

  app.get(
    '/api/frost/outlook',
    { schema: { querystring: ofPlace, response: { 200: contract.frostOutlook.array() } } },
    ({ query }) =>
      chosen(season.inTheOpen(), query.place).map((place) => season.outlook(place, clock.now())),
  );

  app.get(
    '/api/frost/cut-back',
    { schema: { querystring: ofPlace, response: { 200: contract.cutBack.array() } } },
    ({ query }) => chosen(season.planned(), query.place).map((place) => plan(place)),
  );
  const plan = (place: ReturnType<typeof season.planned>[number]) =>
    season.plan(place, clock.now(), newest(parts).outlook.frost);

  const entry = (id: string, what: string, who: string, body: unknown, t: number = clock.now()) => {
    store.journal.add({ t, who, what, place: id, subject: null, body });
    parts.look();
  };
  app.post(
    '/api/patches/:id/fruit',
    { schema: { params, body: contract.fruitCount, response: { 200: contract.cutBack } } },
    (request) => {
      const place = placeIn(season.planned(), request.params.id, 'id');
      const said = saidAt(request, clock);
      const { cohorts, counted = parts.calendar().dayOf(said) } = request.body;
      if (counted > today())
        throw new Refused(400, `Expected a day up to ${today()} in counted, got ${counted}`);
      for (const { flowered = counted } of cohorts)
        if (flowered > counted)
          throw new Refused(400, `Expected a day up to ${counted} in flowered, got ${flowered}`);
      entry(place.id, 'fruit', whoIs(request), { counted, cohorts }, said);
      return plan(place);
    },
  );
  app.post(
    '/api/patches/:id/terms',
    { schema: { params, body: contract.patchTerms, response: { 200: contract.cutBack } } },
    (request) => {
      const place = placeIn(season.planned(), request.params.id, 'id');
      const { lastPicking } = request.body;
      if (lastPicking !== undefined && lastPicking > today())
        throw new Refused(
          400,
          `Expected a day up to ${today()} in lastPicking, got ${lastPicking}`,
        );
      entry(place.id, 'patch-terms', whoIs(request), request.body);
      return plan(place);
    },
  );

  const response = { 200: contract.backtest };
  const backtest = '/api/patches/:id/backtest';
  app.get(backtest, { schema: { params, response } }, (request) =>
    season.backtest.of(placeIn(season.planned(), request.params.id, 'id').id),
  );
  app.post(backtest, { schema: { params, response } }, (request) =>
    season.backtest.start(placeIn(season.planned(), request.params.id, 'id'), clock.now()),
  );
  app.delete(backtest, { schema: { params, response } }, (request) =>
    season.backtest.cancel(placeIn(season.planned(), request.params.id, 'id').id),
  );
}
