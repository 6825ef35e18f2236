import * as contract from '../../contract/index.ts';
import { VENTS_TRUSTED, ventSayings } from '../../snapshot/index.ts';
import { shown } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { iso, shownPlace } from '../present.ts';
import { saidAt } from '../saidAt.ts';

/** "I opened it", "I closed it", and taking that back. Each is an entry; none is ever changed. */
export function ventRoutes(app: App, parts: ApiParts) {
  const vented = (id: string) => {
    const place = parts.farm().place(id);
    if (place?.vents) return place;
    const ids = parts.farm().places.flatMap((one) => (one.vents ? one.id : []));
    const wanted = ids.length === 0 ? 'a place with vents' : `one of ${ids.join(', ')}`;
    throw new Refused(404, `Expected ${wanted} in id, got ${shown(id)}`);
  };
  /** Days that are over are worked out again when what is said reaches back into them. */
  const stale = (id: string, at: number, now: number) => {
    const [day, today] = [parts.calendar().dayOf(at), parts.calendar().dayOf(now)];
    if (day < today) parts.snapshots.climate.touched(id, day, today);
  };
  const answered = (id: string) => {
    parts.look();
    const looked = parts.lastLook();
    const place = looked && shownPlace(parts, looked, id);
    if (!place) throw new Refused(503, 'Expected a look since this place was added, got none yet');
    return place;
  };
  const add = (place: string, who: string, body: object) =>
    parts.store.journal.add({
      ...{ t: parts.clock.now(), who, what: 'vents', place, subject: null },
      body,
    });

  app.post(
    '/api/places/:id/vents',
    {
      schema: {
        params: contract.idParam,
        body: contract.tellVents,
        response: { 200: contract.placeNow },
      },
    },
    (request) => {
      const { id } = vented(request.params.id);
      const { state, at: said } = request.body;
      const now = parts.clock.now();
      const at = said === undefined ? saidAt(request, parts.clock) : Date.parse(said);
      if (at > now || at <= now - VENTS_TRUSTED)
        throw new Refused(
          400,
          `Expected a time from ${iso(now - VENTS_TRUSTED)} to ${iso(now)} in at, got ${said ?? iso(at)}`,
        );
      const who = whoIs(request);
      add(id, who, { is: state === 'open', at });
      // It is done, whoever asked for it.
      const kind = state === 'open' ? 'open-up' : 'close-up';
      for (const task of parts.tasks.open())
        if (task.kind === kind && task.place === id && task.subject === null && at >= task.openedAt)
          parts.answer(task.id, { answer: 'done', until: null, note: null }, who);
      stale(id, at, now);
      return answered(id);
    },
  );

  app.post(
    '/api/places/:id/vents/undo',
    { schema: { params: contract.idParam, response: { 200: contract.placeNow } } },
    (request) => {
      const { id } = vented(request.params.id);
      const now = parts.clock.now();
      const told = saidAt(request, parts.clock);
      const last = ventSayings(parts.store, id, told - VENTS_TRUSTED, told).at(-1);
      if (last === undefined)
        throw new Refused(409, 'Expected an entry of the last day to take back, got none');
      add(id, whoIs(request), { undoes: last.id });
      stale(id, last.at, now);
      return answered(id);
    },
  );
}
