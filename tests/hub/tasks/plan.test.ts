import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Store } from '../../../hub/store/index.ts';
import { makeTasks, planTasks } from '../../../hub/tasks/index.ts';
import type { Decision } from '../../../rules/decide/index.ts';
import { instant, minutes } from '../../../rules/units.ts';
import { tempStore } from '../tempStore.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const T = Date.UTC(2026, 4, 10, 9);

type Kind = Decision['kind'];
const about = (kind: Kind, place = 'a', subject: string | null = null) => ({
  kind,
  place,
  subject,
});
const act = (kind: Kind, more: { doBy?: number | null; subject?: string; alarm?: boolean } = {}) =>
  ({
    ...about(kind, 'a', more.subject ?? null),
    verdict: 'act',
    because: [],
    from: null,
    doBy: more.doBy == null ? null : instant(more.doBy),
    minutes: minutes(5),
    saves: { amount: null, money: null },
    alarm: more.alarm ? 'frost' : null,
  }) satisfies Decision;
const leave = (kind: Kind): Decision => ({ ...about(kind), verdict: 'leave', because: [] });
const unknown = (kind: Kind): Decision => ({
  ...about(kind),
  verdict: 'unknown',
  because: [],
  missing: ['air probe'],
});

/** Plans and carries out, as each look does. */
function looking(store: Store = tempStore().store) {
  const tasks = makeTasks(store);
  const plan = (at: number, ...decisions: Decision[]) =>
    planTasks(tasks.open(), decisions, tasks.memory(), at);
  const look = (at: number, ...decisions: Decision[]) => {
    const made = plan(at, ...decisions);
    store.transaction(() => tasks.apply(made, at));
    return made.steps.map(({ event }) => event);
  };
  const answer = (at: number, word: 'done' | 'later' | 'no', until: number | null = null) => {
    const [task] = tasks.open();
    if (!task) throw new Error('Expected an open task, got none');
    return tasks.answer(task, { answer: word, until, note: null }, 'Ann', at);
  };
  return { tasks, store, plan, look, answer };
}

test('a task is opened once and stays while its reason stays', () => {
  const { look, tasks } = looking();
  expect(look(T, act('cover'))).toEqual(['opened']);
  expect(look(T + 5 * MINUTE, act('cover'))).toEqual([]);
  expect(tasks.open()).toMatchObject([{ kind: 'cover', openedAt: T, state: 'open' }]);
});

test('a rule that cannot tell neither opens nor closes', () => {
  const { look, tasks, plan } = looking();
  expect(look(T, unknown('cover'))).toEqual([]);
  look(T, act('cover'));
  expect(look(T + 12 * HOUR, unknown('cover'))).toEqual([]);
  expect(tasks.open()).toHaveLength(1);
  expect(plan(T + 12 * HOUR, unknown('cover')).fresh).toMatchObject([
    { verdict: 'unknown', missing: ['air probe'] },
  ]);
});

test('a task lapses only after its reason has been gone for its patience', () => {
  const { look } = looking();
  look(T, act('open-up'));
  expect(look(T + 5 * MINUTE, leave('open-up'))).toEqual([]);
  expect(look(T + 34 * MINUTE, leave('open-up'))).toEqual([]);
  expect(look(T + 35 * MINUTE, leave('open-up'))).toEqual(['lapsed']);
});

test('a reason that comes back in between starts the waiting anew', () => {
  const { look } = looking();
  look(T, act('open-up'));
  look(T + 5 * MINUTE, leave('open-up'));
  look(T + 30 * MINUTE, act('open-up'));
  expect(look(T + 40 * MINUTE, leave('open-up'))).toEqual([]);
  expect(look(T + 69 * MINUTE, leave('open-up'))).toEqual([]);
  expect(look(T + 70 * MINUTE, leave('open-up'))).toEqual(['lapsed']);
});

test('a task nobody decides about any more lapses at once', () => {
  const { look } = looking();
  look(T, act('open-up'));
  expect(look(T + 5 * MINUTE)).toEqual(['lapsed']);
});

test.for([
  ['open-up', 'done', 2 * HOUR],
  ['open-up', 'no', 12 * HOUR],
  ['shut-door', 'done', 15 * MINUTE],
  ['see-to-probe', 'no', 72 * HOUR],
] as const)('%s answered %s is not asked again for its patience', ([kind, word, patience]) => {
  const { look, answer } = looking();
  look(T, act(kind));
  answer(T + MINUTE, word);
  expect(look(T + 5 * MINUTE, act(kind))).toEqual([]);
  expect(look(T + MINUTE + patience - 1, act(kind))).toEqual([]);
  expect(look(T + MINUTE + patience, act(kind))).toEqual(['opened']);
});

test('after an answer, a reason that went for its patience and came back is asked again', () => {
  const { look, answer } = looking();
  look(T, act('cover'));
  answer(T, 'no');
  look(T + 5 * MINUTE, leave('cover'));
  look(T + 36 * MINUTE, leave('cover'));
  expect(look(T + 41 * MINUTE, act('cover'))).toEqual(['opened']);
});

test('after an answer, a reason that only flickers is not asked again', () => {
  const { look, answer } = looking();
  look(T, act('cover'));
  answer(T, 'no');
  look(T + 5 * MINUTE, leave('cover'));
  expect(look(T + 10 * MINUTE, act('cover'))).toEqual([]);
});

