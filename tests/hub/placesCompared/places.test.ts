import { expect, test } from 'vitest';
import { placesCompared } from '../../../hub/contract/index.ts';
import { HOUR } from '../smallFarm.ts';
import { DAY, damp, hot, mild, NOW, trayHub } from './trayHub.ts';

const MONTH = NOW - 40 * DAY;

/** Long House hot, Sun House mild, both measured for forty days. */
async function twoHouses(options: Parameters<typeof trayHub>[0] = {}) {
  const hub = await trayHub(options);
  hub.measure('p1', hot, MONTH);
  hub.measure('p2', mild, MONTH);
  hub.measure('mast', mild, MONTH);
  return hub;
}

test('places are told with their hours, what stands there, and where the crop does best', async () => {
  const hub = await twoHouses();
  hub.sow('basil-1');
  hub.core.look();
  const { status, body } = await hub.get('/api/learn/places?crop=basil');
  expect(status).toBe(200);
  expect(placesCompared.parse(body)).toEqual(body);
  expect(body).toMatchObject({ crop: 'basil', days: 10, from: '2026-06-10', to: '2026-06-19' });
  expect(body).toMatchObject({ best: 'sun-house', heatLimit: 32, chill: 11 });
  expect(body.sentence).toMatch(/^Basil did best in Sun House: ahead of Long House by /);
  const [long, sun, far] = body.places;
  expect(long).toMatchObject({ place: 'long-house', trays: 20, capacity: 40, free: 20 });
  expect(sun).toMatchObject({ place: 'sun-house', trays: 0, free: 40 });
  // 23 ± 4.4 °C is in the band all day; 27 ± 9 is above 28 and under 18 for hours.
  expect(sun.tally).toMatchObject({ days: 10, hot: [0, 0], cold: [0, 0], unknown: 0 });
  expect(sun.tally.inBand[0]).toBeCloseTo(24, 6);
  const of = (part: string) => long.tally[part][0];
  expect(of('inBand') + of('hot') + of('cold') + of('wetInBand')).toBeCloseTo(24, 6);
  expect(of('hot')).toBeGreaterThan(9);
  // Nobody measures there, and nobody told what it holds.
  expect(far).toMatchObject({ tally: null, free: null });
  expect(long.words).toContain(
    'How it was in the same weeks of past years is not known yet; kept of it so far: 40 days.',
  );
  expect(far.words).toContain(
    'How it was in the same weeks of past years is not known yet; kept of it so far: 0 days.',
  );
  expect(far.words[0]).toBe('Cannot say how Far House was: no day is known enough.');
  expect(body.places.map((one: { place: string }) => one.place)).not.toContain('cool-room');
  const pair = body.pairs.find(
    (one: { from: string; to: string }) => one.from === 'long-house' && one.to === 'sun-house',
  );
  expect(pair).toMatchObject({ says: 'better', days: 10, leftOut: [] });
  expect(pair.score.low).toBeGreaterThan(0);
  expect(body.standing[0]).toMatchObject({ batch: 'basil-1', verdict: 'act', to: 'sun-house' });
});

test('a crop nobody knows is refused by name, one without a band is said to have none', async () => {
  const hub = await twoHouses();
  expect(await hub.get('/api/learn/places?crop=moss')).toEqual({
    status: 404,
    body: { error: 'Expected one of basil, cress in crop, got "moss"' },
  });
  const { status, body } = await hub.get('/api/learn/places?crop=cress');
  expect(status).toBe(200);
  expect(body).toMatchObject({ places: [], best: null, crops: [{ crop: 'basil', name: 'Basil' }] });
  expect(body.sentence).toBe(
    'Places cannot be compared for Cress: the farm file tells no comfort band of it.',
  );
  expect((await hub.get('/api/learn/places?crop=basil&days=4')).status).toBe(400);
});

