import { expect, test } from 'vitest';
import { DAY, hot, mild, NOW, trayHub } from './trayHub.ts';

const MONTH = NOW - 40 * DAY;

async function farmWithTask(options: Parameters<typeof trayHub>[0] = {}, batch = true) {
  const hub = await trayHub(options);
  hub.measure('p1', hot, MONTH);
  hub.measure('p2', mild, MONTH);
  hub.measure('mast', mild, MONTH);
  if (batch) hub.sow('basil-1');
  hub.core.look();
  const tasks = async () =>
    (await hub.get('/api/tasks')).body.filter(
      ({ kind }: { kind: string }) => kind === 'move-trays',
    );
  return { ...hub, tasks };
}

test('"done" enters the move in the batch’s journal, once, with who and when; undo takes it back', async () => {
  const hub = await farmWithTask();
  const [task] = await hub.tasks();
  expect(task).toMatchObject({ place: 'long-house', subject: 'basil-1', verdict: 'act' });
  expect(task.title).toBe('Move 20 trays of Basil from Long House to Sun House');
  expect(task.caution).toContain('mould');
  expect(task.doBy).not.toBeNull();
  const answer = `/api/tasks/${encodeURIComponent(task.id)}/answer`;
  expect((await hub.post(answer, { answer: 'done' })).status).toBe(200);
  expect((await hub.post(answer, { answer: 'done' })).status).toBe(200); // a second tap
  const moved = hub.core.batches.get('basil-1');
  expect(moved).toMatchObject({ place: 'sun-house', traysLeft: 20 });
  expect(moved?.moves).toMatchObject([{ place: 'sun-house', at: NOW, minutes: null }]);
  expect(moved?.moves[0]?.who).not.toBe('hub');
  hub.core.look();
  expect(await hub.tasks()).toEqual([]);

  const undo = `/api/tasks/${encodeURIComponent(task.id)}/undo-move`;
  expect((await hub.post(undo, {})).status).toBe(200);
  expect(hub.core.batches.get('basil-1')).toMatchObject({ place: 'long-house', moves: [] });
  // Not moved after all: it is asked again at the look that follows.
  expect((await hub.tasks()).map(({ subject }: { subject: string }) => subject)).toEqual([
    'basil-1',
  ]);
  expect(await hub.post(undo, {})).toEqual({
    status: 409,
    body: { error: 'Expected a move that stands as its task entered it, got none' },
  });
  expect((await hub.post('/api/tasks/nowhere/undo-move', {})).status).toBe(404);
});

test('minutes that the farm file tells of carrying a tray are entered; a guess is not', async () => {
  const hub = await farmWithTask({ crop: ', minutes: { move: 0.5 }' });
  const [task] = await hub.tasks();
  expect(task.minutes).toBe(10);
  await hub.post(`/api/tasks/${encodeURIComponent(task.id)}/answer`, { answer: 'done' });
  expect(hub.core.batches.get('basil-1')?.moves[0]?.minutes).toBe(10);
});

test('"not doing" and "later" move nothing', async () => {
  const hub = await farmWithTask();
  const [task] = await hub.tasks();
  const path = `/api/tasks/${encodeURIComponent(task.id)}/answer`;
  const until = new Date(NOW + DAY).toISOString();
  await hub.post(path, { answer: 'later', until });
  await hub.post(path, { answer: 'no' });
  expect(hub.core.batches.get('basil-1')?.place).toBe('long-house');
  hub.core.look();
  expect(await hub.tasks()).toEqual([]);
});

test('it stands as one task from look to look, for the same place', async () => {
  const hub = await farmWithTask();
  const [first] = await hub.tasks();
  for (let i = 1; i <= 5; i += 1) {
    hub.clock.set(NOW + i * 600_000);
    hub.core.look();
  }
  const again = await hub.tasks();
  expect(again.map(({ id }: { id: string }) => id)).toEqual([first.id]);
  expect(again[0].doBy).toBe(first.doBy);
  expect(
    hub.core.placesCompared.with(hub.parts.lastLook()?.snapshot as never).trays?.standing,
  ).toMatchObject([{ batch: 'basil-1', askedTo: 'sun-house' }]);
});

