import { z } from 'zod';
import type { Batch, BatchEvent, BatchFacts } from '../../batches/index.ts';
import * as contract from '../../contract/index.ts';
import { shown as quoted } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { batchChange, type ToAdd } from '../batchChange.ts';
import { checkBatch, roomFault, saidOfBatch } from '../batchFacts.ts';
import { batchOffers } from '../batchOffers.ts';
import { heeded } from '../lotFacts.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { saidAt } from '../saidAt.ts';
import { shownBatch, wholeBatch } from '../shownBatch.ts';

const DAY = 86_400_000; // ms

/** Batches of trays. Each command is an entry of the journal, or two at once; none is ever changed. */
export function batchRoutes(app: App, parts: ApiParts) {
  const { batches, photos } = parts;
  // Those of notes that were taken back as well: taking back can be taken back.
  photos?.usedBy(() =>
    batches
      .all()
      .flatMap(({ entries }) => entries)
      .flatMap(({ body }) => (body.event === 'noted' && body.photo !== null ? [body.photo] : [])),
  );
  const known = (id: string): Batch => {
    const batch = batches.get(id);
    if (batch) return batch;
    throw new Refused(404, `Expected the id of a batch, got ${quoted(id)}`);
  };
  const enter = (adds: readonly ToAdd[], who: string, now: number) => {
    batches.addAll(adds, who, now);
    parts.look();
  };
  const sowing = (
    facts: BatchFacts,
    { override, minutes }: Pick<contract.SowBatch, 'override' | 'minutes'>,
    id: string,
  ): ToAdd[] => {
    const heed = heeded(roomFault(parts, facts.place, facts.trays), override);
    const event: BatchEvent = {
      ...{ event: 'sown', facts, partOf: null },
      ...(heed ? { override: heed } : {}),
    };
    const { place, sownAt: at } = facts;
    const work: BatchEvent[] =
      minutes === undefined || minutes === 0
        ? []
        : [{ event: 'worked', at, work: 'sowing', minutes }];
    return [event, ...work].map((one) => ({ id, place, event: one }));
  };

  app.get(
    '/api/batches',
    {
      schema: {
        querystring: z.object({
          state: z.enum(['growing', 'ended', 'all']).default('growing'),
          place: z.string().optional(),
          crop: z.string().optional(),
          /** Of those that ended: not longer ago than so many days. */
          days: z.coerce.number().int().min(1).max(10_000).optional(),
        }),
        response: { 200: contract.batch.array() },
      },
    },
    ({ query: { state, place, crop, days } }) => {
      const now = parts.clock.now();
      const since = days === undefined ? Number.NEGATIVE_INFINITY : now - days * DAY;
      return batches
        .all()
        .filter((batch) => {
          if (batch.state === 'withdrawn') return false;
          if (state !== 'all' && batch.state !== state) return false;
          if (place !== undefined && batch.place !== place) return false;
          return (crop === undefined || batch.crop === crop) && (batch.endedAt ?? now) >= since;
        })
        .sort((a, b) =>
          state === 'ended' ? (b.endedAt ?? 0) - (a.endedAt ?? 0) : a.sownAt - b.sownAt,
        )
        .map((batch) => shownBatch(parts, batch, now));
    },
  );

  app.get('/api/batches/offers', { schema: { response: { 200: contract.batchOffers } } }, () =>
    batchOffers(parts, parts.clock.now()),
  );

  app.get(
    '/api/batches/:id',
    { schema: { params: contract.idParam, response: { 200: contract.batchHistory } } },
    ({ params }) => wholeBatch(parts, known(params.id), null, parts.clock.now()),
  );

  app.post(
    '/api/batches',
    { schema: { body: contract.sowBatch, response: { 200: contract.batchHistory } } },
    (request) => {
      const now = saidAt(request, parts.clock);
      const { override, minutes, ...said } = request.body;
      const facts: BatchFacts = {
        ...{ variety: null, sownAt: now, seedCost: null, otherCost: null, meantFor: null },
        ...{ crop: said.crop, trays: said.trays, place: said.place },
        ...saidOfBatch(said),
      };
      checkBatch(parts, facts, '', now);
      const id = batches.nextId(facts.crop, parts.calendar().dayOf(facts.sownAt));
      enter(sowing(facts, { override, minutes }, id), whoIs(request), now);
      return wholeBatch(parts, known(id), null, now);
    },
  );

  app.post(
    '/api/batches/repeat',
    { schema: { body: contract.repeatBatches, response: { 200: contract.batchHistory.array() } } },
    (request) => {
      const now = saidAt(request, parts.clock);
      const { batches: ids, sownAt: said, override } = request.body;
      const sownAt = said === undefined ? now : Date.parse(said);
      const calendar = parts.calendar();
      const made: string[] = [];
      // All or none: a place that is too full for one of them is told before any is sown.
      const facts = ids.map((id) => {
        const { crop, variety, trays, firstPlace: place, ...last } = known(id);
        const weeks = Math.round((sownAt - last.sownAt) / (7 * DAY));
        const meantFor = last.meantFor === null ? null : calendar.add(last.meantFor, 7 * weeks);
        const { seedCost, otherCost } = last.parted.length > 0 ? NOTHING : last;
        return { crop, variety, trays, place, sownAt, seedCost, otherCost, meantFor };
      });
      for (const one of facts) checkBatch(parts, one, '', now);
      const coming = new Map<string, number>();
      for (const { place, trays } of facts) coming.set(place, (coming.get(place) ?? 0) + trays);
      for (const [place, trays] of coming) heeded(roomFault(parts, place, trays), override);
      for (const one of facts) {
        const id = batches.nextId(one.crop, calendar.dayOf(sownAt));
        batches.addAll(sowing(one, { override }, id), whoIs(request), now);
        made.push(id);
      }
      parts.look();
      return made.map((id) => wholeBatch(parts, known(id), null, now));
    },
  );

  app.patch(
    '/api/batches/:id',
    {
      schema: {
        params: contract.idParam,
        body: contract.changeBatch,
        response: { 200: contract.batchHistory },
      },
    },
    (request) => {
      const now = saidAt(request, parts.clock);
      const batch = known(request.params.id);
      const { adds, made } = batchChange(parts, batch, request.body, now);
      enter(adds, whoIs(request), now);
      const photo = request.body.note?.photo;
      if (photo !== undefined) photos?.adopt(photo);
      return wholeBatch(parts, known(batch.id), made, now);
    },
  );
}

/** Costs of a batch whose trays were carried off are no more those of a whole sowing. */
const NOTHING = { seedCost: null, otherCost: null };
