import { expect, onTestFinished, test } from 'vitest';
import { buildServer } from '../../../hub/api/index.ts';
import { cutOf, DAY, growingHub, growingText, noted } from './growingFarm.ts';

const MAY = Date.UTC(2026, 4, 1);
const NOW = Date.UTC(2026, 4, 20, 6);

async function served(crop?: string) {
  const hub = growingHub({ now: NOW, ...(crop ? { farm: growingText(crop) } : {}) });
  hub.measure('p1', MAY - 100 * DAY, NOW, () => 20);
  hub.measure('p2', MAY - 100 * DAY, NOW, () => 15);
  const app = await buildServer(hub.parts, {
    ...{ cookieSecret: 'only-for-tests-only-for-tests-only', pages: null, version: '0.0.0' },
    onFault: (error) => {
      throw error;
    },
  });
  onTestFinished(() => app.close());
  const get = async (url: string) => {
    const answer = await app.inject({ method: 'GET', url });
    return { status: answer.statusCode, body: answer.json() };
  };
  return { ...hub, get };
}

test('before any batch was ready the told days speak, wide, and without them nobody can say', async () => {
  const told = await served('base: 10, days: 30');
  told.sow('basil-a', { sownAt: NOW - 10 * DAY });
  const { body } = await told.get('/api/batches/basil-a/ready');
  expect(body.later).toMatchObject({ method: 'told days', learnedFrom: 0, missing: [] });
  expect(body.later.expected).toBe('2026-06-09');
  expect(body.later.early < '2026-06-05' && body.later.late > '2026-06-13').toBe(true);
  const untold = await served();
  untold.sow('basil-a', { sownAt: NOW - 10 * DAY });
  const none = (await untold.get('/api/batches/basil-a/ready')).body;
  expect(none.later).toMatchObject({ expected: null, method: 'unknown', missing: ['no past'] });
  expect(none.later.words).toMatch(/^Cannot say/);
});

test('past batches narrow it, and what was cut late does not teach once three were noted', async () => {
  const hub = await served();
  for (const [i, extra] of [0, 1, -1, 0, 1].entries()) {
    const sownAt = MAY - (80 - 3 * i) * DAY;
    hub.sow(`basil-${i}`, { sownAt });
    hub.tell(`basil-${i}`, noted(sownAt + (25 + extra) * DAY));
    hub.tell(`basil-${i}`, cutOf(sownAt + 40 * DAY, 10, 3));
  }
  hub.sow('basil-late', { sownAt: MAY - 60 * DAY });
  hub.tell('basil-late', cutOf(MAY - 10 * DAY, 10, 3)); // 50 days: long after it was ready
  hub.sow('basil-new', { sownAt: NOW - 10 * DAY });
  const { body } = await hub.get('/api/batches/ready');
  expect(body).toHaveLength(1);
  expect(body[0].later).toMatchObject({ learnedFrom: 5, counted: 'noted', method: 'own batches' });
  expect(body[0].later.soFar).toBeCloseTo(100, 0);
  expect(body[0].later.need.mean).toBeGreaterThan(240);
  expect(body[0].later.need.mean).toBeLessThan(262);
  expect(['2026-06-03', '2026-06-04', '2026-06-05']).toContain(body[0].later.expected);
  const crop = (await hub.get('/api/crops/basil/growing')).body;
  expect(crop.past).toHaveLength(6);
  expect(crop.stages).toMatchObject([{ stage: 'later', batches: 6, grams: { value: 300 } }]);
  expect((await hub.get('/api/crops/nothing/growing')).status).toBe(404);
  expect((await hub.get('/api/batches/nothing/ready')).status).toBe(404);
});

test('trays that were carried to a cooler house are ready later than those that stayed', async () => {
  const hub = await served();
  for (const i of [0, 1, 2, 3]) {
    hub.sow(`basil-${i}`, { sownAt: MAY - (80 - i) * DAY });
    hub.tell(`basil-${i}`, noted(MAY - (55 - i) * DAY));
  }
  const sownAt = NOW - 12 * DAY;
  hub.sow('basil-whole', { sownAt });
  hub.tell('basil-whole', { event: 'parted', into: 'basil-part', trays: 4, at: NOW - 6 * DAY });
  hub.tell('basil-part', {
    event: 'sown',
    facts: {
      ...{ crop: 'basil', variety: null, trays: 4, sownAt, place: 'long-house' },
      ...{ seedCost: null, otherCost: null, meantFor: null },
    },
    partOf: {
      batch: 'basil-whole',
      stays: [
        { place: 'long-house', from: sownAt },
        { place: 'sun-house', from: NOW - 6 * DAY },
      ],
    },
  });
  const of = async (id: string) => (await hub.get(`/api/batches/${id}/ready`)).body;
  const [whole, part] = [await of('basil-whole'), await of('basil-part')];
  expect(whole.later.soFar).toBeCloseTo(120, 0);
  expect(part.later.soFar).toBeCloseTo(90, 0);
  expect(part.later.expected > whole.later.expected).toBe(true);
  expect(part.lived.at(-1).degreeDays).toBeCloseTo(90, 0);
});
