import { z } from 'zod';
import * as contract from '../../contract/index.ts';
import { undoneIn } from '../../journal/index.ts';
import type { Lot, LotEvent, LotFacts } from '../../lots/index.ts';
import { shown as quoted } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { checkFacts, coolRoomOf, heeded, saidFacts, warningOf } from '../lotFacts.ts';
import { lotOffers } from '../lotOffers.ts';
import { withParts } from '../lotParts.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { iso } from '../present.ts';
import { saidAt } from '../saidAt.ts';
import { lotEntries, shownLots } from '../shownLot.ts';
import { takenEvent } from '../takenEvent.ts';

/** Lots that are gone are shown for so long; older ones stay in the journal. Ours. */
const ENDED_FOR = 60 * 86_400_000; // ms

/** What lies in the cool rooms. Each command is an entry of the journal; none is ever changed. */
export function lotRoutes(app: App, parts: ApiParts) {
  const { lots } = parts.snapshots;
  const known = (id: string): Lot => {
    const lot = lots.get(id);
    if (lot) return lot;
    throw new Refused(404, `Expected the id of a lot, got ${quoted(id)}`);
  };
  const shown = (lot: Lot, now: number) => {
    const room = lots.inStore().filter(({ place }) => place === lot.place);
    const all = room.some(({ id }) => id === lot.id) ? room : [...room, lot];
    const found = shownLots(parts, all, now).find(({ id }) => id === lot.id);
    if (!found) throw new Error(`Expected to show ${lot.id}, got nothing`);
    return found;
  };
  const whole = (lot: Lot, now: number) => ({
    ...shown(lot, now),
    history: lotEntries(parts, lot, undoneIn(lot.entries)),
  });

  app.get(
    '/api/lots',
    {
      schema: {
        querystring: z.object({
          state: z.enum(['stored', 'ended', 'all']).default('stored'),
          place: z.string().optional(),
        }),
        response: { 200: contract.lot.array() },
      },
    },
    ({ query: { state, place } }) => {
      const now = parts.clock.now();
      const wanted = lots.all().filter((lot) => {
        if (place !== undefined && lot.place !== place) return false;
        if (lot.state === 'stored') return state !== 'ended';
        return lot.state === 'ended' && state !== 'stored' && now - (lot.endedAt ?? 0) < ENDED_FOR;
      });
      return shownLots(parts, wanted, now);
    },
  );

  app.get(
    '/api/lots/offers',
    {
      schema: {
        querystring: z.object({ place: z.string() }),
        response: { 200: contract.lotOffers },
      },
    },
    ({ query }) => lotOffers(parts, coolRoomOf(parts, query.place, 'place').id),
  );

  app.get(
    '/api/lots/:id',
    { schema: { params: contract.idParam, response: { 200: contract.lotHistory } } },
    ({ params }) => whole(known(params.id), parts.clock.now()),
  );

  app.post(
    '/api/lots',
    { schema: { body: contract.putAway, response: { 200: contract.lotHistory } } },
    (request) => {
      const now = saidAt(request, parts.clock);
      const { override: by, ...said } = request.body;
      const facts: LotFacts = {
        from: null,
        harvestedAt: null,
        storedAt: now,
        cooled: null,
        class: null,
        price: null,
        crop: said.crop,
        kg: said.kg,
        place: said.place,
        ...saidFacts(said),
      };
      checkFacts(parts, facts, now);
      const override = heeded(warningOf(parts, facts.crop, facts.place, now), by);
      const id = lots.nextId(facts.crop, parts.calendar().dayOf(facts.storedAt));
      const event: LotEvent = { event: 'put-away', facts, override };
      const lot = lots.add(id, facts.place, event, whoIs(request), now);
      parts.look();
      return whole(lot, now);
    },
  );

  app.patch(
    '/api/lots/:id',
    {
      schema: {
        params: contract.idParam,
        body: contract.changeLot,
        response: { 200: contract.lotHistory },
      },
    },
    (request) => {
      const lot = known(request.params.id);
      const now = saidAt(request, parts.clock);
      const event = eventOf(lot, request.body, request.session?.name ?? null, now);
      lots.addAll(withParts(parts, lot, event), whoIs(request), now);
      parts.look();
      return whole(known(lot.id), now);
    },
  );

  function eventOf(
    lot: Lot,
    { correct, take, release, undo, override, note }: contract.ChangeLot,
    person: string | null,
    now: number,
  ): LotEvent {
    if (undo !== undefined) {
      const undone = undoneIn(lot.entries);
      if (lot.entries.some(({ id }) => id === undo && !undone.has(id)))
        return { event: 'undone', entry: undo };
      throw new Refused(409, `Expected an entry of ${lot.id} that holds in undo, got ${undo}`);
    }
    if (correct) return corrected(lot, correct, override, note ?? null, now);
    if (lot.state !== 'stored')
      throw new Refused(409, `Expected a lot that is stored, got one that is gone (${lot.id})`);
    if (take) return takenEvent(parts, lot, { ...take, note: note ?? null }, person, override, now);
    const by = release?.by ?? person;
    if (by === null)
      throw new Refused(400, 'Expected the name of who decides in release.by, got nothing');
    return { event: 'released', by, at: now, note: note ?? null };
  }

  function corrected(
    lot: Lot,
    correct: NonNullable<contract.ChangeLot['correct']>,
    override: contract.ChangeLot['override'],
    note: string | null,
    now: number,
  ): LotEvent {
    const set = saidFacts(correct);
    if (Object.keys(set).length === 0)
      throw new Refused(400, 'Expected a field to correct in correct, got none');
    const next = { ...lot, ...set, place: set.place ?? lot.stays[0]?.place ?? lot.place };
    checkFacts(parts, next, now);
    const gone = lot.taken.reduce((sum, { kg }) => sum + kg, 0);
    if (next.kg < gone)
      throw new Refused(
        400,
        `Expected at least ${gone} kg in correct.kg, because so much was taken, got ${next.kg}`,
      );
    const first = Math.min(
      ...lot.taken.map(({ at }) => at),
      ...lot.stays.slice(1).map((s) => s.from),
    );
    if (next.storedAt > first)
      throw new Refused(
        400,
        `Expected storedAt at or before ${iso(first)}, when it was taken from, got ${iso(next.storedAt)}`,
      );
    if (set.crop !== undefined || set.place !== undefined)
      heeded(warningOf(parts, next.crop, next.place, now), override);
    const kept = override && `${note ?? ''} (${override.by})`.trim();
    return { event: 'corrected', set, note: kept ?? note };
  }
}
