import { z } from 'zod';
import * as contract from '../../contract/index.ts';
import { csv, makeActions } from '../../record/index.ts';
import { actionColumns, recordColumns, shown } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { iso } from '../present.ts';
import { roomLastDay } from '../roomLastDay.ts';
import { logRange, roomLog, shownActions } from '../roomLog.ts';
import { saidAt } from '../saidAt.ts';

/** The temperature record of a cool room, and what people enter into it. */
export function recordRoutes(app: App, parts: ApiParts) {
  const roomOf = (id: string) => {
    const room = parts.farm().place(id);
    if (room?.kind === 'cool-room') return room;
    throw new Refused(404, `Expected the id of a cool room, got ${shown(id)}`);
  };

  app.get(
    '/api/cool-rooms/:id/day',
    { schema: { params: contract.idParam, response: { 200: contract.coolRoomDay } } },
    ({ params }) => roomLastDay(parts, roomOf(params.id)),
  );

  app.get(
    '/api/cool-rooms/:id/log',
    {
      schema: {
        params: contract.idParam,
        querystring: contract.logRange,
        response: { 200: contract.coolRoomLog },
      },
    },
    ({ params, query }) => roomLog(parts, roomOf(params.id), logRange(parts, query)),
  );

  app.get(
    '/api/cool-rooms/:id/log.csv',
    {
      schema: {
        params: contract.idParam,
        querystring: contract.logRange.extend({ of: z.enum(['days', 'actions']).default('days') }),
      },
    },
    ({ params, query }, reply) => {
      const room = roomOf(params.id);
      const log = roomLog(parts, room, logRange(parts, query));
      reply.type('text/csv; charset=utf-8');
      const name = `${room.id}-${query.of}-${log.from}-${log.to}.csv`;
      reply.header('content-disposition', `attachment; filename="${name}"`);
      return query.of === 'days' ? daysFile(log) : actionsFile(log);
    },
  );

  app.post(
    '/api/cool-rooms/:id/actions',
    {
      schema: {
        params: contract.idParam,
        body: contract.enterAction,
        response: { 200: contract.correctiveAction.array() },
      },
    },
    (request) => {
      const room = roomOf(request.params.id);
      const { at, saw, did, by: told, core = null, corrects = null } = request.body;
      const now = saidAt(request, parts.clock);
      const when = at === undefined ? now : Date.parse(at);
      if (when > now) throw new Refused(400, `Expected a time that is past in at, got ${at}`);
      const by = told ?? request.session?.name ?? null;
      if (by === null) throw new Refused(400, 'Expected the name of who did it in by, got nothing');
      const actions = makeActions(parts.store);
      if (corrects !== null && !actions.of(room.id).some(({ entry }) => entry === corrects))
        throw new Refused(400, `Expected an entry of this room in corrects, got ${corrects}`);
      actions.add({ at: when, saw, did, by, core, corrects }, room.id, whoIs(request), now);
      return shownActions(parts, room.id);
    },
  );
}

const hours = (value: number) => Number(value.toFixed(4));

function daysFile({ days }: contract.CoolRoomLog): string {
  return csv(
    Object.values(recordColumns),
    days.map((day) => [
      day.day,
      hours(day.aboveHours),
      hours(day.belowHours),
      hours(day.unknownHours),
      day.highest,
      day.lowest,
      day.meanKinetic,
      day.knownShare,
      // Time intervals of ISO 8601.
      day.gaps.map(({ from, to }) => `${from}/${to}`).join(' '),
    ]),
  );
}

const actionsFile = ({ actions }: contract.CoolRoomLog): string =>
  csv(
    Object.values(actionColumns),
    actions.map(({ at, saw, did, by, core, corrected }) => [
      iso(Date.parse(at)),
      saw,
      did,
      by,
      core,
      corrected,
    ]),
  );
