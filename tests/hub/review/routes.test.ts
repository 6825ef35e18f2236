import { expect, test } from 'vitest';
import type { SeasonReview } from '../../../hub/contract/index.ts';
import { DAY, lossHub, T } from '../losses/lossHub.ts';
import { HOUR } from '../smallFarm.ts';

const MINUTE = HOUR / 60;

/** Three days in a wet tunnel with outside air that would dry it; a task is answered. */
async function reviewed() {
  const hub = await lossHub();
  hub.clock.set(T - 3 * DAY);
  const answer = (answer: 'done' | 'no') => {
    const task = hub.core.lastLook()?.open.find(({ kind }) => kind === 'see-to-probe');
    if (task) hub.core.answer(task.id, { answer, until: null, note: null }, 'Ann');
    return task;
  };
  return { ...hub, answer };
}

test('a season with nothing in it says so, and invents no zero', async () => {
  const { ask } = await lossHub();
  const { status, body } = await ask<SeasonReview>('GET', '/api/review');
  expect(status, body.error).toBe(200);
  expect(body.sentence).toBe(
    'From 1 Mar 2026 to 15 May 2026 no task was asked; what was spared is not known; no loss entered.',
  );
  expect(body.all).toMatchObject({ asked: 0, spared: null });
  expect(body.unread.find(({ place }) => place === 'long-house')).toMatchObject({
    ...{ days: 0, hours: null, share: null },
  });
  expect(body.spans.map(({ name }) => name)).toEqual([
    ...['Spring 2026', 'Winter 2025–2026', 'Autumn 2025', 'Summer 2025', 'Spring 2025'],
    'The last twelve months',
  ]);
});

test('tasks are told by what became of them, in the days they were asked', async () => {
  const { ask, air, core, clock, answer } = await reviewed();
  air('leaf', T - 3 * DAY, T - 2 * DAY, () => [20, 80]);
  clock.set(T - 2 * DAY + 6 * HOUR); // silent for hours
  core.look();
  const asked = core.lastLook()?.open.length ?? 0;
  expect(asked).toBeGreaterThan(0);
  clock.set(T - 2 * DAY + 7 * HOUR);
  core.look();
  const answered = answer('done');
  expect(answered).toBeDefined();
  clock.set(T);
  const { body } = await ask<SeasonReview>('GET', '/api/review');
  expect(body.all.asked).toBeGreaterThanOrEqual(asked);
  const probe = body.kinds.find(({ kind }) => kind === 'see-to-probe');
  expect(probe).toMatchObject({ name: 'See to a probe', no: 0 });
  expect((probe?.done ?? 0) + (probe?.late ?? 0)).toBe(1);
  expect(probe?.minutesDone).toBe(answered?.minutes);
  // Of another stretch of days nothing is told.
  const before = await ask<SeasonReview>('GET', '/api/review?from=2026-04-01&to=2026-05-10');
  expect(before.body.all.asked).toBe(0);
});

test('hours without readings are counted from the first measured day', async () => {
  const { ask, air, clock } = await reviewed();
  air('leaf', T - 2 * DAY, T - DAY, () => [20, 80]);
  clock.set(T);
  const { body } = await ask<SeasonReview>('GET', '/api/review');
  const house = body.unread.find(({ place }) => place === 'long-house');
  // Heard from noon to noon, over three days of which the last has run for twelve hours: about 36 h
  // are not known; a reading speaks for some of the time after it.
  expect(house?.days).toBe(3);
  expect(house?.hours).toBeGreaterThan(33);
  expect(house?.hours).toBeLessThanOrEqual(37);
});

test('losses are added up where their worth is known, and lots thrown out are among them', async () => {
  const { ask, enter } = await lossHub();
  await enter({ of: { amount: 20, unit: 'trays' } }); // 4 trays: 2 kg, 60
  await enter({ amount: 25, unit: 'share' }); // of unknown worth
  const { body: taken } = await enter({
    crop: 'strawberry',
    place: 'south-patch',
    amount: 3,
    unit: 'kg',
  });
  await ask('PATCH', `/api/losses/${taken.id}`, { undo: taken.entry });
  const { body: lot } = await ask<{ id: string }>('POST', '/api/lots', {
    ...{ crop: 'leaves', kg: 8, place: 'cool-room' },
  });
  await ask('PATCH', `/api/lots/${lot.id}`, { take: { how: 'thrown-out', kg: 2, by: 'Ada' } });
  const { body } = await ask<SeasonReview>('GET', '/api/review');
  // By hand: 60 for the basil, 2 kg of leaves at 16; what was taken back is not lost.
  expect(body.lost).toMatchObject({ entries: 3, money: 92, withoutMoney: 1, kg: 4, withoutKg: 1 });
  expect(body.lost.rows).toEqual([
    expect.objectContaining({ placeName: 'Cool room', looked: 'thrown out of a lot', money: 32 }),
    // A sum with an unknown in it is unknown.
    expect.objectContaining({ placeName: 'Long House', entries: 2, money: null }),
  ]);
  expect(body.sentence.replaceAll('\u00a0', ' ')).toMatch(
    /lost in 3 losses \(1 of them of unknown worth\), 92 EUR\.$/,
  );
});

test('minutes written down for pickings and batches are told apart from those of tasks', async () => {
  const { ask } = await lossHub();
  const picked = await ask('POST', '/api/picks', {
    ...{ place: 'south-patch', crop: 'strawberry', kg: 5, minutes: 40, pickers: 2 },
  });
  expect(picked.status, picked.body.error).toBe(200);
  const { body } = await ask<SeasonReview>('GET', '/api/review');
  expect(body.written.pickings).toEqual({ minutes: 80, without: 0 });
  expect(body.all.minutesDone).toBe(0);
});

test('the table has a row a figure, and nothing in place of what is not known', async () => {
  const { app, enter } = await lossHub();
  await enter({ amount: 25, unit: 'share' });
  const reply = await app.inject({ method: 'GET', url: '/api/review.csv' });
  expect(reply.headers['content-type']).toContain('text/csv');
  const lines = reply.body.split('\r\n');
  expect(lines[0]).toBe('from,to,part,what,measure,value,unit');
  expect(lines).toContain('2026-03-01,2026-05-15,tasks,all,asked,0,');
  expect(lines).toContain('2026-03-01,2026-05-15,tasks,all,spared_at_least,,EUR');
  expect(lines).toContain(
    '2026-03-01,2026-05-15,losses,"Long House: Basil, grey mould",worth,,EUR',
  );
});

test.for([
  ['?from=2026-06-01', /^Expected from at or before to \(2026-05-15\), got 2026-06-01/],
  ['?from=2020-01-01', /^Expected at most three years/],
  ['?from=yesterday', /in from, got "yesterday"/],
] as const)('%s is refused in one sentence', async ([query, sentence]) => {
  const { ask } = await lossHub();
  const { status, body } = await ask('GET', `/api/review${query}`);
  expect(status).toBe(400);
  expect(body.error).toMatch(sentence);
});

test('an alarm that nobody saw is told as that', async () => {
  const { ask, store, clock } = await lossHub();
  const since = T - 2 * HOUR;
  store.alarms.put({
    ...{ id: 'warm~x', place: 'cool-room', kind: 'warm', since, words: 'Warm.' },
    clearedAt: since + 20 * MINUTE,
  });
  clock.set(T);
  const { body } = await ask<SeasonReview>('GET', '/api/review');
  expect(body.alarms).toEqual([
    expect.objectContaining({ name: 'produce too warm', raised: 1, seen: 0, neverSeen: 1 }),
  ]);
});
