import { z } from 'zod';
import { alarmCounts, longestSilence } from '../../alarms/index.ts';
import * as contract from '../../contract/index.ts';
import { shown } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import { alarmCsv } from '../alarmCsv.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { iso } from '../present.ts';
import { saidAt } from '../saidAt.ts';
import { shownAlarm, shownSilence, shownTest } from '../shownAlarm.ts';

const MINUTE = 60_000; // ms
const DAY = 86_400_000; // ms
const DAYS_SHOWN = 30;
const MOST_DAYS = 1100; // three years

/** What stands, who saw it, what is silent, and what there was. */
export function alarmRoutes(app: App, parts: ApiParts) {
  const { alarms, clock } = parts;

  const now = (): contract.AlarmsNow => {
    const at = clock.now();
    const state = alarms.now();
    const shown = [
      ...state.tests.map((test) => shownTest(test, state, at)),
      ...state.events.map((event) => shownAlarm(parts, event, state, at)),
    ];
    const kept = shown.filter(
      ({ state: is, rank, kind }) =>
        is.startsWith('active') ||
        (is === 'cleared-unacknowledged' && rank !== 'note' && kind !== 'test'),
    );
    return {
      asOf: iso(at),
      alarms: kept.sort((a, b) => rankOrder(a) - rankOrder(b) || (a.since < b.since ? 1 : -1)),
      silences: state.silences.map((one) => shownSilence(parts, one)),
      troubles: alarms.troubles().map((one) => ({ ...one, since: iso(one.since) })),
      anybody: state.settings.people.some(
        ({ email, webhook }) =>
          webhook !== null || (email !== null && state.settings.mail !== null),
      ),
    };
  };

  app.get('/api/alarms', { schema: { response: { 200: contract.alarmsNow } } }, now);

  app.post(
    '/api/alarms/:id/seen',
    {
      schema: {
        params: contract.idParam,
        body: contract.seeAlarm,
        response: { 200: contract.alarmsNow },
      },
    },
    (request) => {
      const { id } = request.params;
      const said = saidAt(request, clock);
      const stands = alarms.now().events.flatMap(({ head, folded }) => [head, ...folded]);
      // Who saw one that is over has not seen the next one: that must go on waking people.
      const since = stands.find((one) => one.id === id)?.since ?? said;
      if (since > said)
        throw new Refused(409, `Expected an alarm raised by ${iso(said)}, got ${iso(since)}`);
      if (!alarms.see(id, request.body.was ?? null, whoIs(request)))
        throw new Refused(404, `Expected the id of an alarm, got ${shown(id)}`);
      return now();
    },
  );

  app.post(
    '/api/alarms/silences',
    { schema: { body: contract.makeSilence, response: { 200: contract.shownSilence } } },
    (request) => {
      const { place, kind, minutes, reason, work } = request.body;
      const ids = parts.farm().places.map(({ id }) => id);
      if (place !== null && !ids.includes(place))
        throw new Refused(400, `Expected one of ${ids.join(', ')} in place, got ${shown(place)}`);
      const longest = longestSilence(kind) / MINUTE;
      if (minutes > longest)
        throw new Refused(400, `Expected at most ${longest} minutes in minutes, got ${minutes}`);
      const until = clock.now() + minutes * MINUTE;
      const who = whoIs(request);
      return shownSilence(parts, alarms.silence({ place, kind, reason, work, who, until }));
    },
  );

  app.post(
    '/api/alarms/silences/:id/end',
    { schema: { params: contract.idParam, response: { 200: contract.alarmsNow } } },
    (request) => {
      const { id } = request.params;
      if (!alarms.endSilence(id, whoIs(request)))
        throw new Refused(404, `Expected the id of a silence, got ${shown(id)}`);
      return now();
    },
  );

  const entries = (from: number, to: number) => {
    const state = alarms.between(from, to);
    const at = clock.now();
    const shown = [
      ...state.tests.map((test) => shownTest(test, state, at)),
      ...state.events.map((event) => shownAlarm(parts, event, state, at)),
    ].sort((a, b) => (a.since < b.since ? 1 : -1));
    return { shown, alarms: state.alarms };
  };
  const spanOf = ({ from, to }: { from?: string | undefined; to?: string | undefined }) => {
    const end = to === undefined ? clock.now() + 1 : Date.parse(to);
    const begin = from === undefined ? end - DAYS_SHOWN * DAY : Date.parse(from);
    if (begin >= end) throw new Refused(400, `Expected from before ${iso(end)}, got ${from}`);
    if (end - begin > MOST_DAYS * DAY)
      throw new Refused(400, `Expected at most ${MOST_DAYS} days, got from ${from} to ${iso(end)}`);
    return [begin, end] as const;
  };
  const querystring = z.object({ from: contract.time.optional(), to: contract.time.optional() });

  app.get(
    '/api/alarms/log',
    { schema: { querystring, response: { 200: contract.alarmLog } } },
    ({ query }) => {
      const { shown, alarms: raw } = entries(...spanOf(query));
      const monthOf = (t: number) => parts.calendar().dayOf(t).slice(0, 7);
      const counts = alarmCounts(raw, monthOf).map((one) => ({
        ...one,
        kind: one.kind as contract.AlarmKind,
      }));
      return { entries: shown, counts };
    },
  );

  app.get('/api/alarms/log.csv', { schema: { querystring } }, ({ query }, reply) => {
    reply
      .type('text/csv; charset=utf-8; header=present')
      .header('content-disposition', 'attachment; filename="alarms.csv"');
    return reply.send(alarmCsv(entries(...spanOf(query)).shown));
  });
}

const ranks = ['urgent', 'today', 'note'];
const rankOrder = ({ rank, state }: contract.ShownAlarm) =>
  ranks.indexOf(rank) + (state === 'active-unacknowledged' ? 0 : 10);
