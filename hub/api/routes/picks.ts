import { z } from 'zod';
import * as contract from '../../contract/index.ts';
import { undoneIn } from '../../journal/index.ts';
import type { Pick, PickEvent, PickFacts } from '../../picks/index.ts';
import { shown } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { pickCsv } from '../pickCsv.ts';
import { checkPick, cropOfPick, saidPick } from '../pickFacts.ts';
import { pickOffers } from '../pickOffers.ts';
import { saidAt } from '../saidAt.ts';
import { pickWithPast, shownPick } from '../shownPick.ts';

const range = {
  /** Days of the farm, the last one with it. */
  from: contract.calendarDay.optional(),
  to: contract.calendarDay.optional(),
  place: z.string().optional(),
};

/** Pickings. Each command is an entry of the journal; none is ever changed. */
export function pickRoutes(app: App, parts: ApiParts) {
  const { picks } = parts;
  const known = (id: string): Pick => {
    const pick = picks.get(id);
    if (pick) return pick;
    throw new Refused(404, `Expected the id of a picking, got ${shown(id)}`);
  };
  const within = ({ from, to, place }: { from?: string; to?: string; place?: string }) => {
    const dayOf = parts.calendar().dayOf;
    return picks
      .all()
      .filter((pick) => {
        const day = dayOf(pick.at);
        const inside = day >= (from ?? day) && day <= (to ?? day);
        return inside && (place === undefined || pick.place === place);
      })
      .sort((a, b) => b.at - a.at);
  };

  app.get(
    '/api/picks',
    {
      schema: {
        querystring: z.object({ ...range, state: z.enum(['kept', 'all']).default('kept') }),
        response: { 200: contract.pick.array() },
      },
    },
    ({ query: { state, ...wanted } }) =>
      within(definedOf(wanted))
        .filter((pick) => state === 'all' || pick.state === 'kept')
        .map((pick) => shownPick(parts, pick)),
  );

  app.get('/api/picks.csv', { schema: { querystring: z.object(range) } }, ({ query }, reply) => {
    reply
      .type('text/csv; charset=utf-8; header=present')
      .header('content-disposition', 'attachment; filename="pickings.csv"');
    const kept = within(definedOf(query)).filter(({ state }) => state === 'kept');
    return reply.send(pickCsv(kept.reverse()));
  });

  app.get('/api/picks/offers', { schema: { response: { 200: contract.pickOffers } } }, () =>
    pickOffers(parts),
  );

  app.get(
    '/api/picks/:id',
    { schema: { params: contract.idParam, response: { 200: contract.pickHistory } } },
    ({ params }) => pickWithPast(parts, known(params.id)),
  );

  app.post(
    '/api/picks',
    { schema: { body: contract.enterPick, response: { 200: contract.pickHistory } } },
    (request) => {
      const now = saidAt(request, parts.clock);
      const { body } = request;
      const facts: PickFacts = {
        ...{ place: body.place, kg: body.kg, at: now, lostKg: null, minutes: null },
        ...{ walkMinutes: null, pickers: 1, price: null, note: null },
        ...saidPick(body),
        crop: cropOfPick(parts, body.crop, body.place),
      };
      checkPick(parts, facts, now);
      const id = picks.nextId(facts.crop, parts.calendar().dayOf(facts.at));
      const pick = picks.add(id, facts.place, { event: 'picked', facts }, whoIs(request), now);
      parts.look();
      return pickWithPast(parts, pick);
    },
  );

  app.patch(
    '/api/picks/:id',
    {
      schema: {
        params: contract.idParam,
        body: contract.changePick,
        response: { 200: contract.pickHistory },
      },
    },
    (request) => {
      const pick = known(request.params.id);
      const now = saidAt(request, parts.clock);
      const event = eventOf(pick, request.body, now);
      const next = picks.add(pick.id, pick.place, event, whoIs(request), now);
      parts.look();
      return pickWithPast(parts, next);
    },
  );

  function eventOf(pick: Pick, change: contract.ChangePick, now: number): PickEvent {
    const { correct, undo, why } = change;
    if (undo !== undefined) {
      const undone = undoneIn(pick.entries);
      if (pick.entries.some(({ id }) => id === undo && !undone.has(id)))
        return { event: 'undone', entry: undo };
      throw new Refused(409, `Expected an entry of ${pick.id} that holds in undo, got ${undo}`);
    }
    const set = saidPick(correct ?? {});
    if (Object.keys(set).length === 0)
      throw new Refused(400, 'Expected a field to correct in correct, got none');
    checkPick(parts, { ...pick, ...set }, now);
    return { event: 'corrected', set, why: why ?? null };
  }
}

const definedOf = <Fields extends object>(fields: Fields) =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    [Key in keyof Fields]: Exclude<Fields[Key], undefined>;
  };