test('a task put off comes back when its time has come', () => {
  const { look, answer, tasks } = looking();
  look(T, act('cover'));
  answer(T, 'later', T + HOUR);
  expect(look(T + 59 * MINUTE, act('cover'))).toEqual([]);
  expect(tasks.open()[0]).toMatchObject({ until: T + HOUR, answer: 'later' });
  expect(look(T + HOUR, act('cover'))).toEqual(['changed']);
  expect(tasks.open()[0]).toMatchObject({ until: null, answer: null });
});

test('a task put off comes back even when its rule cannot tell by then', () => {
  const { look, answer, plan } = looking();
  look(T, act('cover', { alarm: true }));
  answer(T, 'later', T + HOUR);
  const { steps, fresh } = plan(T + 2 * HOUR, unknown('cover'));
  const [task] = [...fresh, ...steps.map((step) => step.task)];
  expect(task).toMatchObject({ state: 'open', until: null });
});

test('a task that was put off and then lapsed has no answer: it was no longer needed', () => {
  const { look, answer, tasks } = looking();
  look(T, act('cover'));
  answer(T, 'later', T + 4 * HOUR);
  look(T + 5 * MINUTE, leave('cover'));
  look(T + HOUR, leave('cover'));
  expect(tasks.endedSince(T)).toMatchObject([{ state: 'ended', answer: null, until: null }]);
});

test('a deadline is told when it moves by a quarter of an hour and a third of the time left', () => {
  const { look } = looking();
  look(T, act('cover', { doBy: T + 4 * HOUR }));
  expect(look(T + 1, act('cover', { doBy: T + 5 * HOUR }))).toEqual([]);
  expect(look(T + 2, act('cover', { doBy: T + 2 * HOUR }))).toEqual(['changed']);
  expect(look(T + 3, act('cover', { doBy: T + 20 * MINUTE }))).toEqual(['changed']);
  expect(look(T + 4, act('cover', { doBy: T + 34 * MINUTE }))).toEqual([]);
  expect(look(T + 5, act('cover', { doBy: T + 35 * MINUTE }))).toEqual(['changed']);
  expect(look(T + 6, act('cover', { doBy: null }))).toEqual(['changed']);
});

test('an alarm once raised stays with its task', () => {
  const { look, plan } = looking();
  look(T, act('cover', { alarm: true }));
  expect(plan(T + 1, act('cover')).fresh[0]?.alarm).toBe('frost');
});

test('tasks of two subjects opened at one moment have ids of their own', () => {
  const { look, tasks } = looking();
  look(T, act('see-to-probe', { subject: 'a.b' }), act('see-to-probe', { subject: 'a:b' }));
  expect(
    tasks
      .open()
      .map(({ subject }) => subject)
      .sort(),
  ).toEqual(['a.b', 'a:b']);
});

test('every change is in the journal, with who and what', () => {
  const { look, answer, store } = looking();
  look(T, act('cover'));
  answer(T + 1, 'done');
  expect(
    store.journal
      .between('task', 0, T * 2)
      .map(({ who, body }) => [who, (body as { event: string }).event]),
  ).toEqual([
    ['hub', 'opened'],
    ['Ann', 'done'],
  ]);
});

test.for([
  ['open-up', 'vents', true],
  ['close-up', 'vents', false],
  ['cover', 'covers', true],
  ['uncover', 'covers', false],
] as const)('%s done tells that %s is %s', ([kind, what, is]) => {
  const { look, answer, store } = looking();
  look(T, act(kind));
  answer(T + 1, 'done');
  expect(store.journal.newestOf('a', what)).toMatchObject({ who: 'Ann', body: { is } });
});

const kinds = ['cover', 'open-up', 'shut-door'] as const;
const anyDecision = fc.oneof(
  fc.constantFrom(...kinds).map(leave),
  fc.constantFrom(...kinds).map(unknown),
  fc
    .tuple(fc.constantFrom(...kinds), fc.option(fc.integer({ min: 0, max: 30 })), fc.boolean())
    .map(([kind, by, alarm]) => act(kind, { doBy: by === null ? null : T + by * HOUR, alarm })),
);
const anyLook = fc.record({
  after: fc.integer({ min: 1, max: 90 }),
  decisions: fc.uniqueArray(anyDecision, { selector: ({ kind }) => kind, maxLength: 3 }),
  answer: fc.constantFrom(null, null, 'done', 'later', 'no'),
});

test('planning again after carrying a plan out gives no steps and nothing new to remember', () => {
  fc.assert(
    fc.property(fc.array(anyLook, { maxLength: 25 }), (looks) => {
      const { look, plan, tasks, answer, store } = looking();
      let now = T;
      for (const { after, decisions, answer: word } of looks) {
        now += after * MINUTE;
        look(now, ...decisions);
        const again = plan(now, ...decisions);
        expect(again.steps).toEqual([]);
        expect([...again.memory]).toEqual([]);
        const keys = tasks.open().map(({ key }) => key);
        expect(new Set(keys).size).toBe(keys.length);
        if (word && keys.length > 0) answer(now, word, now + 45 * MINUTE);
      }
      store.close();
    }),
    { numRuns: 60 },
  );
});