test('wet nights count as wet and, where the weather suited a disease, as disease hours', async () => {
  const hub = await trayHub();
  hub.measure('p1', damp, MONTH);
  hub.measure('p2', mild, MONTH);
  const { body } = await hub.get('/api/learn/places?crop=basil');
  const [long, sun] = body.places;
  expect(long.tally.wet[0]).toBeCloseTo(8, 0);
  // Eight unbroken wet hours at 19 to 21 °C: basil downy mildew can get in from four (Massachusetts).
  expect(long.tally.diseaseDays).toEqual([10, 10]);
  expect(long.tally.disease[0]).toBeCloseTo(8, 0);
  expect(sun.tally.diseaseDays).toEqual([0, 0]);
  expect(long.words.join(' ')).toContain('That is weather, not proof of disease.');
});

test('a day of which too little is known is left out and said so; a short hole widens the count', async () => {
  const hub = await trayHub();
  const day = (n: number) => Date.UTC(2026, 5, n);
  hub.measure('p2', mild, MONTH);
  hub.measure('p1', mild, MONTH, day(14) + 6 * HOUR);
  hub.measure('p1', mild, day(15), day(16) + 10 * HOUR);
  hub.measure('p1', mild, day(16) + 13.5 * HOUR);
  const { body } = await hub.get('/api/learn/places?crop=basil');
  const [long] = body.places;
  expect(long.tally.leftOut).toEqual(['2026-06-14']);
  expect(long.tally.days).toBe(9);
  expect(long.tally.unknown).toBeGreaterThan(0);
  expect(long.tally.inBand[1] - long.tally.inBand[0]).toBeCloseTo(long.tally.unknown, 6);
  expect(long.words).toContain('1 day left out, because too little of them is known.');
});

test('late readings of a day that was worked out already are taken in', async () => {
  const hub = await trayHub();
  hub.measure('p2', mild, MONTH);
  hub.measure('p1', mild, MONTH, NOW - 4 * DAY);
  const before = (await hub.get('/api/learn/places?crop=basil')).body.places[0].tally;
  expect(before.leftOut).toHaveLength(4);
  hub.measure('p1', hot, NOW - 4 * DAY + HOUR, NOW);
  const after = (await hub.get('/api/learn/places?crop=basil')).body.places[0].tally;
  expect(after.leftOut).toEqual([]);
  expect(after.hot[0]).toBeGreaterThan(0);
});

test('the same weeks of past years are told where they were measured', async () => {
  const hub = await twoHouses();
  hub.measure('p1', mild, NOW - (365 + 20) * DAY, NOW - (365 - 10) * DAY);
  const { body } = await hub.get('/api/learn/places?crop=basil');
  const [long, sun] = body.places;
  expect(long.yearsBefore).toEqual(['2025']);
  expect(long.before.inBand[0]).toBeCloseTo(24, 6);
  expect(sun).toMatchObject({ before: null, yearsBefore: [] });
});

test('what finished batches gave there is told with its range; a batch that only passed is not counted', async () => {
  const hub = await twoHouses();
  const perTray = [0.3, 0.36, 0.33];
  for (const [i, kg] of perTray.entries()) {
    const sownAt = NOW - (70 - i) * DAY;
    const id = `basil-${i}`;
    hub.sow(id, { sownAt, trays: 10, place: 'sun-house' });
    const cut = { at: sownAt + (28 + i) * DAY, trays: 9, kg: 9 * kg, stage: 'later' } as const;
    const at = sownAt + 20 * DAY;
    hub.tell(id, { event: 'thrown-out', trays: 1, at, look: 'wilted', note: null });
    hub.tell(id, {
      ...{ event: 'cut', ...cut, clears: true, minutes: null, price: null, lostKg: null },
      note: null,
    });
  }
  const { body } = await hub.get('/api/learn/places?crop=basil');
  const [long, sun] = body.places;
  expect(long.gave).toBeNull();
  expect(sun.gave).toMatchObject({ batches: 3, days: { n: 3, mean: 29 } });
  // By hand: mean 0.33, sd 0.03, t(0.975, 2) = 4.303: 0.33 ± 4.303 × 0.03 / √3 = 0.33 ± 0.0745.
  expect(sun.gave.perTray.low).toBeCloseTo(0.33 - 0.0745, 3);
  expect(sun.gave.perTray.high).toBeCloseTo(0.33 + 0.0745, 3);
  expect(sun.gave.lost.mean).toBeCloseTo(0.1, 6);
  expect(body.saving).toContain('until twelve finished batches of your own tell it');
});
