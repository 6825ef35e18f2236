import { z } from 'zod';
import * as contract from '../../contract/index.ts';
import type { ProbeRow } from '../../store/index.ts';
import { shown as quoted, refusalWords } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { iso } from '../present.ts';
import { shownProbe } from '../shownProbe.ts';

const DAY = 86_400_000; // ms

export function probeRoutes(app: App, parts: ApiParts) {
  const { store, snapshots } = parts;
  const sinceYesterday = () => store.refusals.since(parts.clock.now() - DAY);

  const shown = (probe: ProbeRow, refused = sinceYesterday()) =>
    shownProbe(
      parts,
      probe,
      refused.filter(({ source }) => source === probe.id),
    );

  app.get('/api/probes', { schema: { response: { 200: contract.probe.array() } } }, () => {
    const refused = sinceYesterday();
    return store.probes.all().map((probe) => shown(probe, refused));
  });

  // What no known probe sent: a typing mistake in a topic shows here.
  app.get('/api/refused', { schema: { response: { 200: contract.refused.array() } } }, () => {
    const known = new Set(store.probes.all().map(({ id }) => id));
    return sinceYesterday()
      .filter(({ source }) => !known.has(source))
      .map(({ lastAt, ...row }) => ({
        ...row,
        words: refusalWords(row.reason),
        lastAt: iso(lastAt),
      }));
  });

  app.post(
    '/api/probes/:id/place',
    {
      schema: {
        params: z.object({ id: contract.probeName }),
        body: contract.placeProbe,
        response: { 200: contract.probe },
      },
    },
    (request) => {
      const { id } = request.params;
      const { place, spot, from } = request.body;
      const now = parts.clock.now();
      const probe = store.probes.get(id);
      if (!probe) throw new Refused(404, `Expected a probe that was heard, got ${quoted(id)}`);
      const ids = parts.farm().places.map((one) => one.id);
      if (!ids.includes(place))
        throw new Refused(400, `Expected one of ${ids.join(', ')} in place, got ${quoted(place)}`);
      const since = from === undefined ? sinceFirst(id, now) : Date.parse(from);
      if (since > now) throw new Refused(400, `Expected a time that is past in from, got ${from}`);
      const before = snapshots.spots.currentOf(id)?.place;
      store.transaction(() => {
        store.probes.place(id, place, spot, since);
        store.journal.add({
          t: now,
          who: whoIs(request),
          what: 'placing',
          place,
          subject: id,
          body: { spot, from: iso(since) },
        });
      });
      snapshots.moved(before === undefined ? [place] : [place, before], since);
      parts.look();
      return shown(store.probes.get(id) ?? probe);
    },
  );

  /** A probe placed for the first time has hung there since it was first heard; another, from now. */
  const sinceFirst = (id: string, now: number) => {
    if (snapshots.spots.all().some(({ probe }) => probe === id)) return now;
    const first = store.readings
      .quantitiesOf(id)
      .map((quantity) => store.readings.oldestAt(id, quantity) ?? now);
    return Math.min(now, ...first);
  };
}
