import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Batch, makeBatches } from '../../../hub/batches/index.ts';
import { batchesCsv, enterPlan, planFile } from '../../../hub/batchFile/index.ts';
import { tempStore } from '../tempStore.ts';
import { DAY, iso, T, trayHub } from './trayFarm.ts';

const word = fc
  .string({ unit: 'binary', minLength: 1, maxLength: 12 })
  .map((text) => text.trim())
  .filter((text) => text !== '');
const odd = fc.oneof(
  word,
  fc.constantFrom("'=1", "''@x", '-5', 'a,"b"\r\nc;d', '+\t', '2026-04-01', '1,5', '\\"'),
);
const at = fc.integer({ min: 0, max: 20 * DAY }).map((ms) => iso(T - ms));
const trays = fc.option(fc.integer({ min: 1, max: 9 }), { nil: undefined });
const minutes = fc.option(fc.integer({ min: 1, max: 90 }), { nil: undefined });
const place = fc.constantFrom('long-house', 'sun-house', 'outside');
const look = fc.constantFrom('mould', 'ready', 'leggy', 'other');
const kg = fc.integer({ min: 1, max: 5000 }).map((grams) => grams / 1000);
const override = { by: 'Ada' };

/** A command, for the batch of that turn; it may be refused. */
const command = fc.tuple(
  fc.nat(5),
  fc.oneof(
    fc.record({ move: fc.record({ place, trays, at, minutes }) }),
    fc.record({
      cut: fc.record({
        ...{ kg, trays, at, minutes, note: odd },
        ...{ stage: fc.constantFrom('young', 'later'), clears: fc.boolean() },
        ...{ price: fc.option(kg), lostKg: fc.constantFrom(null, 0, 0.001) },
      }),
    }),
    fc.record({ throwOut: fc.record({ trays, look, at, note: odd }) }),
    fc.record({ note: fc.record({ look, note: odd, at }) }),
    fc.record({
      work: fc.record({ work: fc.constantFrom('tending', 'packing'), minutes: kg, at }),
    }),
    fc.record({ correct: fc.record({ trays: fc.integer({ min: 1, max: 20 }), variety: odd }) }),
    fc.record({ correct: fc.record({ sownAt: at, seedCost: kg }) }),
    fc.record({ clear: fc.record({ at, note: odd }) }),
    fc.record({ undo: fc.integer({ min: 1, max: 20 }) }),
  ),
);

/** A batch without what only tells how it was entered. */
const told = ({ entries: _, ...batch }: Batch) =>
  JSON.parse(
    JSON.stringify(batch, (key, value) => {
      if (key === 'entry' || key === 'who' || key === 'override') return undefined;
      return typeof value === 'number' ? Number(value.toFixed(4)) : value;
    }),
  );
const order = (batches: Batch[]) =>
  batches
    .filter(({ state }) => state !== 'withdrawn')
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .map(told);

test('all batches out as a file and into an empty store are the same batches', {
  timeout: 180_000,
}, async () => {
  const hub = await trayHub();
  let done = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(command, { maxLength: 12 }), async (commands) => {
      const made: string[] = [];
      for (const crop of ['basil', 'chives'])
        made.push((await hub.sow({ crop, sownAt: iso(T - 21 * DAY), seedCost: 3, override })).id);
      for (const [turn, change] of commands) {
        const id = made[turn % made.length] ?? '';
        const { status, body } = await hub.change(id, { ...change, override });
        if (status !== 200) continue;
        done++;
        if (body.made !== null) made.push(body.made);
      }
      const before = hub.core.batches.all();
      const empty = makeBatches(tempStore().store);
      const about = { farm: hub.core.farm(), calendar: hub.core.calendar(), now: T };
      const csv = batchesCsv(before);
      const plan = planFile(csv, { ...about, batches: empty });
      expect(plan.refused).toEqual([]);
      enterPlan(plan, empty, 'file', T);
      expect(order(empty.all())).toEqual(order(before));
      // Once more, into either of them: nothing new.
      for (const batches of [empty, hub.core.batches]) {
        const again = planFile(csv, { ...about, batches });
        expect([again.batches, again.refused]).toEqual([[], []]);
      }
    }),
    { numRuns: 12 },
  );
  expect(done).toBeGreaterThan(12);
});