test('before anybody keeps batches it is the trays there; done is written down and not asked back', async () => {
  const hub = await farmWithTask({ trays: ', crop: basil, trays: 30' }, false);
  // Shade goes first; somebody says that there will be none.
  expect(await hub.tasks()).toEqual([]);
  const all = (await hub.get('/api/tasks')).body as { id: string; kind: string }[];
  const shade = all.find(({ kind }) => kind === 'shade')?.id ?? '';
  await hub.post(`/api/tasks/${encodeURIComponent(shade)}/answer`, { answer: 'no' });
  hub.core.look();
  const [task] = await hub.tasks();
  expect(task.title).toBe('Move the trays there, Basil, from Long House to Sun House');
  const id = encodeURIComponent(task.id);
  await hub.post(`/api/tasks/${id}/answer`, { answer: 'done' });
  hub.core.look();
  expect(await hub.tasks()).toEqual([]);
  const [stand] = (await hub.get('/api/learn/places?crop=basil')).body.standing;
  expect(stand.words).toContain('They were moved 0 days ago');
  expect((await hub.post(`/api/tasks/${id}/undo-move`, {})).status).toBe(200);
  expect(await hub.tasks()).toHaveLength(1);
});

test('what stands in the farm file is left out where batches have stood', async () => {
  const hub = await farmWithTask({ trays: ', crop: basil, trays: 30' });
  const { body } = await hub.get('/api/learn/places?crop=basil');
  expect(body.standing.map(({ batch }: { batch: string | null }) => batch)).toEqual(['basil-1']);
  expect(body.places[0].trays).toBe(20);
});

test('a full place, mould, and trays near to ready ask for nothing', async () => {
  const full = await farmWithTask({ capacity: 19 });
  expect(await full.tasks()).toEqual([]);
  const mould = await farmWithTask({}, false);
  mould.sow('basil-2');
  mould.tell('basil-2', { event: 'noted', at: NOW, look: 'mould', note: null, photo: null });
  mould.core.look();
  expect(await mould.tasks()).toEqual([]);
  const [stand] = (await mould.get('/api/learn/places?crop=basil')).body.standing;
  expect(stand.words).toContain('not carried among clean ones');
  const old = await farmWithTask({}, false);
  old.sow('basil-3', { sownAt: NOW - 27 * DAY }); // 30 days told: three are left
  old.core.look();
  expect(await old.tasks()).toEqual([]);
});

test('what an hour of harm costs is learned from twelve finished batches', async () => {
  const hub = await trayHub();
  hub.measure('p1', hot, NOW - 100 * DAY);
  hub.measure('p2', mild, NOW - 100 * DAY);
  for (let i = 0; i < 14; i += 1) {
    const place = i % 2 === 0 ? 'long-house' : 'sun-house';
    const sownAt = NOW - (90 - 3 * i) * DAY;
    const id = `basil-${i}`;
    hub.sow(id, { sownAt, place, trays: 20 });
    const lost = place === 'long-house' ? 4 + (i % 3) : 0;
    const at = sownAt + 20 * DAY;
    if (lost > 0)
      hub.tell(id, { event: 'thrown-out', trays: lost, at, look: 'scorched', note: null });
    hub.tell(id, {
      ...{ event: 'cut', at: sownAt + 25 * DAY, trays: 20 - lost, kg: 5, stage: 'later' },
      ...{ clears: true, minutes: null, price: null, lostKg: null, note: null },
    });
  }
  // Some batches at each call: months of readings lie behind one.
  let saving = '';
  for (let i = 0; i < 4; i += 1)
    saving = (await hub.get('/api/learn/places?crop=basil')).body.saving;
  expect(saving).toContain('learned from 14 finished batches of your own');
});
