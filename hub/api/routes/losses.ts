import * as contract from '../../contract/index.ts';
import {
  addDays,
  type Loss,
  type LossEvent,
  type LossFacts,
  weekOf,
  weekToSay,
} from '../../losses/index.ts';
import { csv } from '../../record/index.ts';
import { lossColumns, shown as quoted } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { expectPhoto } from '../expectPhoto.ts';
import { checkLoss, expectNew, lossEvent } from '../lossFacts.ts';
import { growingPlaces, lossOffers } from '../lossOffers.ts';
import { lossStrips } from '../lossStrips.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { saidAt } from '../saidAt.ts';
import { shownLearning } from '../shownLearning.ts';
import { lossWithHistory, shownLosses } from '../shownLoss.ts';

/** Without a range the last year is told. */
const YEAR = 365; // days

/** The log of losses. Each command is an entry of the journal; none is ever changed. */
export function lossRoutes(app: App, parts: ApiParts) {
  const { losses, photos } = parts;
  photos?.usedBy(() => losses.photos());

  const known = (id: string): Loss => {
    const loss = losses.get(id);
    if (loss) return loss;
    throw new Refused(404, `Expected the id of a loss that was entered, got ${quoted(id)}`);
  };
  const rangeOf = (said: { from?: string | undefined; to?: string | undefined }) => {
    const to = said.to ?? parts.calendar().dayOf(parts.clock.now());
    const from = said.from ?? addDays(to, -YEAR);
    if (from > to) throw new Refused(400, `Expected from at or before to (${to}), got ${from}`);
    if (addDays(from, 3 * YEAR) < to)
      throw new Refused(400, `Expected at most three years from from to to, got ${from} to ${to}`);
    return { from, to };
  };

  app.get(
    '/api/losses',
    { schema: { querystring: contract.lossRange, response: { 200: contract.loss.array() } } },
    ({ query }) => shownLosses(parts, { ...rangeOf(query), place: query.place }),
  );

  app.get('/api/losses/offers', { schema: { response: { 200: contract.lossOffers } } }, () =>
    lossOffers(parts),
  );

  app.get(
    '/api/losses/strips',
    { schema: { querystring: contract.stripsRange, response: { 200: contract.lossStrips } } },
    ({ query }) => lossStrips(parts, query.weeks),
  );

  app.get(
    '/api/losses.csv',
    { schema: { querystring: contract.lossRange } },
    ({ query }, reply) => {
      const range = rangeOf(query);
      reply.type('text/csv; charset=utf-8');
      reply.header(
        'content-disposition',
        `attachment; filename="losses-${range.from}-${range.to}.csv"`,
      );
      return csv(
        Object.values(lossColumns),
        shownLosses(parts, { ...range, place: query.place }).map((one) => [
          ...[one.day, one.placeName, one.name, one.amount, one.unit],
          ...[one.of?.amount ?? null, one.of?.unit ?? null, one.share, one.kg, one.money],
          ...[one.look, one.batch, one.lot, one.state, one.by, one.enteredAt, one.note, one.photo],
        ]),
      );
    },
  );

  app.get(
    '/api/losses/:id',
    { schema: { params: contract.idParam, response: { 200: contract.lossHistory } } },
    ({ params }) => lossWithHistory(parts, known(params.id)),
  );

  app.post(
    '/api/losses',
    { schema: { body: contract.enterLoss, response: { 200: contract.lossHistory } } },
    (request) => {
      const now = saidAt(request, parts.clock);
      const { photo = null, another = false, ...said } = request.body;
      const facts: LossFacts = {
        ...{ place: said.place, crop: said.crop, amount: said.amount, unit: said.unit },
        ...{ of: said.of ?? null, look: said.look },
        day: said.day ?? parts.calendar().dayOf(now),
        ...{ batch: said.batch ?? null, note: said.note || null },
      };
      checkLoss(parts, facts, now);
      if (photo !== null) expectPhoto(parts, photo);
      if (!another) expectNew(parts, facts);
      const event: LossEvent = { event: 'entered', facts, photo, another };
      const id = losses.nextId(facts.crop, facts.day);
      const loss = losses.add(id, facts.place, event, whoIs(request), now);
      if (photo !== null) photos?.adopt(photo);
      return lossWithHistory(parts, loss);
    },
  );

  app.patch(
    '/api/losses/:id',
    {
      schema: {
        params: contract.idParam,
        body: contract.changeLoss,
        response: { 200: contract.lossHistory },
      },
    },
    (request) => {
      const before = known(request.params.id);
      const now = saidAt(request, parts.clock);
      const event = lossEvent(parts, before, request.body, now);
      const loss = losses.add(before.id, before.place, event, whoIs(request), now);
      if (loss.photo !== null) photos?.adopt(loss.photo);
      if (before.photo !== null && before.photo !== loss.photo) photos?.letGo(before.photo);
      return lossWithHistory(parts, loss);
    },
  );

  app.post(
    '/api/losses/quiet-weeks',
    { schema: { body: contract.sayQuiet, response: { 200: contract.lossOffers } } },
    (request) => {
      const { week, place, holds } = request.body;
      const now = saidAt(request, parts.clock);
      if (weekOf(week) !== week)
        throw new Refused(400, `Expected a Monday (${weekOf(week)}) in week, got ${week}`);
      const newest = weekToSay(parts.calendar(), now);
      if (week > newest)
        throw new Refused(
          400,
          `Expected a week that is over or nearly (${newest} or before) in week, got ${week}`,
        );
      const growing = growingPlaces(parts).map(({ id }) => id);
      if (place !== undefined && !growing.includes(place))
        throw new Refused(
          400,
          `Expected a tunnel or patch (${growing.join(', ')}) in place, got ${quoted(place)}`,
        );
      const lossesOf = (id: string) =>
        losses.counted().filter((one) => one.place === id && weekOf(one.day) === week).length;
      if (place !== undefined && holds && lossesOf(place) > 0)
        throw new Refused(
          409,
          `Expected a week without a loss in ${place}, got ${lossesOf(place)}`,
        );
      for (const id of place === undefined ? growing : [place])
        if (losses.quiet.holds(id, week) !== holds && !(holds && lossesOf(id) > 0))
          losses.quiet.say(id, { week, holds }, whoIs(request), now);
      return lossOffers(parts);
    },
  );

  app.get(
    '/api/learn/losses',
    { schema: { querystring: contract.learningRange, response: { 200: contract.lossLearning } } },
    ({ query }) => {
      const range = rangeOf(query);
      // Weeks before the log was begun say nothing: they are not shown unless asked for.
      const begun = query.from === undefined ? losses.begun(range) : null;
      return shownLearning(parts, { ...range, from: begun ?? range.from });
    },
  );
}
